package sensorrounds.survival;

import java.io.Serializable;

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

    /** H(t) = (t/scale)^shape. */
    public double cumulativeHazard(double ageDays) {
        return ageDays <= 0 ? 0 : Math.exp(shape * Math.log(ageDays / scaleDays));
    }

    public double survival(double ageDays) {
        return Math.exp(-cumulativeHazard(ageDays));
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

    private double hazardBetween(double ageDays, double days) {
        return cumulativeHazard(ageDays + days) - cumulativeHazard(ageDays);
    }
}
