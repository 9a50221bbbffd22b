package sensorrounds.run;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.IntSupplier;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import sensorrounds.analyse.FleetReviewJob;
import sensorrounds.analyst.VehicleFits;
import sensorrounds.condition.ConditionFigure;
import sensorrounds.condition.ConditionMoment;
import sensorrounds.condition.ReaderQuality;
import sensorrounds.condition.WatchEntry;
import sensorrounds.history.Finding;
import sensorrounds.history.FollowUp;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.WarningEpisode;
import sensorrounds.outlook.UnmonitoredWheel;
import sensorrounds.recurrence.RecurringVehicle;
import sensorrounds.replacement.RankedReplacement;
import sensorrounds.replacement.Ranker;
import sensorrounds.report.ReportData.FindingGroup;
import sensorrounds.review.VehicleReview;
import sensorrounds.review.WarningCounts;
import sensorrounds.rounds.RoundStop;
import sensorrounds.rounds.RoundWeek;
import sensorrounds.run.TableWriter.Order;
import sensorrounds.run.TableWriter.Written;
import sensorrounds.tables.Budgets;
import sensorrounds.tables.CauseIncidences;
import sensorrounds.tables.CohortComparisons;
import sensorrounds.tables.ComebackRates;
import sensorrounds.tables.ConditionFits;
import sensorrounds.tables.ConditionHistories;
import sensorrounds.tables.CovariateEffectRows;
import sensorrounds.tables.FailureCalendars;
import sensorrounds.tables.FalseFlagShares;
import sensorrounds.tables.Findings;
import sensorrounds.tables.FitReports;
import sensorrounds.tables.FollowUps;
import sensorrounds.tables.LifeAheads;
import sensorrounds.tables.NoFaultShares;
import sensorrounds.tables.RankedReplacements;
import sensorrounds.tables.ReaderQualities;
import sensorrounds.tables.RecurringVehicles;
import sensorrounds.tables.Rounds;
import sensorrounds.tables.Seasons;
import sensorrounds.tables.SensorLives;
import sensorrounds.tables.StockOutlooks;
import sensorrounds.tables.SurvivalCurves;
import sensorrounds.tables.SurvivalFits;
import sensorrounds.tables.Suspects;
import sensorrounds.tables.Table;
import sensorrounds.tables.UnmonitoredWheels;
import sensorrounds.tables.WarningCurves;
import sensorrounds.tables.WarningEpisodes;
import sensorrounds.tables.WarningTrends;
import sensorrounds.tables.WatchList;

/** Writes every result table, each in the order its reader wants, and keeps the first rows of each for the report. */
final class ResultTables {
    /** Findings of each kind that the report shows. */
    private static final int EXAMPLES = 5;
    /** Stops that the sheets of the report hold together at most, a few pages a depot. */
    private static final int SHEET_STOPS = 1500;

    private final TableWriter writer;
    private final int keep;
    private final Map<String, Long> rows = new LinkedHashMap<>();

    ResultTables(TableWriter writer, int keep) {
        this.writer = writer;
        this.keep = keep;
    }

    /**
     * First rows of the tables that the report and the workbook show, with their full length.
     *
     * @param stops by depot, week and order
     * @param firstWeek stops of the first week of the depots whose sheets the report holds
     * @param rows length of each table by name
     */
    record Heads(
            Written<RankedReplacement> ranked,
            Written<UnmonitoredWheel> unmonitored,
            Written<RecurringVehicle> recurring,
            Written<WatchEntry> watch,
            Written<FollowUp> followUps,
            Written<ReaderQuality> readers,
            List<FindingGroup> findings,
            Written<RoundStop> stops,
            List<RoundStop> firstWeek,
            Map<String, Long> rows) {}

