package sensorrounds.frailty;

import java.util.List;
import sensorrounds.numeric.GammaFunction;
import sensorrounds.regression.Coefficient;
import sensorrounds.regression.RegressionFit;
import sensorrounds.survival.Estimate;
import sensorrounds.survival.FitReport;
import sensorrounds.survival.FitStatus;

/**
 * What came of a {@link FrailtyFitter}: a law of life with the variance of frailty, or the reason why there is none.
 * Asking a failed fit for its figures throws.
 */
public final class FrailtyFit {
    private final FrailtyStatus status;
    private final String cause;
    private final int vehicles;
    private final RegressionFit apart;
    private final FrailtyFitter.Search search;
    private final Solution solution;

    /** Coefficients in own units; the covariance has log variance last, or leaves it out where the variance is 0. */
    record Solution(
            List<Coefficient> coefficients,
            double[][] covariance,
            double logLikelihood,
            Estimate variance,
            double varianceError,
            FrailtyLaw law) {}

    FrailtyFit(
            FrailtyStatus status,
            String cause,
            int vehicles,
            RegressionFit apart,
            FrailtyFitter.Search search,
            Solution solution) {
        this.status = status;
        this.cause = cause;
        this.vehicles = vehicles;
        this.apart = apart;
        this.search = search;
        this.solution = solution;
    }

    public FrailtyStatus status() {
        return status;
    }

    /** Whether there is a law, be it one without likeness. */
    public boolean converged() {
        return solution != null;
    }

    /** What it says of itself, as every fit does; a law without likeness is one. */
    public FitReport report() {
        FitStatus code = switch (status) {
            case CONVERGED, NO_LIKENESS -> FitStatus.CONVERGED;
            case NO_LAW_WITHOUT_FRAILTY -> apart.report().status();
            case NO_SETS -> FitStatus.NO_SETS;
            case FLAT_LIKELIHOOD -> FitStatus.FLAT_LIKELIHOOD;
            case NOT_CONVERGED -> FitStatus.NOT_CONVERGED;
        };
        return new FitReport(
                code,
                cause,
                status == FrailtyStatus.NO_LAW_WITHOUT_FRAILTY ? apart.report().column() : "",
                apart.lives(),
                apart.failures(),
                apart.exposure(),
                iterations(),
                gradientNorm(),
                condition());
    }

    /** Why there is no law, in words; empty when there is one. */
    public String cause() {
        return cause;
    }

    /** Vehicles looked at. */
    public int vehicles() {
        return vehicles;
    }

    /** The fit to the same lives as if no two had a vehicle in common. */
    public RegressionFit apart() {
        return apart;
    }

    /** Newton steps of the search that is reported. */
    public int iterations() {
        return search.iterations();
    }

    /** Largest derivative in standard units, per failure, where the search stopped; NaN when it never began. */
    public double gradientNorm() {
        return search.gradientNorm();
    }

    /** Condition (one-norm) of the information in standard units; NaN when no search began. */
    public double condition() {
        return search.condition();
    }

    /** Given alive at entry; of T, so exact failures count by their density per unit of time. */
    public double logLikelihood() {
        return solution().logLikelihood();
    }

    /** Variance of frailty over vehicles, with likelihood-ratio limits; the lower one is 0 where none is in reach. */
    public Estimate variance() {
        return solution().variance();
    }

    /** Standard error of the variance; 0 where the variance is 0, and then without meaning: see {@link #variance}. */
    public double varianceError() {
        return solution().varianceError();
    }

    /** Rank correlation of two lives of one vehicle, variance / (variance + 2): Klein and Moeschberger (2003), 13.1. */
    public double kendallTau() {
        return variance().value() / (variance().value() + 2);
    }

    /**
     * Chance of as much gain over lives apart when there is no likeness: half the chi-square tail, since the variance
     * lies on its bound then. Self and Liang (1987), JASA 82:605-610.
     */
    public double pValue() {
        double ratio = 2 * (logLikelihood() - apart.logLikelihood());
        return ratio > 0 ? Math.exp(GammaFunction.logRegularizedUpper(0.5, ratio / 2)) / 2 : 1;
    }

    /** Coefficients for a vehicle of frailty 1: of log scale, then log shape unless exponential; Wald limits. */
    public List<Coefficient> coefficients() {
        return solution().coefficients();
    }

    /** Covariance of {@link #coefficients} in their order, log variance last; without that where the variance is 0. */
    public double[][] covariance() {
        double[][] copy = solution().covariance().clone();
        for (int i = 0; i < copy.length; i++) {
            copy[i] = copy[i].clone();
        }
        return copy;
    }

    /** The law, for what a vehicle's lives say about its other sensors. */
    public FrailtyLaw law() {
        return solution().law();
    }

    private Solution solution() {
        if (solution == null) {
            throw new IllegalStateException(
                    "there is no frailty law: " + status + ", " + cause + "; ask converged() first");
        }
        return solution;
    }
}
