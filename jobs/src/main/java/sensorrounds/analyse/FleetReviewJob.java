package sensorrounds.analyse;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.spark.api.java.JavaPairRDD;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.broadcast.Broadcast;
import scala.Tuple2;
import sensorrounds.analyst.CalendarRow;
import sensorrounds.analyst.LifeAheadRow;
import sensorrounds.condition.HiddenFit;
import sensorrounds.condition.SetCells;
import sensorrounds.condition.SetLikeness;
import sensorrounds.fleet.Part;
import sensorrounds.fleet.StockOnHand;
import sensorrounds.history.VehicleHistory;
import sensorrounds.keep.Kept;
import sensorrounds.outlook.ReportRatios;
import sensorrounds.review.BudgetReview;
import sensorrounds.review.Conditions;
import sensorrounds.review.Estimates;
import sensorrounds.review.FleetCounts;
import sensorrounds.review.FleetTotals;
import sensorrounds.review.ReportCounts;
import sensorrounds.review.ReviewSettings;
import sensorrounds.review.StockReview;
import sensorrounds.review.VehicleReview;
import sensorrounds.review.VehicleReviewer;
import sensorrounds.rounds.RoundCall;
import sensorrounds.rounds.RoundPlan;
import sensorrounds.rounds.RoundPlanner;
import sensorrounds.rounds.RoundWeek;
import sensorrounds.stock.BudgetMonth;
import sensorrounds.stock.DemandKey;
import sensorrounds.stock.DemandState;
import sensorrounds.stock.StockOutlook;

/**
 * The steps of {@link sensorrounds.review.FleetReview} over partitions. Only counts and cells come to the driver; every
 * state that is merged is exact, so the partitioning does not show in any figure.
 */
public final class FleetReviewJob {
    private final JavaSparkContext spark;
    private final ReviewSettings settings;
    private final LocalDate asOf;

    public FleetReviewJob(JavaSparkContext spark, ReviewSettings settings, LocalDate asOf) {
        this.spark = spark;
        this.settings = settings;
        this.asOf = asOf;
    }

    /**
     * The review of a fleet, held over the cluster.
     *
     * @param ahead life still ahead at an age by last report, and after a first low report
     * @param calendar failures by calendar year and month
     * @param reviews one for each vehicle, persisted
     * @param stock ordered by part, depot, month
     * @param rounds of each depot, persisted
     * @param weeks the same by depot and week
     */
    public record Result(
            FleetCounts counts,
            Estimates estimates,
            ReportRatios ratios,
            HiddenFit condition,
            List<LifeAheadRow> ahead,
            List<CalendarRow> calendar,
            SetLikeness likeness,
            JavaRDD<VehicleReview> reviews,
            FleetTotals totals,
            List<StockOutlook> stock,
            JavaRDD<RoundPlan> rounds,
            List<RoundWeek> weeks,
            List<BudgetMonth> budget) {}

