package sensorrounds.survival;

/**
 * A weighted sum of a law's cumulative hazard over stretches of age, with the variance of its log by the delta method.
 * Immutable.
 */
public final class HazardSum {
    private static final double Z95 = 1.959963984540054;

    private final LifeLaw law;
    private final double value;
    private final double[] gradient;
    private final double extraVarLog;

    private HazardSum(LifeLaw law, double value, double[] gradient, double extraVarLog) {
        this.law = law;
        this.value = value;
        this.gradient = gradient;
        this.extraVarLog = extraVarLog;
    }

    /** The empty sum. */
    public static HazardSum of(LifeLaw law) {
        return new HazardSum(law, 0, new double[law.covariance().length], 0);
    }

    /** With the hazard from one age to another, multiplied by a factor. */
    public HazardSum plus(double factor, double fromAge, double toAge) {
        double[] from = law.hazardGradient(fromAge);
        double[] to = law.hazardGradient(toAge);
        double[] sum = gradient.clone();
        for (int i = 0; i < sum.length; i++) {
            sum[i] += factor * (to[i] - from[i]);
        }
        double stretch = law.cumulativeHazard(toAge) - law.cumulativeHazard(fromAge);
        return new HazardSum(law, value + factor * stretch, sum, extraVarLog);
    }

    /** With a variance of the log of the sum from elsewhere, independent of the fit. */
    public HazardSum withVariance(double varLog) {
        return new HazardSum(law, value, gradient, extraVarLog + varLog);
    }

    public double value() {
        return value;
    }

    /** Variance of the log of the sum; 0 for an empty sum. */
    public double varLog() {
        if (!(value > 0)) {
            return 0;
        }
        double[][] covariance = law.covariance();
        double variance = 0;
        for (int i = 0; i < gradient.length; i++) {
            for (int j = 0; j < gradient.length; j++) {
                variance += gradient[i] * covariance[i][j] * gradient[j];
            }
        }
        return Math.max(0, variance / (value * value) + extraVarLog);
    }

    /** 1 - exp(-sum). */
    public double failure() {
        return -Math.expm1(-value);
    }

    /** 95 % limits of {@link #failure}: lower, upper. */
    public double[] failureLimits() {
        double factor = Math.exp(Z95 * Math.sqrt(varLog()));
        return new double[] {-Math.expm1(-value / factor), -Math.expm1(-value * factor)};
    }
}
