package sensorrounds.report;

import java.util.List;
import sensorrounds.review.CauseIncidence;
import sensorrounds.review.CohortComparison;

/**
 * What the report shows of survival beside the curves.
 *
 * @param incidence shares ended by each cause, of all cohorts, any order
 * @param comparisons whether the cohorts differ
 * @param preventiveWarningShare share of preventive replacements above which a cohort's curve carries a warning
 */
public record SurvivalFacts(
        List<CauseIncidence> incidence, List<CohortComparison> comparisons, double preventiveWarningShare) {
    public SurvivalFacts {
        incidence = List.copyOf(incidence);
        comparisons = List.copyOf(comparisons);
    }
}
