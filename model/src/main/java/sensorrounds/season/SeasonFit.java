package sensorrounds.season;

import java.io.Serializable;
import sensorrounds.survival.Estimate;
import sensorrounds.survival.FitReport;

/**
 * What the cold does to the hazard.
 *
 * @param report what the fit says of itself; the figures below are NaN unless it converged
 * @param factor hazard in cold months for one in others at the same age, with 95 % likelihood-ratio limits
 * @param pValue chance of as large a likelihood ratio if the cold did nothing
 * @param logLikelihood given alive at entry, with the factor
 * @param bands bands of age with a hazard of their own
 * @param strata groups compared within themselves, of those with a failure
 * @param leftOut lives of groups without a failure, which tell nothing of the factor
 * @param failuresCold failures that most likely fell in cold months, each interval shared out by the fitted hazard of its days
 * @param failuresOther those in the other months
 * @param yearsCold sensor-years watched in cold months
 * @param yearsOther those in the other months
 */
public record SeasonFit(
        FitReport report,
        Estimate factor,
        double pValue,
        double logLikelihood,
        int bands,
        int strata,
        double leftOut,
        double failuresCold,
        double failuresOther,
        double yearsCold,
        double yearsOther)
        implements Serializable {
    private static final Estimate NONE = new Estimate(Double.NaN, Double.NaN, Double.NaN);

    static SeasonFit failed(FitReport report, double leftOut) {
        double none = Double.NaN;
        return new SeasonFit(report, NONE, none, none, 0, 0, leftOut, none, none, none, none);
    }

    public boolean converged() {
        return report.converged();
    }

    /** The clock on which the fitted hazard knows no season; NaN factors have none. */
    public SeasonClock clock(ColdMonths cold) {
        return new SeasonClock(cold, factor.value());
    }
}
