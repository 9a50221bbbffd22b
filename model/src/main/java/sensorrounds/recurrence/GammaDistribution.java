package sensorrounds.recurrence;

import java.io.Serializable;
import sensorrounds.condition.LogGamma;

/**
 * A gamma law of this shape and rate (one over scale). Its distribution function is the regularised incomplete gamma
 * function: the series of Abramowitz and Stegun (1964), 6.5.29, below the shape plus one, and the continued fraction
 * 6.5.31 above, where each converges fast.
 */
record GammaDistribution(double shape, double rate) implements Serializable {
    private static final double TINY = 1e-300;
    private static final double EPS = 1e-16;
    /** Both expansions need a few times the square root of the shape in terms. */
    private static final int MAX_TERMS = 200_000;

    GammaDistribution {
        if (!(shape > 0 && rate > 0 && shape + rate < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "a gamma law needs finite shape > 0 and rate > 0, not " + shape + ", " + rate);
        }
    }

    double mean() {
        return shape / rate;
    }

    /** P(X <= x). */
    double cdf(double x) {
        double z = rate * x;
        if (!(z > 0)) {
            return 0;
        }
        return z < shape + 1 ? lead(z) * series(z) : 1 - lead(z) * fraction(z);
    }

    /** P(X > x), without loss of digits where it is small. */
    double above(double x) {
        double z = rate * x;
        if (!(z > 0)) {
            return 1;
        }
        return z < shape + 1 ? 1 - lead(z) * series(z) : lead(z) * fraction(z);
    }

    /** z^shape e^-z / Gamma(shape). */
    private double lead(double z) {
        return Math.exp(shape * Math.log(z) - z - LogGamma.of(shape));
    }

    private double series(double z) {
        double term = 1 / shape;
        double sum = term;
        for (int n = 1; n < MAX_TERMS && term > EPS * sum; n++) {
            term *= z / (shape + n);
            sum += term;
        }
        return sum;
    }

    private double fraction(double z) {
        double b = z + 1 - shape;
        double c = 1 / TINY;
        double d = 1 / b;
        double result = d;
        for (int n = 1; n < MAX_TERMS; n++) {
            double a = -n * (n - shape);
            b += 2;
            d = 1 / away(a * d + b);
            c = away(b + a / c);
            result *= c * d;
            if (Math.abs(c * d - 1) <= EPS) {
                break;
            }
        }
        return result;
    }

    private static double away(double v) {
        return Math.abs(v) < TINY ? TINY : v;
    }
}
