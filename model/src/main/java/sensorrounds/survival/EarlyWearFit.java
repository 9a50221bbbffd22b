package sensorrounds.survival;

import java.util.Optional;

/**
 * What came of an {@link EarlyWearFitter}.
 *
 * @param law empty when the data do not tell the two hazards apart; the report then says why
 * @param parameters fitted: 3 with a constant early hazard, 4 with a free early shape
 * @param logLikelihood NaN without a law
 * @param report what it says of itself
 */
public record EarlyWearFit(Optional<EarlyWearLife> law, int parameters, double logLikelihood, FitReport report) {
    static EarlyWearFit failed(int parameters, FitReport report) {
        return new EarlyWearFit(Optional.empty(), parameters, Double.NaN, report);
    }

    /** Akaike's information criterion, smaller is better; infinite without a law. Akaike (1974), IEEE Trans. AC 19:716. */
    public double aic() {
        return law.isPresent() ? 2 * (parameters - logLikelihood) : Double.POSITIVE_INFINITY;
    }
}
