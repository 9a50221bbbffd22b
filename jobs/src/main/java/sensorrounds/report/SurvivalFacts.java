package sensorrounds.report;

import java.util.List;
import java.util.Optional;
import sensorrounds.analyst.CalendarRow;
import sensorrounds.analyst.LifeAheadRow;
import sensorrounds.analyst.VehicleFits;
import sensorrounds.review.CauseIncidence;
import sensorrounds.review.CohortComparison;

/**
 * What the report shows of survival beside the curves.
 *
 * @param incidence shares ended by each cause, of all cohorts, any order
 * @param comparisons whether the cohorts differ
 * @param preventiveWarningShare share of preventive replacements above which a cohort's curve carries a warning
 * @param ahead life still ahead after a report, any order
 * @param calendar failures by calendar year and month, any order
 * @param vehicles who lives longer, and how alike sets are; empty when not looked at
 */
public record SurvivalFacts(
        List<CauseIncidence> incidence,
        List<CohortComparison> comparisons,
        double preventiveWarningShare,
        List<LifeAheadRow> ahead,
        List<CalendarRow> calendar,
        Optional<VehicleFits> vehicles) {
    public SurvivalFacts {
        incidence = List.copyOf(incidence);
        comparisons = List.copyOf(comparisons);
        ahead = List.copyOf(ahead);
        calendar = List.copyOf(calendar);
    }
}
