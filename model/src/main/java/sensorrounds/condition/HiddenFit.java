package sensorrounds.condition;

import java.io.Serializable;

/**
 * What came of a {@link HiddenFitter}: parameters with their covariance, or the reason why there are none. Asking a
 * failed fit for its values throws; start values are never handed out as estimates.
 */
public final class HiddenFit implements Serializable {
    private static final long serialVersionUID = 1;

    /** What came of a fit. */
    public enum Status {
        CONVERGED,
        /** Fewer sensors or failures than the settings ask for. */
        TOO_FEW,
        /** No reader's chance of waking a sensor is known. */
        NO_WAKE_MODEL,
        /** Too many sensors with readings that contradict each other; a few are left out and counted. */
        IMPOSSIBLE_DATA,
        /** A parameter, or a mix of them, that the data do not determine. */
        FLAT_LIKELIHOOD,
        /** Good and weak sensors do not differ in what is read of them. */
        NOT_TOLD_APART,
        /** The search ended without a maximum. */
        NOT_CONVERGED
    }

    private final Status status;
    private final String cause;
    private final int iterations;
    private final double gradientNorm;
    private final double condition;
    private final double logLikelihood;
    private final long sensors;
    private final long leftOut;
    private final long failures;
    private final HiddenParameters parameters;
    private final double[][] covariance;
    private final HiddenModel model;
    private final HiddenLadder.Decision decision;
    private final HiddenPoint point;

    HiddenFit(
            Status status,
            String cause,
            int iterations,
            double gradientNorm,
            double condition,
            double logLikelihood,
            long sensors,
            long leftOut,
            long failures,
            HiddenParameters parameters,
            double[][] covariance,
            HiddenModel model) {
        this(
                status,
                cause,
                iterations,
                gradientNorm,
                condition,
                logLikelihood,
                sensors,
                leftOut,
                failures,
                parameters,
                covariance,
                model,
                HiddenLadder.Decision.none());
    }

    private HiddenFit(
            Status status,
            String cause,
            int iterations,
            double gradientNorm,
            double condition,
            double logLikelihood,
            long sensors,
            long leftOut,
            long failures,
            HiddenParameters parameters,
            double[][] covariance,
            HiddenModel model,
            HiddenLadder.Decision decision) {
        this.status = status;
        this.cause = cause;
        this.iterations = iterations;
        this.gradientNorm = gradientNorm;
        this.condition = condition;
        this.logLikelihood = logLikelihood;
        this.sensors = sensors;
        this.leftOut = leftOut;
        this.failures = failures;
        this.parameters = parameters;
        this.covariance = covariance;
        this.model = model;
        this.decision = decision;
        this.point = parameters == null ? null : new HiddenPoint(parameters, model);
    }

    /** The same with what was decided on the way to its model. */
    public HiddenFit with(HiddenLadder.Decision newDecision) {
        return new HiddenFit(
                status,
                cause,
                iterations,
                gradientNorm,
                condition,
                logLikelihood,
                sensors,
                leftOut,
                failures,
                parameters,
                covariance,
                model,
                newDecision);
    }

    /** The answer for a fleet whose {@link WakeModel} has no reads to go by. */
    public static HiddenFit withoutWakeModel(WakeModel model) {
        return without(Status.NO_WAKE_MODEL, model.note());
    }

    /** The answer for a fleet of which no law of life could be fitted. */
    public static HiddenFit withoutLaw() {
        return without(Status.TOO_FEW, "no law of life could be fitted");
    }

    private static HiddenFit without(Status status, String cause) {
        return new HiddenFit(status, cause, 0, Double.NaN, Double.NaN, Double.NaN, 0, 0, 0, null, null, null);
    }

    public Status status() {
        return status;
    }

    public boolean converged() {
        return status == Status.CONVERGED;
    }

    /** Why there are no values, in words; empty when there are. */
    public String cause() {
        return cause;
    }

    public int iterations() {
        return iterations;
    }

    /** Largest derivative of the penalised log-likelihood, per sensor; NaN when the search never began. */
    public double gradientNorm() {
        return gradientNorm;
    }

    /** Condition (one-norm) of the information. */
    public double condition() {
        return condition;
    }

    /** Sensors that went in. */
    public long sensors() {
        return sensors;
    }

    /** Sensors left out because their readings contradict each other. */
    public long leftOut() {
        return leftOut;
    }

    /** Failed sensors among those that went in. */
    public long failures() {
        return failures;
    }

    /** Without the priors' share. */
    public double logLikelihood() {
        requireConverged();
        return logLikelihood;
    }

    public HiddenParameters parameters() {
        requireConverged();
        return parameters;
    }

    /** Covariance of the logs and log odds in the order of {@link HiddenParameters}. */
    public double[][] covariance() {
        requireConverged();
        double[][] copy = new double[covariance.length][];
        for (int i = 0; i < copy.length; i++) {
            copy[i] = covariance[i].clone();
        }
        return copy;
    }

    /** Filters sensors with this fit; one filter per thread. */
    public HiddenFilter filter() {
        requireConverged();
        return new HiddenFilter(point.tables(), covariance);
    }

    /** What was decided on the way to the model. */
    public HiddenLadder.Decision decision() {
        return decision;
    }

    /** What the fit took as known; null where it never began. */
    public HiddenModel model() {
        return model;
    }

    private void requireConverged() {
        if (!converged()) {
            throw new IllegalStateException("the fit of the hidden condition has no values: " + status + ", " + cause
                    + "; ask converged() first");
        }
    }
}
