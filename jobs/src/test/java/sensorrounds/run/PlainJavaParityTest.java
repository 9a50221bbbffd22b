package sensorrounds.run;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Stream;
import org.apache.hadoop.conf.Configuration;
import org.apache.spark.sql.Row;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import sensorrounds.analyst.VehicleFits;
import sensorrounds.assemble.Histories;
import sensorrounds.assemble.Moves;
import sensorrounds.condition.ConditionFigure;
import sensorrounds.condition.HiddenModel;
import sensorrounds.condition.HiddenPass;
import sensorrounds.condition.HiddenReadings;
import sensorrounds.condition.ImpossibleReadings;
import sensorrounds.history.FollowUp;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VehicleMoves;
import sensorrounds.ingest.LogFile;
import sensorrounds.ingest.LogReader;
import sensorrounds.ingest.LogSlice;
import sensorrounds.replacement.Advice;
import sensorrounds.review.Conditions;
import sensorrounds.review.FleetReview;
import sensorrounds.review.VehicleReview;
import sensorrounds.review.WarningCounts;
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
import sensorrounds.tables.LogRow;
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
import sensorrounds.tables.Tables;
import sensorrounds.tables.UnmonitoredWheels;
import sensorrounds.tables.WarningCurves;
import sensorrounds.tables.WarningEpisodes;
import sensorrounds.tables.WarningTrends;
import sensorrounds.tables.WatchList;
import sensorrounds.visit.LoggedWheel;

/**
 * The same logs through plain Java, without Spark: every table must come out the same, cell by cell. The rows are read one
 * file after the other and vehicles walked in the order of their names, so no partitioning of Spark's is repeated here.
 */
class PlainJavaParityTest {
    private static List<VehicleHistory> histories;
    private static FleetReview review;
    private static RunInputs inputs;
    private static LocalDate asOf;

    @BeforeAll
    static void reviewWithoutSpark() {
        Configuration hadoop = new Configuration();
        inputs = RunInputs.find(new RunOptions(SampleRun.DATA.toString(), null, null, "unused", null), hadoop);
        SortedMap<String, List<LoggedWheel>> byVehicle = new TreeMap<>();
        for (LogFile file : inputs.logs()) {
            LogReader reader = LogReader.open(LogSlice.whole(file), hadoop);
            while (reader.hasNext()) {
                LogRow row = reader.next();
                if (row.accepted() != null) {
                    String vehicle = row.accepted().visit().vehicleId();
                    byVehicle.computeIfAbsent(vehicle, k -> new ArrayList<>()).add(row.accepted());
                }
            }
        }
        asOf = byVehicle.values().stream()
                .flatMap(List::stream)
                .map(r -> r.visit().day())
                .max(Comparator.naturalOrder())
                .orElseThrow();
        Map<String, VehicleMoves> moves =
                Moves.of(byVehicle, inputs.fleet(), inputs.settings().review().history(), asOf);
        histories = byVehicle.values().stream()
                .map(rows -> Histories.of(
                        rows, inputs.fleet(), moves, inputs.settings().review().history(), asOf))
                .toList();
        review = FleetReview.of(histories, inputs.settings().review(), inputs.parts(), inputs.stock(), asOf);
    }

    @Test
    void theRankedListStandsInTheSameOrder() throws IOException {
        same(RankedReplacements.TABLE, review.ranked());
    }