    /** @param histories one for each vehicle; walked through several times, so best persisted by the caller */
    public Result run(JavaRDD<VehicleHistory> histories, Map<String, Part> parts, List<StockOnHand> onHand) {
        spark.setJobDescription("Count the fleet");
        FleetCounts counts = counts(histories);
        VehiclesOverPartitions vehicles = new VehiclesOverPartitions(histories.map(FleetCounts::sampled));
        Estimates estimates = Estimates.of(counts, settings, vehicles);
        vehicles.release();

        spark.setJobDescription("Count failures by last report");
        Broadcast<Estimates> fitted = spark.broadcast(estimates);
        ReportCounts reports = reports(histories, fitted);
        ReportRatios ratios = ReportRatios.fit(reports.cells(), settings.outlook());

        spark.setJobDescription("Fit the hidden condition of sensors");
        HiddenFit condition = condition(histories, counts, estimates);

        spark.setJobDescription("Review each vehicle");
        SetLikeness likeness = SetLikeness.fit(sets(histories, fitted));
        VehicleReviewer reviewer = new VehicleReviewer(
                estimates, ratios, condition, likeness, reports.suspects().learn(condition), parts, asOf);
        Broadcast<VehicleReviewer> shared = spark.broadcast(reviewer);
        JavaRDD<VehicleReview> reviews =
                Kept.of(histories.map(h -> shared.value().review(h)));

        spark.setJobDescription("Add up the demand for parts");
        Map<DemandKey, DemandState> demand = new HashMap<>(demand(reviews).collectAsMap());
        List<StockOutlook> stock = StockReview.of(demand, onHand, parts, reviewer.stock());
        spark.setJobDescription("Plan the rounds of each depot");
        JavaRDD<RoundPlan> rounds = rounds(reviews);
        List<RoundPlan> depots =
                new ArrayList<>(rounds.map(RoundPlan::withoutStops).collect());
        depots.sort(Comparator.comparing(RoundPlan::depot, Comparator.nullsLast(Comparator.naturalOrder())));
        return new Result(
                counts,
                estimates,
                ratios,
                condition,
                reports.ahead(),
                reports.calendar(),
                likeness,
                reviews,
                totals(histories, reviews),
                stock,
                rounds,
                depots.stream().flatMap(plan -> plan.weeks().stream()).toList(),
                new BudgetReview(parts, settings.costs(), settings.replacement())
                        .months(demand, stock, depots, settings.stock().months(), asOf));
    }

    /** A depot's calls are few against its vehicles, and are planned in one place. */
    private JavaRDD<RoundPlan> rounds(JavaRDD<VehicleReview> reviews) {
        RoundPlanner planner = new RoundPlanner(settings.rounds(), asOf);
        return Kept.of(reviews.filter(r -> r.call() != null)
                .mapToPair(r -> new Tuple2<>(r.call().depot(), r.call()))
                .groupByKey()
                .map(depot -> {
                    List<RoundCall> calls = new ArrayList<>();
                    depot._2().forEach(calls::add);
                    return planner.plan(depot._1(), calls);
                }));
    }

    private static FleetTotals totals(JavaRDD<VehicleHistory> histories, JavaRDD<VehicleReview> reviews) {
        FleetTotals reviewed =
                reviews.treeAggregate(new FleetTotals(), (totals, r) -> totals.add(r), FleetTotals::merge);
        return reviewed.merge(
                histories.treeAggregate(new FleetTotals(), (totals, h) -> totals.add(h), FleetTotals::merge));
    }

    private FleetCounts counts(JavaRDD<VehicleHistory> histories) {
        ReviewSettings s = settings;
        LocalDate day = asOf;
        return histories.treeAggregate(new FleetCounts(s, day), FleetCounts::add, FleetCounts::merge);
    }

    private HiddenFit condition(JavaRDD<VehicleHistory> histories, FleetCounts counts, Estimates estimates) {
        List<ReadingsOverPartitions> held = new ArrayList<>();
        HiddenFit fit = Conditions.fit(counts, estimates, asOf, conditions -> {
            held.add(new ReadingsOverPartitions(spark, histories, conditions));
            return held.get(0);
        });
        held.forEach(ReadingsOverPartitions::release);
        return fit;
    }

    private static SetCells sets(JavaRDD<VehicleHistory> histories, Broadcast<Estimates> fitted) {
        return histories.treeAggregate(
                new SetCells(), (cells, h) -> fitted.value().countSets(cells, h), SetCells::merge);
    }

    private ReportCounts reports(JavaRDD<VehicleHistory> histories, Broadcast<Estimates> fitted) {
        return histories.treeAggregate(
                new ReportCounts(settings, asOf), (counts, h) -> counts.add(h, fitted.value()), ReportCounts::merge);
    }

    private static JavaPairRDD<DemandKey, DemandState> demand(JavaRDD<VehicleReview> reviews) {
        return reviews.flatMap(r -> r.demand().iterator())
                .mapToPair(u -> new Tuple2<>(u.key(), u))
                .aggregateByKey(
                        new DemandState(),
                        (state, u) -> {
                            state.add(u);
                            return state;
                        },
                        DemandState::merge);
    }
}
