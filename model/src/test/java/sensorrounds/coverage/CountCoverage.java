package sensorrounds.coverage;

import java.util.Locale;
import java.util.function.DoubleUnaryOperator;
import java.util.function.IntFunction;
import sensorrounds.numeric.GammaFunction;
import sensorrounds.numeric.WeightedCount;

/**
 * What limits of a Poisson count can hold at all, by adding up its probabilities: no simulation. Results are in docs/coverage.md.
 *
 * <p>The counts whose limits hold a mean are a run of whole numbers, so that the share held is one of few values. {@link #least} is
 * the lowest of these not below 95 %: limits that nowhere hold less often than they say hold at least that there.
 */
public final class CountCoverage {
    private static final double LEVEL = 0.95;
    /** Means in the averages over a range, even on the log. */
    private static final int STEPS = 400;

    private CountCoverage() {}

    /** Limits of a mean from a count. */
    record Limits(double lower, double upper) {
        boolean hold(double mean) {
            return lower <= mean && mean <= upper;
        }
    }

    public static void main(String[] arguments) {
        System.out.println("| mean | none | least | mid-P | exact | Jeffreys | widths |");
        for (double mean : new double[] {0.1, 0.2, 0.34, 0.5, 0.7, 1, 2, 4, 8, 16, 32}) {
            double from = mean / Math.sqrt(2);
            System.out.printf(
                    Locale.ROOT,
                    "| %.2f | %.1f %% | %.1f %% | %.1f %% | %.1f %% | %.1f %% | %.2f, %.2f, %.2f |%n",
                    mean,
                    100 * Math.exp(-mean),
                    100 * average(from, CountCoverage::least),
                    100 * average(from, m -> share(m, CountCoverage::midP)),
                    100 * average(from, m -> share(m, CountCoverage::exact)),
                    100 * average(from, m -> share(m, CountCoverage::jeffreys)),
                    width(mean, CountCoverage::midP),
                    width(mean, CountCoverage::exact),
                    width(mean, CountCoverage::jeffreys));
        }
        System.out.printf(
                Locale.ROOT,
                "least share held anywhere from .05 to 40: mid-P %.1f %%, exact %.1f %%, Jeffreys %.1f %%%n",
                100 * worst(CountCoverage::midP),
                100 * worst(CountCoverage::exact),
                100 * worst(CountCoverage::jeffreys));
    }

    /** Average over means from this to twice as much: a fleet's own mean is not the next one's. */
    private static double average(double from, DoubleUnaryOperator of) {
        double sum = 0;
        for (int i = 0; i < STEPS; i++) {
            sum += of.applyAsDouble(from * Math.pow(2, (i + 0.5) / STEPS)) / STEPS;
        }
        return sum;
    }

    private static double worst(IntFunction<Limits> limits) {
        double least = 1;
        for (double mean = 0.05; mean < 40; mean *= 1.002) {
            least = Math.min(least, share(mean, limits));
        }
        return least;
    }

    /** The lowest chance of a run of counts that is not below 95 %. */
    static double least(double mean) {
        double least = 1;
        int most = most(mean);
        for (int from = 0; from <= most; from++) {
            double sum = 0;
            for (int to = from; to <= most && sum < LEVEL; to++) {
                sum += chance(to, mean);
            }
            least = sum >= LEVEL ? Math.min(least, sum) : least;
        }
        return least;
    }

    static double share(double mean, IntFunction<Limits> limits) {
        double sum = 0;
        for (int count = 0; count <= most(mean); count++) {
            sum += limits.apply(count).hold(mean) ? chance(count, mean) : 0;
        }
        return sum;
    }

    private static double width(double mean, IntFunction<Limits> limits) {
        double sum = 0;
        for (int count = 0; count <= most(mean); count++) {
            Limits of = limits.apply(count);
            sum += chance(count, mean) * (of.upper - of.lower);
        }
        return sum;
    }

    private static int most(double mean) {
        return (int) Math.ceil(mean + 9 * Math.sqrt(mean) + 12);
    }

    private static double chance(int count, double mean) {
        return Math.exp(count * Math.log(mean) - mean - GammaFunction.logGamma(count + 1));
    }

    /** As in use: {@link WeightedCount}. */
    static Limits midP(int count) {
        WeightedCount counted = new WeightedCount(count, count, 1, 1);
        return new Limits(counted.limit((1 - LEVEL) / 2), counted.limit((1 + LEVEL) / 2));
    }

    /** Garwood (1936), Biometrika 28:437. */
    static Limits exact(int count) {
        return new Limits(count == 0 ? 0 : gamma((1 - LEVEL) / 2, count), gamma((1 + LEVEL) / 2, count + 1));
    }

    /** Quantiles of the law of the mean that starts as mean^(-1/2); 0 is among them where nothing failed. */
    static Limits jeffreys(int count) {
        return new Limits(count == 0 ? 0 : gamma((1 - LEVEL) / 2, count + 0.5), gamma((1 + LEVEL) / 2, count + 0.5));
    }

    private static double gamma(double p, double shape) {
        double low = 0;
        double high = 20 + 3 * shape;
        while (high - low > 1e-10) {
            double middle = (low + high) / 2;
            if (GammaFunction.regularizedLower(shape, middle) < p) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }
}