    @TestFactory
    Stream<DynamicTest> everyOtherTableHoldsTheSameRows() {
        List<VehicleReview> v = review.vehicles();
        WarningCounts.Summary warnings = review.counts()
                .warnings()
                .summary(review.totals().recurringCells(), review.estimates().peers());
        VehicleFits fits = review.estimates().vehicles();
        return Stream.of(
                test(UnmonitoredWheels.TABLE, v.stream().flatMap(r -> r.unmonitored().stream())),
                test(
                        RecurringVehicles.TABLE,
                        v.stream().map(VehicleReview::recurring).filter(r -> r != null)),
                test(
                        Suspects.TABLE,
                        v.stream()
                                .filter(r -> r.recurring() != null)
                                .flatMap(r -> Suspects.of(r.recurring()).stream())),
                test(WatchList.TABLE, v.stream().flatMap(r -> r.watch().stream())),
                test(ConditionHistories.TABLE, v.stream().flatMap(r -> r.condition().stream())),
                test(FollowUps.TABLE, histories.stream().flatMap(h -> h.followUps().stream())),
                test(SensorLives.TABLE, histories.stream().flatMap(h -> h.lives().stream())),
                test(WarningEpisodes.TABLE, histories.stream().flatMap(h -> h.episodes().stream())),
                test(Findings.TABLE, histories.stream().flatMap(h -> h.findings().stream())),
                test(StockOutlooks.TABLE, review.stock().stream()),
                test(ComebackRates.TABLE, warnings.comebacks().stream()),
                test(NoFaultShares.TABLE, warnings.noFaults().stream()),
                test(FalseFlagShares.TABLE, warnings.falseFlags().stream()),
                test(WarningTrends.TABLE, warnings.trends().stream()),
                test(WarningCurves.TABLE, warnings.curve().stream()),
                test(ConditionFits.TABLE, ConditionFigure.of(review.condition(), review.likeness()).stream()),
                test(FailureCalendars.TABLE, review.calendar().stream()),
                test(SurvivalFits.TABLE, review.estimates().fits().stream()),
                test(SurvivalCurves.TABLE, review.estimates().curves().stream()),
                test(CauseIncidences.TABLE, review.estimates().incidence().stream()),
                test(CohortComparisons.TABLE, review.estimates().comparisons().stream()),
                test(ReaderQualities.TABLE, review.estimates().wake().qualities().stream()),
                test(Budgets.TABLE, review.budget().stream()),
                test(Rounds.TABLE, review.rounds().stream().flatMap(p -> p.weeks().stream())),
                test(Rounds.STOPS, review.rounds().stream().flatMap(p -> p.stops().stream())),
                test(LifeAheads.TABLE, review.ahead().stream()),
                test(LifeAheads.CURVES, review.ahead().stream().flatMap(LifeAheads::lines)),
                test(CovariateEffectRows.TABLE, fits.effects().effects().stream()),
                test(CovariateEffectRows.FAMILIES, fits.effects().families().stream()),
                test(CovariateEffectRows.LIKENESS, Stream.of(fits.likeness())),
                test(FitReports.TABLE, review.estimates().reports().stream()),
                test(Seasons.EFFECT, Stream.of(fits.season())),
                test(Seasons.CLIMATE, fits.climate().stream()));
    }

    @Test
    void noTableIsLeftOut() {
        assertThat(everyOtherTableHoldsTheSameRows().map(DynamicTest::getDisplayName))
                .containsExactlyInAnyOrderElementsOf(Tables.RESULTS.stream()
                        .map(Table::name)
                        .filter(name -> !name.equals(RankedReplacements.TABLE.name()))
                        .toList());
    }

    @Test
    void theSampleIsLargeEnoughToTellDifferencesApart() {
        assertThat(histories).hasSizeGreaterThan(100);
        assertThat(review.ranked()).hasSizeGreaterThan(500);
        assertThat(review.counts().causes().values().stream().mapToLong(n -> n).sum())
                .isGreaterThan(50);
    }

