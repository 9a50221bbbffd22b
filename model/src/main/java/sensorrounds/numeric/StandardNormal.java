package sensorrounds.numeric;

/** The standard normal law, with tails in logarithms: 1 - Phi(z) = Q(1/2, z^2/2) / 2 for z >= 0. */
public final class StandardNormal {
    private static final double LOG_SQRT_2PI = 0.5 * Math.log(2 * Math.PI);
    private static final double LOG_2 = Math.log(2);

    private StandardNormal() {}

    /** log(1 - Phi(z)); finite for any finite z within the range of a double. */
    public static double logSurvival(double z) {
        if (z >= 0) {
            return GammaFunction.logRegularizedUpper(0.5, z * z / 2) - LOG_2;
        }
        return Math.log1p(-Math.exp(logSurvival(-z)));
    }

    public static double logDensity(double z) {
        return -z * z / 2 - LOG_SQRT_2PI;
    }

    /** z with Phi(z) = p, by Newton steps on the logarithm of the smaller tail. */
    public static double quantile(double p) {
        if (!(p > 0 && p < 1)) {
            throw new IllegalArgumentException("a normal quantile needs 0 < p < 1, not " + p);
        }
        if (p < 0.5) {
            return -quantileOfTail(p);
        }
        return p == 0.5 ? 0 : quantileOfTail(1 - p);
    }

    private static double quantileOfTail(double tail) {
        double target = Math.log(tail);
        double z = Math.sqrt(Math.max(0, -2 * (target + LOG_2)));
        // log(1 - Phi) is concave and the start lies beyond the root, so the steps come down to it without overshoot.
        for (int i = 0; i < 100; i++) {
            double logSurvival = logSurvival(z);
            double step = (logSurvival - target) / Math.exp(logDensity(z) - logSurvival);
            z += step;
            if (Math.abs(step) <= 1e-15 * (1 + z)) {
                break;
            }
        }
        return z;
    }
}
