package sensorrounds.survival;

import java.io.Serializable;
import sensorrounds.numeric.GammaFunction;

/**
 * A fitted Weibull law of life: S(t) = exp(-(t/scale)^shape), t in days of age, with the covariance of (log shape, log
 * scale). Source: Meeker and Escobar (1998), Statistical Methods for Reliability Data, ch. 4 and 8.
 *
 * @param varLogShape variance of log shape, as varLogScale
 * @param covLogs covariance of log shape and log scale
 */
public record WeibullLife(double shape, double scaleDays, double varLogShape, double varLogScale, double covLogs)
        implements Serializable {
    private static final double Z95 = 1.959963984540054;

    public WeibullLife {
        if (!(shape > 0 && shape < Double.POSITIVE_INFINITY && scaleDays > 0 && scaleDays < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "a Weibull law needs a positive shape and scale, not " + shape + " and " + scaleDays);
        }
    }

    /** H(t) = (t/scale)^shape. */
    public double cumulativeHazard(double ageDays) {
        return ageDays <= 0 ? 0 : Math.exp(shape * Math.log(ageDays / scaleDays));
    }

    public double survival(double ageDays) {
        return Math.exp(-cumulativeHazard(ageDays));
    }

    /** 95 % limits of the shape on the log scale: lower, upper. */
    public double[] shapeLimits() {
        return limits(shape, varLogShape);
    }

    /** 95 % limits of the scale on the log scale, days: lower, upper. */
    public double[] scaleLimits() {
        return limits(scaleDays, varLogScale);
    }

    /** 95 % limits of {@link #survival} by the delta method on log(-log S): lower, upper. */
    public double[] survivalLimits(double ageDays) {
        double[] failed = failureWithinLimits(0, Math.max(0, ageDays), 1, 0);
        return new double[] {1 - failed[1], 1 - failed[0]};
    }

    /** Mean life in days, scale Gamma(1 + 1/shape): Meeker and Escobar (1998), 4.8. */
    public double mean() {
        return scaleDays * Math.exp(GammaFunction.logGamma(1 + 1 / shape));
    }

    /** Mean days lived up to an age, the integral of S from 0 to it: mean P(1/shape, H(age)), by substituting u = H(t). */
    public double meanWithin(double ageDays) {
        return mean() * GammaFunction.regularizedLower(1 / shape, cumulativeHazard(ageDays));
    }

    /** Mean days still to live for a unit alive at the age: mean Q(1/shape, H(age)) / S(age). */
    public double meanResidual(double ageDays) {
        double hazard = cumulativeHazard(ageDays);
        return mean() * Math.exp(GammaFunction.logRegularizedUpper(1 / shape, hazard) + hazard);
    }

    /** Age by which the share p has failed. */
    public double quantile(double p) {
        return scaleDays * Math.exp(Math.log(-Math.log1p(-p)) / shape);
    }

    /**
     * P(fail within the next {@code days} | alive at {@code ageDays}) = 1 - exp(-r (H(a+d) - H(a))), with the hazard
     * multiplied by {@code ratio}.
     */
    public double failureWithin(double ageDays, double days, double ratio) {
        return -Math.expm1(-ratio * hazardBetween(ageDays, days));
    }

    /**
     * 95 % limits of {@link #failureWithin} by the delta method on the log of the cumulative hazard in the window, which
     * keeps them in (0, 1).
     *
     * @param varLogRatio variance of log ratio, taken as independent of the fit
     * @return lower, upper
     */
    public double[] failureWithinLimits(double ageDays, double days, double ratio, double varLogRatio) {
        double h = hazardBetween(ageDays, days);
        if (!(h > 0)) {
            return new double[] {0, 0};
        }
        double a = cumulativeHazard(ageDays);
        double b = cumulativeHazard(ageDays + days);
        // d log h / d log shape and d log h / d log scale.
        double dShape = shape
                * (b * Math.log((ageDays + days) / scaleDays) - (a > 0 ? a * Math.log(ageDays / scaleDays) : 0))
                / h;
        double dScale = -shape;
        double variance = dShape * dShape * varLogShape
                + dScale * dScale * varLogScale
                + 2 * dShape * dScale * covLogs
                + varLogRatio;
        double half = Z95 * Math.sqrt(Math.max(0, variance));
        return new double[] {-Math.expm1(-ratio * h * Math.exp(-half)), -Math.expm1(-ratio * h * Math.exp(half))};
    }

    private static double[] limits(double value, double varLog) {
        double factor = Math.exp(Z95 * Math.sqrt(Math.max(0, varLog)));
        return new double[] {value / factor, value * factor};
    }

    private double hazardBetween(double ageDays, double days) {
        return cumulativeHazard(ageDays + days) - cumulativeHazard(ageDays);
    }
}
