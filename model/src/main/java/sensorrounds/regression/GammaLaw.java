package sensorrounds.regression;

import sensorrounds.numeric.LogGammaLaw;
import sensorrounds.survival.LogLifeLaw;

/**
 * W = log G for a gamma variable of the given shape and scale 1, so that T = scale G is gamma distributed. Source:
 * Lawless (2003), Statistical Models and Methods for Lifetime Data, 1.3.5.
 */
record GammaLaw(double logAlpha) implements LogLifeLaw {
    private double alpha() {
        return Math.exp(logAlpha);
    }

    @Override
    public double logSurvival(double z) {
        return LogGammaLaw.logUpper(alpha(), z - logAlpha);
    }

    @Override
    public double logDensity(double z) {
        return LogGammaLaw.logDensity(alpha(), z - logAlpha);
    }

    @Override
    public double logDensitySlope(double z) {
        return -alpha() * Math.expm1(z - logAlpha);
    }

    @Override
    public double logDensityCurvature(double z) {
        return -Math.exp(z);
    }

    @Override
    public double quantile(double p) {
        return Quantiles.of(this, p);
    }
}