    /** @param acrossVehicles findings that are no single vehicle's */
    Heads write(JavaRDD<VehicleHistory> histories, List<Finding> acrossVehicles, FleetReviewJob.Result review) {
        JavaRDD<VehicleReview> reviews = review.reviews();
        Written<RankedReplacement> ranked =
                ranked(reviews.flatMap(r -> r.lines().iterator()));
        Written<UnmonitoredWheel> unmonitored = write(
                UnmonitoredWheels.TABLE, reviews.flatMap(r -> r.unmonitored().iterator()), Orders.UNMONITORED);
        JavaRDD<RecurringVehicle> vehicles =
                reviews.filter(r -> r.recurring() != null).map(VehicleReview::recurring);
        Written<RecurringVehicle> recurring = write(RecurringVehicles.TABLE, vehicles, Orders.RECURRING);
        write(Suspects.TABLE, vehicles.flatMap(v -> Suspects.of(v).iterator()), Orders.SUSPECTS);
        Written<WatchEntry> watch =
                write(WatchList.TABLE, reviews.flatMap(r -> r.watch().iterator()), Orders.WATCH);
        Written<FollowUp> followUps =
                write(FollowUps.TABLE, histories.flatMap(h -> h.followUps().iterator()), Orders.FOLLOW_UPS);
        rows.put(
                SensorLives.TABLE.name(),
                writer.write(SensorLives.TABLE, histories.flatMap(h -> h.lives().iterator()), LifeKey::of));
        write(WarningEpisodes.TABLE, histories.flatMap(h -> h.episodes().iterator()), Orders.EPISODES);
        JavaRDD<Finding> ofVehicles = histories.flatMap(h -> h.findings().iterator());
        JavaRDD<Finding> allFindings = acrossVehicles.isEmpty()
                ? ofVehicles
                : ofVehicles.union(
                        JavaSparkContext.fromSparkContext(ofVehicles.context()).parallelize(acrossVehicles, 1));
        write(Findings.TABLE, allFindings, Orders.FINDINGS);
        List<FindingGroup> findings = allFindings
                .treeAggregate(new FindingHeads(EXAMPLES, Orders.FINDINGS), FindingHeads::add, FindingHeads::merge)
                .groups();
        write(StockOutlooks.TABLE, review.stock());
        write(Budgets.TABLE, review.budget());
        write(Rounds.TABLE, review.weeks());
        Written<RoundStop> stops =
                write(Rounds.STOPS, review.rounds().flatMap(r -> r.stops().iterator()), Orders.ROUNDS);
        WarningCounts.Summary warnings = review.counts()
                .warnings()
                .summary(review.totals().recurringCells(), review.estimates().peers());
        write(ComebackRates.TABLE, warnings.comebacks());
        write(NoFaultShares.TABLE, warnings.noFaults());
        write(FalseFlagShares.TABLE, warnings.falseFlags());
        write(WarningTrends.TABLE, warnings.trends());
        write(WarningCurves.TABLE, warnings.curve());
        write(ConditionFits.TABLE, ConditionFigure.of(review.condition(), review.likeness()));
        write(ConditionHistories.TABLE, reviews.flatMap(r -> r.condition().iterator()), Orders.CONDITION);
        write(SurvivalFits.TABLE, review.estimates().fits());
        write(FitReports.TABLE, review.estimates().reports());
        write(SurvivalCurves.TABLE, review.estimates().curves());
        write(CauseIncidences.TABLE, review.estimates().incidence());
        write(CohortComparisons.TABLE, review.estimates().comparisons());
        write(FailureCalendars.TABLE, review.calendar());
        write(LifeAheads.TABLE, review.ahead());
        write(
                LifeAheads.CURVES,
                review.ahead().stream().flatMap(LifeAheads::lines).toList());
        VehicleFits fits = review.estimates().vehicles();
        write(CovariateEffectRows.TABLE, fits.effects().effects());
        write(CovariateEffectRows.FAMILIES, fits.effects().families());
        write(CovariateEffectRows.LIKENESS, List.of(fits.likeness()));
        write(Seasons.EFFECT, List.of(fits.season()));
        write(Seasons.CLIMATE, fits.climate());
        Written<ReaderQuality> readers =
                write(ReaderQualities.TABLE, review.estimates().wake().qualities());
        return new Heads(
                ranked,
                unmonitored,
                recurring,
                watch,
                followUps,
                readers,
                findings,
                stops,
                firstWeek(review),
                Map.copyOf(rows));
    }

    /** Depots in order, as many as the report has room for; a single one in any case. */
    private static List<RoundStop> firstWeek(FleetReviewJob.Result review) {
        Set<String> depots = new HashSet<>();
        int stops = 0;
        for (RoundWeek week : review.weeks()) {
            if (week.week() == 1 && (depots.isEmpty() || stops + week.vehicles() <= SHEET_STOPS)) {
                stops += week.vehicles();
                depots.add(week.depot());
            }
        }
        List<RoundStop> first = new ArrayList<>(review.rounds()
                .filter(plan -> depots.contains(plan.depot()))
                .flatMap(
                        plan -> plan.stops().stream().filter(s -> s.week() == 1).iterator())
                .collect());
        first.sort(Orders.ROUNDS::compare);
        return first;
    }

    private Written<RankedReplacement> ranked(JavaRDD<RankedReplacement> lines) {
        if (writer.fits(lines.count())) {
            return write(RankedReplacements.TABLE, Ranker.rank(lines.collect()));
        }
        JavaRDD<RankedReplacement> sorted = TableWriter.sorted(lines, Orders.SAVING)
                .zipWithIndex()
                .map(t -> t._1().withRank(Math.toIntExact(t._2() + 1)));
        return write(RankedReplacements.TABLE, sorted, Orders.RANK);
    }