    /** One sensor more, whose readings cannot all be true, among those that the condition is fitted to. */
    @Test
    void aSensorWithImpossibleReadingsIsLeftOutAndMovesNoOtherNorListStockAndRounds() {
        FleetReview with = FleetReview.of(
                histories,
                inputs.settings().review(),
                inputs.parts(),
                inputs.stock(),
                asOf,
                conditions -> new Conditions.Fleet() {
                    @Override
                    public HiddenPass sample(HiddenModel model) {
                        return Conditions.inMemory(histories).apply(conditions).sample(model);
                    }

                    @Override
                    public HiddenPass all(HiddenModel model) {
                        List<HiddenReadings> all = new ArrayList<>();
                        histories.forEach(h -> all.addAll(conditions.readings(h)));
                        all.add(300, ImpossibleReadings.deadWhileAlive());
                        return HiddenPass.over(all, model);
                    }
                });
        assertThat(with.condition().leftOut()).isEqualTo(1);
        assertThat(review.condition().leftOut()).isZero();
        List<ConditionFigure> figures = new ArrayList<>(ConditionFigure.of(with.condition(), with.likeness()));
        assertThat(figures).anyMatch(f -> f.name().equals("left_out") && f.value() == 1);
        figures.removeIf(f -> f.name().equals("left_out"));
        assertThat(plain(ConditionFits.TABLE, figures))
                .isEqualTo(plain(ConditionFits.TABLE, ConditionFigure.of(review.condition(), review.likeness())));
        unmoved(with, RankedReplacements.TABLE, FleetReview::ranked);
        unmoved(with, StockOutlooks.TABLE, FleetReview::stock);
        unmoved(with, Budgets.TABLE, FleetReview::budget);
        unmoved(
                with,
                Rounds.STOPS,
                r -> r.rounds().stream().flatMap(p -> p.stops().stream()).toList());
        unmoved(
                with,
                Rounds.TABLE,
                r -> r.rounds().stream().flatMap(p -> p.weeks().stream()).toList());
        for (Function<VehicleReview, Object> part : List.<Function<VehicleReview, Object>>of(
                VehicleReview::watch, VehicleReview::unmonitored, VehicleReview::recurring, VehicleReview::condition)) {
            assertThat(with.vehicles().stream().map(part).map(String::valueOf).toList())
                    .isEqualTo(review.vehicles().stream()
                            .map(part)
                            .map(String::valueOf)
                            .toList());
        }
    }

    private static <T> void unmoved(FleetReview with, Table<T> table, Function<FleetReview, List<T>> rows) {
        assertThat(rows.apply(review)).as(table.name()).isNotEmpty();
        assertThat(plain(table, rows.apply(with))).as(table.name()).isEqualTo(plain(table, rows.apply(review)));
    }

    @Test
    void theTotalsAreTheSame() throws IOException {
        JsonNode fleet = new JsonMapper()
                .readTree(SampleRun.get().folder().resolve("run.json").toFile())
                .get("fleet");
        assertThat(fleet.get("vehicles").asLong()).isEqualTo(review.counts().vehicles());
        assertThat(fleet.get("replaceNow").asLong()).isEqualTo(review.totals().lines(Advice.REPLACE_NOW));
        assertThat(fleet.get("savingNow").asDouble()).isEqualTo(review.totals().saving(Advice.REPLACE_NOW));
        assertThat(fleet.get("recurringVehicles").asLong())
                .isEqualTo(review.totals().recurringVehicles());
        assertThat(fleet.get("followUpsOpen").asLong())
                .isEqualTo(review.totals().followUps(FollowUp.State.OPEN));
    }

    private static <T> DynamicTest test(Table<T> table, Stream<T> rows) {
        return DynamicTest.dynamicTest(table.name(), () -> sameSet(table, rows.toList()));
    }

    private static <T> void same(Table<T> table, List<T> rows) throws IOException {
        assertThat(plain(table, rows)).as(table.name()).isEqualTo(spark(table));
    }

    private static <T> void sameSet(Table<T> table, List<T> rows) throws IOException {
        assertThat(rows).as(table.name() + " is not empty").isNotEmpty();
        assertThat(plain(table, rows).stream().sorted().toList())
                .as(table.name())
                .isEqualTo(spark(table).stream().sorted().toList());
    }

    private static <T> List<String> plain(Table<T> table, List<T> rows) {
        List<Row> encoded = rows.stream().map(table::encode).toList();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        CsvSheet.write(table.schema(), encoded.iterator(), out);
        return out.toString(StandardCharsets.UTF_8).lines().toList();
    }

    private static List<String> spark(Table<?> table) throws IOException {
        String name = table.name().replace('_', '-') + ".csv";
        return Files.readAllLines(SampleRun.get().folder().resolve("csv").resolve(name));
    }
}
