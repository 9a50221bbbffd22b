package sensorrounds.survival;

import sensorrounds.numeric.GammaFunction;

/**
 * A fitted Weibull law of life: S(t) = exp(-(t/scale)^shape), t in days of age, with the covariance of (log shape, log
 * scale). Source: Meeker and Escobar (1998), Statistical Methods for Reliability Data, ch. 4 and 8.
 *
 * @param varLogShape variance of log shape, as varLogScale
 * @param covLogs covariance of log shape and log scale
 */
public record WeibullLife(double shape, double scaleDays, double varLogShape, double varLogScale, double covLogs)
        implements LifeLaw {
    private static final double Z95 = 1.959963984540054;

    public WeibullLife {
        if (!(shape > 0 && shape < Double.POSITIVE_INFINITY && scaleDays > 0 && scaleDays < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "a Weibull law needs a positive shape and scale, not " + shape + " and " + scaleDays);
        }
    }

    /** H(t) = (t/scale)^shape. */
    @Override
    public double cumulativeHazard(double ageDays) {
        return ageDays <= 0 ? 0 : Math.exp(shape * Math.log(ageDays / scaleDays));
    }

    @Override
    public double hazard(double ageDays) {
        return shape / scaleDays * Math.pow(ageDays / scaleDays, shape - 1);
    }

    @Override
    public double ageAtHazard(double cumulativeHazard) {
        return scaleDays * Math.exp(Math.log(cumulativeHazard) / shape);
    }

    /** By log shape and log scale. */
    @Override
    public double[] hazardGradient(double ageDays) {
        double h = cumulativeHazard(ageDays);
        return h > 0 ? new double[] {shape * h * Math.log(ageDays / scaleDays), -shape * h} : new double[2];
    }

    @Override
    public double[][] covariance() {
        return new double[][] {{varLogShape, covLogs}, {covLogs, varLogScale}};
    }

    /** 95 % limits of the shape on the log scale: lower, upper. */
    public double[] shapeLimits() {
        return limits(shape, varLogShape);
    }

    /** 95 % limits of the scale on the log scale, days: lower, upper. */
    public double[] scaleLimits() {
        return limits(scaleDays, varLogScale);
    }

    /** Mean life in days, scale Gamma(1 + 1/shape): Meeker and Escobar (1998), 4.8. */
    @Override
    public double mean() {
        return scaleDays * Math.exp(GammaFunction.logGamma(1 + 1 / shape));
    }

    /** Mean days lived up to an age, the integral of S from 0 to it: mean P(1/shape, H(age)), by substituting u = H(t). */
    @Override
    public double meanWithin(double ageDays) {
        return mean() * GammaFunction.regularizedLower(1 / shape, cumulativeHazard(ageDays));
    }

    /** Mean days still to live for a unit alive at the age: mean Q(1/shape, H(age)) / S(age). */
    @Override
    public double meanResidual(double ageDays) {
        double hazard = cumulativeHazard(ageDays);
        return mean() * Math.exp(GammaFunction.logRegularizedUpper(1 / shape, hazard) + hazard);
    }

    private static double[] limits(double value, double varLog) {
        double factor = Math.exp(Z95 * Math.sqrt(Math.max(0, varLog)));
        return new double[] {value / factor, value * factor};
    }
}