    private <T> Written<T> write(Table<T> table, JavaRDD<T> all, Order<T> order) {
        return noted(table, writer.write(table, all, order, keep));
    }

    private <T> Written<T> write(Table<T> table, List<T> all) {
        return noted(table, writer.write(table, all, keep));
    }

    private <T> Written<T> noted(Table<T> table, Written<T> written) {
        rows.put(table.name(), written.rows());
        return written;
    }

    /** The order in which each table stands. Every one is total, so that equal input gives equal files. */
    private static final class Orders {
        private static final Comparator<String> TEXT = Comparator.nullsLast(Comparator.naturalOrder());
        private static final Comparator<RankedReplacement> BY_SAVING = Ranker.order();
        static final Order<RankedReplacement> SAVING = (a, b) -> BY_SAVING.compare(a, b);
        static final Order<RankedReplacement> RANK = (a, b) -> Integer.compare(a.rank(), b.rank());
        static final Order<RoundStop> ROUNDS = (a, b) -> first(
                TEXT.compare(a.depot(), b.depot()),
                Integer.compare(a.week(), b.week()),
                Integer.compare(a.order(), b.order()));
        static final Order<UnmonitoredWheel> UNMONITORED = (a, b) -> first(
                a.certainty().compareTo(b.certainty()),
                TEXT.compare(a.depot(), b.depot()),
                a.vehicleId().compareTo(b.vehicleId()),
                TEXT.compare(a.wheelSet(), b.wheelSet()),
                TEXT.compare(code(a.position()), code(b.position())),
                TEXT.compare(a.sensorId(), b.sensorId()));
        static final Order<RecurringVehicle> RECURRING = (a, b) -> first(
                a.pattern().compareTo(b.pattern()),
                Double.compare(b.probabilityAbovePeers(), a.probabilityAbovePeers()),
                a.vehicleId().compareTo(b.vehicleId()));
        static final Order<Suspects.Line> SUSPECTS = (a, b) -> first(
                a.vehicleId().compareTo(b.vehicleId()),
                Integer.compare(a.suspect().order(), b.suspect().order()));
        static final Order<WatchEntry> WATCH = (a, b) -> first(
                a.sign().compareTo(b.sign()),
                // NaN, for signs without a probability, stands on its own side of the order.
                Double.compare(b.probability(), a.probability()),
                a.vehicleId().compareTo(b.vehicleId()),
                TEXT.compare(a.wheelSet(), b.wheelSet()),
                TEXT.compare(code(a.position()), code(b.position())),
                a.sensorId().compareTo(b.sensorId()));
        static final Order<ConditionMoment> CONDITION = (a, b) -> first(
                a.vehicleId().compareTo(b.vehicleId()),
                TEXT.compare(a.wheelSet(), b.wheelSet()),
                TEXT.compare(code(a.position()), code(b.position())),
                a.sensorId().compareTo(b.sensorId()),
                a.day().compareTo(b.day()));
        static final Order<FollowUp> FOLLOW_UPS = (a, b) -> first(
                a.state().compareTo(b.state()),
                a.repairedOn().compareTo(b.repairedOn()),
                a.vehicleId().compareTo(b.vehicleId()),
                a.visitId().compareTo(b.visitId()));
        static final Order<WarningEpisode> EPISODES = (a, b) -> within(
                a.vehicleId(),
                b.vehicleId(),
                () -> first(
                        a.firstSeen().compareTo(b.firstSeen()),
                        a.kind().compareTo(b.kind()),
                        String.join(" ", a.visitIds()).compareTo(String.join(" ", b.visitIds()))));
        static final Order<Finding> FINDINGS = (a, b) -> within(
                a.vehicleId(),
                b.vehicleId(),
                () -> first(
                        TEXT.compare(text(a.day()), text(b.day())),
                        a.kind().compareTo(b.kind()),
                        TEXT.compare(code(a.position()), code(b.position())),
                        TEXT.compare(a.wheelSet(), b.wheelSet()),
                        TEXT.compare(a.sensorId(), b.sensorId()),
                        a.what().compareTo(b.what()),
                        a.sources().toString().compareTo(b.sources().toString())));

        private Orders() {}

        /** What stands below is worked out for rows of one vehicle only: there are many rows, and few of each vehicle. */
        private static int within(String vehicle, String other, IntSupplier comparison) {
            int byVehicle = vehicle.compareTo(other);
            return byVehicle != 0 ? byVehicle : comparison.getAsInt();
        }

        private static int first(int... comparisons) {
            for (int c : comparisons) {
                if (c != 0) {
                    return c;
                }
            }
            return 0;
        }

        private static String code(Object position) {
            return text(position);
        }

        private static String text(Object value) {
            return value == null ? null : value.toString();
        }
    }
}
