package sensorrounds.report;

import java.time.LocalDate;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sensorrounds.condition.ReaderQuality;
import sensorrounds.condition.WatchEntry;
import sensorrounds.fleet.Part;
import sensorrounds.history.FailureCause;
import sensorrounds.history.Finding;
import sensorrounds.history.FollowUp;
import sensorrounds.outlook.LastReport;
import sensorrounds.outlook.UnmonitoredWheel;
import sensorrounds.recurrence.RecurringVehicle;
import sensorrounds.replacement.RankedReplacement;
import sensorrounds.review.FleetTotals;
import sensorrounds.review.WarningCounts;
import sensorrounds.stock.StockOutlook;
import sensorrounds.survival.CohortFit;
import sensorrounds.survival.CurvePoint;

/**
 * All that the report shows, in plain lists. The caller limits the long lists and says how long each one was; the report
 * sorts for itself where order matters, so equal contents give equal bytes. Lists may be empty, never null.
 *
 * @param fits one for each cohort
 * @param curves points of all cohorts and methods, any order
 * @param ranked the replacement list by rank
 * @param unmonitored wheels without a low-pressure warning; best given whole
 * @param recurring vehicles with system warnings, recurring or not
 * @param stock every part, depot and month
 * @param parts descriptions and prices of the parts in {@code stock}; a part without an entry shows its number
 * @param findings contradictions in the logs by kind
 * @param failureCauses failures by cause
 * @param nextPlannedVisits next booked stop by vehicle; vehicles without one are left out
 * @param depots depot by vehicle, for lists whose records carry none; vehicles without one are left out
 * @param ratios how the last report moves the hazard
 * @param totals figures over the whole fleet, where the lists are cut
 * @param warnings system warnings over time, back after repair, and with no fault found; any order
 * @param decisions rounds and budget
 * @param vehiclePages address of a vehicle's own page, relative to the report, for those that have one, in order
 * @param survival what stands beside the curves: causes, comparisons
 */
public record ReportData(
        RunFacts run,
        List<CohortFit> fits,
        List<CurvePoint> curves,
        Listed<RankedReplacement> ranked,
        Listed<UnmonitoredWheel> unmonitored,
        Listed<RecurringVehicle> recurring,
        Listed<WatchEntry> watch,
        Listed<FollowUp> followUps,
        List<StockOutlook> stock,
        List<Part> parts,
        Listed<ReaderQuality> readers,
        List<FindingGroup> findings,
        Map<FailureCause, Long> failureCauses,
        Map<String, LocalDate> nextPlannedVisits,
        Map<String, String> depots,
        List<ReportRatio> ratios,
        FleetTotals totals,
        WarningCounts.Summary warnings,
        SurvivalFacts survival,
        DecisionFacts decisions,
        Map<String, String> vehiclePages) {

    public ReportData {
        fits = List.copyOf(fits);
        curves = List.copyOf(curves);
        stock = List.copyOf(stock);
        parts = List.copyOf(parts);
        findings = List.copyOf(findings);
        Map<FailureCause, Long> causes = new EnumMap<>(FailureCause.class);
        causes.putAll(failureCauses);
        failureCauses = Collections.unmodifiableMap(causes);
        nextPlannedVisits = Collections.unmodifiableMap(new TreeMap<>(nextPlannedVisits));
        depots = Collections.unmodifiableMap(new TreeMap<>(depots));
        ratios = List.copyOf(ratios);
        vehiclePages = Collections.unmodifiableMap(new LinkedHashMap<>(vehiclePages));
    }

    /** The same with lists of at most so many rows. */
    ReportData top(int rows) {
        return new ReportData(
                run,
                fits,
                curves,
                ranked.top(rows),
                unmonitored.top(rows),
                recurring.top(rows),
                watch.top(rows),
                followUps.top(rows),
                stock,
                parts,
                readers.top(rows),
                findings,
                failureCauses,
                nextPlannedVisits,
                depots,
                ratios,
                totals,
                warnings,
                survival,
                decisions,
                vehiclePages);
    }

    /**
     * A list cut to what a reader can use, and how long it was.
     *
     * @param total length before the cut, at least that of {@code rows}
     */
    public record Listed<T>(List<T> rows, long total) {
        public Listed {
            rows = List.copyOf(rows);
            if (total < rows.size()) {
                throw new IllegalArgumentException("a list of " + rows.size() + " rows cannot be the top of " + total
                        + "; give the length before the cut");
            }
        }

        public static <T> Listed<T> whole(List<T> rows) {
            return new Listed<>(rows, rows.size());
        }

        /** The first of its rows. */
        public Listed<T> top(int n) {
            return new Listed<>(rows.subList(0, Math.min(n, rows.size())), total);
        }

        public boolean cut() {
            return rows.size() < total;
        }
    }

    /**
     * Contradictions of one kind.
     *
     * @param examples the first few of {@code count}
     */
    public record FindingGroup(Finding.Kind kind, long count, List<Finding> examples) {
        public FindingGroup {
            examples = List.copyOf(examples);
        }
    }

    /**
     * Hazard after a last report against all sensors of the same age.
     *
     * @param ratio observed to expected, as the run used it
     * @param observed failures seen after that report
     * @param expected failures that age alone would have given
     */
    public record ReportRatio(LastReport report, double ratio, long observed, double expected) {}
}
