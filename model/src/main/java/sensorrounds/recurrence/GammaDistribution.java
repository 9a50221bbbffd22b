package sensorrounds.recurrence;

import java.io.Serializable;
import sensorrounds.numeric.GammaFunction;

/** A gamma law of this shape and rate (one over scale); its tails are the regularised incomplete gamma functions. */
record GammaDistribution(double shape, double rate) implements Serializable {
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
        return GammaFunction.regularizedLower(shape, Math.max(0, rate * x));
    }

    /** P(X > x), without loss of digits where it is small. */
    double above(double x) {
        return Math.exp(GammaFunction.logRegularizedUpper(shape, Math.max(0, rate * x)));
    }
}
