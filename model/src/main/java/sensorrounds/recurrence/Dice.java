package sensorrounds.recurrence;

import java.util.SplittableRandom;

/** Random numbers of the laws that {@link MassSampler} needs, the same on every machine for a seed. */
final class Dice {
    /** Up to this expected number a binomial count is found by adding up its chances. */
    private static final double FEW = 20;

    private final SplittableRandom random;

    Dice(long seed) {
        random = new SplittableRandom(seed);
    }

    /** Gamma law with scale 1: Marsaglia and Tsang (2000), ACM Trans. Math. Softw. 26:363. May be 0 for a small shape. */
    double gamma(double shape) {
        if (shape < 1) {
            return gamma(shape + 1) * StrictMath.pow(open(), 1 / shape);
        }
        double d = shape - 1.0 / 3;
        double c = 1 / StrictMath.sqrt(9 * d);
        while (true) {
            double x = normal();
            double root = 1 + c * x;
            if (root > 0) {
                double v = root * root * root;
                if (StrictMath.log(open()) < 0.5 * x * x + d - d * v + d * StrictMath.log(v)) {
                    return d * v;
                }
            }
        }
    }

    /**
     * Successes of n trials: many are halved by the middle one of n even numbers, which follows a beta law (Relles 1972, J. Am.
     * Stat. Assoc. 67:612), until few are expected.
     */
    long binomial(long n, double chance) {
        long left = n;
        double p = chance;
        long count = 0;
        while (left * Math.min(p, 1 - p) > FEW) {
            long middle = (left + 1) / 2;
            double low = gamma(middle);
            double at = low / (low + gamma(left + 1 - middle));
            if (at <= p) {
                count += middle;
                left -= middle;
                p = (p - at) / (1 - at);
            } else {
                left = middle - 1;
                p /= at;
            }
        }
        return count + (p <= 0.5 ? added(left, p) : left - added(left, 1 - p));
    }

    /** An index with a chance in proportion to its weight. */
    int pick(double[] weight, double sum) {
        double u = random.nextDouble() * sum;
        int last = weight.length - 1;
        for (int j = 0; j < last; j++) {
            u -= weight[j];
            if (u < 0) {
                return j;
            }
        }
        return last;
    }

    private long added(long n, double p) {
        if (n == 0 || p <= 0) {
            return 0;
        }
        double u = random.nextDouble();
        double term = StrictMath.exp(n * StrictMath.log1p(-p));
        long k = 0;
        while (u > term && k < n) {
            u -= term;
            k++;
            term *= (n - k + 1) * p / (k * (1 - p));
        }
        return k;
    }

    /** Polar method: Marsaglia and Bray (1964), SIAM Rev. 6:260. */
    private double normal() {
        while (true) {
            double a = 2 * random.nextDouble() - 1;
            double b = 2 * random.nextDouble() - 1;
            double s = a * a + b * b;
            if (s > 0 && s < 1) {
                return a * StrictMath.sqrt(-2 * StrictMath.log(s) / s);
            }
        }
    }

    /** Between 0 and 1, neither of them. */
    private double open() {
        return 1 - random.nextDouble();
    }
}
