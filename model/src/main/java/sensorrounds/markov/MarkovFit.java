package sensorrounds.markov;

import java.io.Serializable;
import java.util.List;
import sensorrounds.numeric.StandardNormal;

/**
 * What came of a {@link MarkovFitter}: the model at the maximum with its covariance, or the reason why there is none.
 * Asking a failed fit for its values throws; start values are never handed out as estimates.
 */
public final class MarkovFit implements Serializable {
    private static final long serialVersionUID = 1;

    /** What came of a fit. */
    public enum Status {
        CONVERGED,
        /** No subject is seen twice. */
        NO_DATA,
        /** Some sightings cannot follow each other under the moves that are allowed. */
        IMPOSSIBLE_DATA,
        /** No finite maximum, or a parameter the data do not determine. */
        FLAT_LIKELIHOOD,
        /** The search ended without a maximum. */
        NOT_CONVERGED
    }

    /**
     * A rate with its standard error and limits, normal on its log.
     *
     * @param lower lower 95 % limit
     */
    public record Rate(double value, double se, double lower, double upper) implements Serializable {}

    private final Status status;
    private final String cause;
    private final int iterations;
    private final double gradientNorm;
    private final double condition;
    private final MarkovModel model;
    private final double logLikelihood;
    private final double[][] covariance;

    MarkovFit(
            Status status,
            String cause,
            int iterations,
            double gradientNorm,
            double condition,
            MarkovModel model,
            double logLikelihood,
            double[][] covariance) {
        this.status = status;
        this.cause = cause;
        this.iterations = iterations;
        this.gradientNorm = gradientNorm;
        this.condition = condition;
        this.model = model;
        this.logLikelihood = logLikelihood;
        this.covariance = covariance;
    }

    static MarkovFit failed(Status status, String cause, int iterations, double gradientNorm, double condition) {
        return new MarkovFit(status, cause, iterations, gradientNorm, condition, null, Double.NaN, null);
    }

    public Status status() {
        return status;
    }

    public boolean converged() {
        return status == Status.CONVERGED;
    }

    /** Why there is no fit, in words; empty when there is one. */
    public String cause() {
        return cause;
    }

    public int iterations() {
        return iterations;
    }

    /** Largest derivative in the parameters where the search stopped; NaN when it never began. */
    public double gradientNorm() {
        return gradientNorm;
    }

    /** Condition (one-norm) of the observed information; infinite when it is not positive definite. */
    public double condition() {
        return condition;
    }

    /** The model at the maximum. */
    public MarkovModel model() {
        requireConverged();
        return model;
    }

    public double logLikelihood() {
        requireConverged();
        return logLikelihood;
    }

    /** Intensity of an allowed move where all covariates are 0. */
    public Rate intensity(int from, int to) {
        requireConverged();
        int m = model.moves().indexOf(new MarkovModel.Pair(from, to));
        if (m < 0) {
            throw new IllegalArgumentException("the move from state " + from + " to " + to + " is not allowed");
        }
        double rate = model.intensities().rate(from, to);
        return rate(rate, Math.sqrt(covariance[m][m]) * rate);
    }

    /** Rate of leaving a state by any move, its error by the delta method; for an absorbing state all 0. */
    public Rate exitRate(int state) {
        requireConverged();
        double variance = 0;
        List<MarkovModel.Pair> moves = model.moves();
        for (int a = 0; a < moves.size(); a++) {
            for (int b = 0; b < moves.size(); b++) {
                if (moves.get(a).from() == state && moves.get(b).from() == state) {
                    variance += model.intensities().rate(state, moves.get(a).to())
                            * model.intensities().rate(state, moves.get(b).to())
                            * covariance[a][b];
                }
            }
        }
        return rate(model.intensities().exitRate(state), Math.sqrt(variance));
    }

    /** Covariance of the parameters in the order of {@link MarkovModel}. */
    public double[][] covariance() {
        requireConverged();
        double[][] copy = new double[covariance.length][];
        for (int i = 0; i < copy.length; i++) {
            copy[i] = covariance[i].clone();
        }
        return copy;
    }

    private static Rate rate(double value, double se) {
        if (value == 0) {
            return new Rate(0, 0, 0, 0);
        }
        double factor = Math.exp(StandardNormal.quantile(0.975) * se / value);
        return new Rate(value, se, value / factor, value * factor);
    }

    private void requireConverged() {
        if (!converged()) {
            throw new IllegalStateException(
                    "the Markov fit has no values: " + status + ", " + cause + "; ask converged() first");
        }
    }
}
