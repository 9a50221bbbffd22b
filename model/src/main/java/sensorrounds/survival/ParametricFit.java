package sensorrounds.survival;

import java.io.Serializable;

/**
 * What came of a {@link ParametricFitter}: a fitted law with its covariance, or the reason why there is none. Asking a
 * failed fit for its law throws; start values are never handed out as estimates.
 */
public final class ParametricFit implements Serializable {
    private final Family family;
    private final FitReport report;
    private final double logLikelihood;
    private final double logScale;
    private final double logShape;
    private final double varLogScale;
    private final double varLogShape;
    private final double covLogs;
    private final double z;

    ParametricFit(
            Family family,
            FitReport report,
            double logLikelihood,
            double logScale,
            double logShape,
            double varLogScale,
            double varLogShape,
            double covLogs,
            double z) {
        this.family = family;
        this.report = report;
        this.logLikelihood = logLikelihood;
        this.logScale = logScale;
        this.logShape = logShape;
        this.varLogScale = varLogScale;
        this.varLogShape = varLogShape;
        this.covLogs = covLogs;
        this.z = z;
    }

    public Family family() {
        return family;
    }

    /** What it says of itself, as every fit does. */
    public FitReport report() {
        return report;
    }

    public FitStatus status() {
        return report.status();
    }

    public boolean converged() {
        return report.converged();
    }

    /** Why there is no law, in words; empty when there is one. */
    public String cause() {
        return report.cause();
    }

    public int iterations() {
        return report.iterations();
    }

    /** Largest derivative in standard units, per failure, where the search stopped; NaN when it never began. */
    public double gradientNorm() {
        return report.gradientNorm();
    }

    /** Condition (one-norm) of the information in standard units; infinite when it is not positive definite. */
    public double condition() {
        return report.condition();
    }

    /** Of T, so exact failures count by their density per unit of time; without the prior's share. */
    public double logLikelihood() {
        requireConverged();
        return logLikelihood;
    }

    public Estimate shape() {
        requireConverged();
        return onLogScale(logShape, varLogShape);
    }

    /** In the sample's unit of time; for the exponential family the mean life. */
    public Estimate scale() {
        requireConverged();
        return onLogScale(logScale, varLogScale);
    }

    public double varLogScale() {
        requireConverged();
        return varLogScale;
    }

    public double varLogShape() {
        requireConverged();
        return varLogShape;
    }

    /** Covariance of log scale and log shape. */
    public double covLogs() {
        requireConverged();
        return covLogs;
    }

    /** Age by which the share p has failed, limits by the delta method on its log: Meeker and Escobar (1998), 8.4. */
    public Estimate quantile(double p) {
        requireConverged();
        if (!(p > 0 && p < 1)) {
            throw new IllegalArgumentException("a quantile needs 0 < p < 1, not " + p);
        }
        double w = family.law().quantile(p) / Math.exp(logShape);
        return onLogScale(logScale + w, varLogScale + w * w * varLogShape - 2 * w * covLogs);
    }

    /**
     * {@link #quantile} with likelihood-ratio limits where failures are few ({@link RatioLimits}), else the same.
     *
     * @param sample that this was fitted to, with both parameters free
     */
    public Estimate quantile(double p, LifetimeSample sample) {
        Estimate plain = quantile(p);
        if (sample.failures() >= RatioLimits.FEW_FAILURES) {
            return plain;
        }
        Estimate ratio = RatioLimits.of(sample, this).quantileOf(p);
        return new Estimate(plain.value(), ratio.lower(), ratio.upper());
    }

    /** S(age) with limits by the delta method on log(-log S), which keeps them in (0, 1). */
    public Estimate survival(double age) {
        requireConverged();
        if (!(age > 0)) {
            return new Estimate(1, 1, 1);
        }
        double shape = Math.exp(logShape);
        double at = shape * (Math.log(age) - logScale);
        double logSurvival = family.law().logSurvival(at);
        if (logSurvival == 0) {
            return new Estimate(1, 1, 1);
        }
        double hazard = Math.exp(family.law().logDensity(at) - logSurvival);
        double variance = shape * shape * varLogScale + at * at * varLogShape - 2 * shape * at * covLogs;
        double half = z * hazard / -logSurvival * Math.sqrt(Math.max(0, variance));
        return new Estimate(
                Math.exp(logSurvival), Math.exp(logSurvival * Math.exp(half)), Math.exp(logSurvival * Math.exp(-half)));
    }

    /**
     * The fitted law, time in days as in the sample.
     *
     * @throws IllegalStateException if the fit failed, or is of a family that is no Weibull
     */
    public WeibullLife life() {
        requireConverged();
        if (family != Family.WEIBULL && family != Family.EXPONENTIAL) {
            throw new IllegalStateException("a " + family + " fit is no Weibull law of life");
        }
        return new WeibullLife(Math.exp(logShape), Math.exp(logScale), varLogShape, varLogScale, covLogs);
    }

    private Estimate onLogScale(double log, double variance) {
        double half = z * Math.sqrt(Math.max(0, variance));
        return new Estimate(Math.exp(log), Math.exp(log - half), Math.exp(log + half));
    }

    private void requireConverged() {
        if (!converged()) {
            throw new IllegalStateException(
                    "the " + family + " fit has no law: " + status() + ", " + cause() + "; ask converged() first");
        }
    }
}
