package sensorrounds.condition;

import java.io.Serializable;
import sensorrounds.numeric.GammaFunction;

/**
 * A beta law on (0, 1). Its distribution function is the regularised incomplete beta function, by the continued
 * fraction of Abramowitz and Stegun (1964), 26.5.8, on the side of the mean where it converges fast.
 */
record BetaDistribution(double alpha, double beta) implements Serializable {
    private static final double TINY = 1e-300;
    private static final double EPS = 1e-16;
    /** The fraction needs about the square root of the larger parameter in terms. */
    private static final int MAX_TERMS = 100_000;

    private static final int MAX_HALVINGS = 1100;

    BetaDistribution {
        if (!(alpha > 0 && beta > 0 && alpha + beta < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "a beta law needs finite alpha > 0 and beta > 0, not " + alpha + ", " + beta);
        }
    }

    /** The beta law with this mean and variance; needs 0 < variance < mean (1 - mean). */
    static BetaDistribution ofMoments(double mean, double variance) {
        double size = mean * (1 - mean) / variance - 1;
        return new BetaDistribution(mean * size, (1 - mean) * size);
    }

    double mean() {
        return alpha / (alpha + beta);
    }

    /** P(X <= x). */
    double cdf(double x) {
        if (!(x > 0)) {
            return 0;
        }
        if (x >= 1) {
            return 1;
        }
        return x <= (alpha + 1) / (alpha + beta + 2) ? lower(x, 1 - x, alpha, beta) : 1 - lower(1 - x, x, beta, alpha);
    }

    /** The x with P(X <= x) = p, by halving: slow and sure. */
    double quantile(double p) {
        if (!(p >= 0 && p <= 1)) {
            throw new IllegalArgumentException("a quantile needs a probability from 0 to 1, not " + p);
        }
        double low = 0;
        double high = 1;
        for (int i = 0; i < MAX_HALVINGS && high - low > 1e-15 * high; i++) {
            double middle = 0.5 * (low + high);
            if (cdf(middle) < p) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return 0.5 * (low + high);
    }

    /** log B(a, b). */
    static double logBeta(double a, double b) {
        return GammaFunction.logGamma(a) + GammaFunction.logGamma(b) - GammaFunction.logGamma(a + b);
    }

    private static double lower(double x, double oneMinusX, double a, double b) {
        double lead = Math.exp(a * Math.log(x) + b * Math.log(oneMinusX) - logBeta(a, b)) / a;
        return lead * fraction(x, a, b);
    }

    private static double fraction(double x, double a, double b) {
        double c = 1;
        double d = 1 / away(1 - (a + b) * x / (a + 1));
        double result = d;
        for (int m = 1; m < MAX_TERMS; m++) {
            double even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m));
            d = 1 / away(1 + even * d);
            c = away(1 + even / c);
            result *= c * d;
            double odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
            d = 1 / away(1 + odd * d);
            c = away(1 + odd / c);
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
