package sensorrounds.regression;

import sensorrounds.numeric.LogGammaLaw;
import sensorrounds.numeric.StandardNormal;
import sensorrounds.survival.LogLifeLaw;

/**
 * The generalised gamma law in the form that passes smoothly through the lognormal: with a = 1/q^2, exp(q W) a is gamma
 * distributed of shape a. q = 1 is the Weibull, 0 the lognormal, q = 1/shape the gamma, negative q its reciprocals.
 * Source: Prentice (1974), Biometrika 61:539-544.
 */
record GeneralisedGammaLaw(double q) implements LogLifeLaw {
    /** Nearer to 0 the incomplete gamma function needs too many terms; survival is interpolated in q there. */
    private static final double NEAR_NORMAL = 0.004;

    private static final double HALF_LOG_2PI = 0.5 * Math.log(2 * Math.PI);

    @Override
    public double logSurvival(double z) {
        return Math.abs(q) >= NEAR_NORMAL ? byIncompleteGamma(q, z) : interpolated(z);
    }

    private static double byIncompleteGamma(double q, double z) {
        double a = 1 / (q * q);
        return q > 0 ? LogGammaLaw.logUpper(a, q * z) : LogGammaLaw.logLower(a, q * z);
    }

    /** Lagrange through q = -2h, -h, 0, h, 2h: error below 1e-9 for |z| < 8. */
    private double interpolated(double z) {
        double t = q / NEAR_NORMAL;
        double sum = 0;
        for (int i = -2; i <= 2; i++) {
            double basis = 1;
            for (int j = -2; j <= 2; j++) {
                basis *= i == j ? 1 : (t - j) / (i - j);
            }
            if (basis != 0) {
                sum += basis * (i == 0 ? StandardNormal.logSurvival(z) : byIncompleteGamma(i * NEAR_NORMAL, z));
            }
        }
        return sum;
    }

    @Override
    public double logDensity(double z) {
        double remainder = q == 0 ? 0 : LogGammaLaw.stirlingRemainder(1 / (q * q));
        return -z * z * LogGammaLaw.excess(q * z) - HALF_LOG_2PI - remainder;
    }

    @Override
    public double logDensitySlope(double z) {
        return q == 0 ? -z : -Math.expm1(q * z) / q;
    }

    @Override
    public double logDensityCurvature(double z) {
        return -Math.exp(q * z);
    }

    @Override
    public double quantile(double p) {
        return Quantiles.of(this, p);
    }
}
