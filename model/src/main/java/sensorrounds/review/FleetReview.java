package sensorrounds.review;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import sensorrounds.analyst.CalendarRow;
import sensorrounds.analyst.LifeAheadRow;
import sensorrounds.analyst.WholeFleet;
import sensorrounds.condition.HiddenFit;
import sensorrounds.condition.SetCells;
import sensorrounds.condition.SetLikeness;
import sensorrounds.fleet.Part;
import sensorrounds.fleet.StockOnHand;
import sensorrounds.history.VehicleHistory;
import sensorrounds.outlook.ReportRatios;
import sensorrounds.replacement.RankedReplacement;
import sensorrounds.replacement.Ranker;
import sensorrounds.rounds.RoundCall;
import sensorrounds.rounds.RoundPlan;
import sensorrounds.rounds.RoundPlanner;
import sensorrounds.stock.BudgetMonth;
import sensorrounds.stock.DemandKey;
import sensorrounds.stock.DemandState;
import sensorrounds.stock.DemandUnit;
import sensorrounds.stock.StockOutlook;

/**
 * The review of a whole fleet in plain Java: count, fit, count reports, review each vehicle, rank, add up demand. The
 * Spark jobs take the same steps over partitions, and a test holds the two to the same cells.
 *
 * @param ahead life still ahead at an age by last report, and after a first low report
 * @param calendar failures by calendar year and month
 * @param ranked every sensor in service, by rank
 * @param stock ordered by part, depot, month
 */
public record FleetReview(
        FleetCounts counts,
        Estimates estimates,
        ReportRatios ratios,
        HiddenFit condition,
        List<LifeAheadRow> ahead,
        List<CalendarRow> calendar,
        SetLikeness likeness,
        List<VehicleReview> vehicles,
        FleetTotals totals,
        List<RankedReplacement> ranked,
        List<StockOutlook> stock,
        List<RoundPlan> rounds,
        List<BudgetMonth> budget) {

    public static FleetReview of(
            List<VehicleHistory> histories,
            ReviewSettings settings,
            Map<String, Part> parts,
            List<StockOnHand> onHand,
            LocalDate asOf) {
        return of(histories, settings, parts, onHand, asOf, Conditions.inMemory(histories));
    }

    /** @param readings what the hidden condition is fitted to */
    public static FleetReview of(
            List<VehicleHistory> histories,
            ReviewSettings settings,
            Map<String, Part> parts,
            List<StockOnHand> onHand,
            LocalDate asOf,
            Function<Conditions, Conditions.Fleet> readings) {
        FleetCounts counts = new FleetCounts(settings, asOf);
        histories.forEach(counts::add);
        Estimates estimates = Estimates.of(
                counts, settings, WholeFleet.of(() -> histories.stream().map(FleetCounts::sampled)));
        ReportCounts reports = new ReportCounts(settings, asOf);
        histories.forEach(h -> reports.add(h, estimates));
        ReportRatios ratios = ReportRatios.fit(reports.cells(), settings.outlook());
        HiddenFit condition = Conditions.fit(counts, estimates, asOf, readings);
        SetCells sets = new SetCells();
        histories.forEach(h -> estimates.countSets(sets, h));
        SetLikeness likeness = SetLikeness.fit(sets);
        VehicleReviewer reviewer = new VehicleReviewer(
                estimates, ratios, condition, likeness, reports.suspects().learn(condition), parts, asOf);
        List<VehicleReview> reviews = histories.stream().map(reviewer::review).toList();
        List<RankedReplacement> lines = new ArrayList<>();
        Map<DemandKey, DemandState> demand = new HashMap<>();
        for (VehicleReview r : reviews) {
            lines.addAll(r.lines());
            for (DemandUnit u : r.demand()) {
                demand.computeIfAbsent(u.key(), k -> new DemandState()).add(u);
            }
        }
        FleetTotals totals = new FleetTotals();
        reviews.forEach(totals::add);
        histories.forEach(totals::add);
        List<StockOutlook> stock = StockReview.of(demand, onHand, parts, reviewer.stock());
        Map<String, List<RoundCall>> calls = new TreeMap<>(Comparator.nullsLast(Comparator.naturalOrder()));
        for (VehicleReview r : reviews) {
            if (r.call() != null) {
                calls.computeIfAbsent(r.call().depot(), d -> new ArrayList<>()).add(r.call());
            }
        }
        RoundPlanner planner = new RoundPlanner(settings.rounds(), asOf);
        List<RoundPlan> rounds = calls.entrySet().stream()
                .map(e -> planner.plan(e.getKey(), e.getValue()))
                .toList();
        return new FleetReview(
                counts,
                estimates,
                ratios,
                condition,
                reports.ahead(),
                reports.calendar(),
                likeness,
                reviews,
                totals,
                Ranker.rank(lines),
                stock,
                rounds,
                new BudgetReview(parts, settings.costs(), settings.replacement())
                        .months(demand, stock, rounds, settings.stock().months(), asOf));
    }
}
