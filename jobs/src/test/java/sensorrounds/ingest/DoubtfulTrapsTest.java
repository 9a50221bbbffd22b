package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sensorrounds.assemble.Histories;
import sensorrounds.history.Finding;
import sensorrounds.history.HistorySettings;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.intake.Duplicate;
import sensorrounds.intake.FileCount;
import sensorrounds.intake.Note;
import sensorrounds.intake.Rejection;
import sensorrounds.intake.RejectionRule;
import sensorrounds.intake.ResolvedVisits;
import sensorrounds.intake.VisitResolver;
import sensorrounds.plausibility.Doubt;
import sensorrounds.plausibility.SharedIds;
import sensorrounds.plausibility.VehicleDoubts;
import sensorrounds.tables.LogRow;
import sensorrounds.visit.LoggedWheel;

/**
 * Traps that no row shows alone, one small file each: what is told when the rows of a vehicle are held against each other.
 * They are common practice of the trade, without a source; docs/traps.md lists them.
 */
class DoubtfulTrapsTest {
    private static final LocalDate AS_OF = LocalDate.of(2026, 1, 1);

    private static List<LogRow> read(String file) {
        return Fixtures.read(Fixtures.TRAPS.resolve(file));
    }

    private static Map<String, List<LoggedWheel>> byVehicle(String file) {
        Map<String, List<LoggedWheel>> vehicles = new TreeMap<>();
        for (LoggedWheel row : Fixtures.accepted(read(file))) {
            vehicles.computeIfAbsent(row.visit().vehicleId(), v -> new ArrayList<>())
                    .add(row);
        }
        return vehicles;
    }

    private static List<Doubt> doubts(String file) {
        return byVehicle(file).values().stream()
                .flatMap(rows -> VehicleDoubts.of(VisitResolver.resolve(rows).visits()).stream())
                .toList();
    }

    private static VehicleHistory history(String file, String vehicle) {
        return Histories.of(byVehicle(file).get(vehicle), Map.of(), Map.of(), HistorySettings.defaults(), AS_OF);
    }

    @Test
    void aPressureThatLooksAbsoluteIsToldAndNotChanged() {
        assertThat(doubts("absolute-pressure.csv")).singleElement().satisfies(d -> {
            assertThat(d.kind()).isEqualTo(Doubt.Kind.PRESSURE_ABSOLUTE);
            assertThat(d.sources()).hasToString("[absolute-pressure.csv:2]");
        });
        assertThat(Fixtures.accepted(read("absolute-pressure.csv"))
                        .get(0)
                        .wheel()
                        .pressureKpa())
                .isEqualTo(341);
    }

    /** A digit too many, the reading after it lower, and a plant that counts hours. */
    @Test
    void anOdometerThatFallsOrRunsAwayIsToldAndHoursAreRefused() {
        assertThat(doubts("odometer.csv"))
                .extracting(Doubt::kind)
                .containsExactly(Doubt.Kind.ODOMETER_JUMP, Doubt.Kind.ODOMETER_BACK);
        assertThat(doubts("odometer.csv").get(0).what()).endsWith("a digit too many would explain it");
        assertThat(Fixtures.rejected(read("odometer.csv"))).singleElement().satisfies(r -> {
            assertThat(r.rule()).isEqualTo(RejectionRule.UNKNOWN_WORD);
            assertThat(r.rawValue()).isEqualTo("hours");
        });
    }

    @Test
    void aPlateThatChangesWhileTheVinStaysIsToldWithoutThePlate() {
        assertThat(doubts("plate-changed.csv")).singleElement().satisfies(d -> {
            assertThat(d.kind()).isEqualTo(Doubt.Kind.PLATE_CHANGED);
            assertThat(d.what()).contains("the VIN stays the same").doesNotContain("EEE", "FFF");
        });
    }

    @Test
    void oneIdOnTwoWheelsOrTwoVehiclesIsTold() {
        assertThat(doubts("shared-id.csv")).extracting(Doubt::kind).containsExactly(Doubt.Kind.SENSOR_AT_TWO_PLACES);
        List<SharedIds.Span> spans = new ArrayList<>();
        byVehicle("shared-id.csv")
                .forEach((vehicle, rows) -> spans.add(new SharedIds.Span(
                        rows.get(0).wheel().sensorId(),
                        vehicle,
                        sighting(rows.get(0)),
                        sighting(rows.get(rows.size() - 1)))));
        assertThat(SharedIds.of(Doubt.Kind.SENSOR_AT_TWO_VEHICLES, spans))
                .extracting(Doubt::vehicleId)
                .containsExactly("K39", "K40");
    }

    private static SharedIds.Sighting sighting(LoggedWheel row) {
        return new SharedIds.Sighting(row.visit().day(), row.source());
    }

    /** A display that drops the first digit, O written for 0, 8 read for B. */
    @Test
    void anIdCopiedByHandIsReportedWithTheLikelyOneAndNotPutRight() {
        assertThat(doubts("copied-by-hand.csv"))
                .extracting(Doubt::what)
                .satisfiesExactly(
                        first -> assertThat(first).contains("sensor A1B2C91").contains("the first digit left out"),
                        eight -> assertThat(eight).contains("sensor 0A182C92").contains("8 written for B"));
        assertThat(Fixtures.rejected(read("copied-by-hand.csv")))
                .singleElement()
                .satisfies(r -> assertThat(r.expected()).contains("0A1B2C92"));
    }

    /** Recorded on one vehicle; shown by a grown battery in a newer tyre on the other. */
    @Test
    void aCloneIsANewSensorUnderTheOldId() {
        for (String vehicle : List.of("K31", "K32")) {
            VehicleHistory history = history("clone.csv", vehicle);

            assertThat(history.lives())
                    .as(vehicle)
                    .extracting(SensorLife::generation)
                    .containsExactly(1, 2);
            assertThat(history.findings()).extracting(Finding::kind).contains(Finding.Kind.CLONED_ID);
        }
    }

    @Test
    void oneVisitUnderTwoKeysIsTold() {
        assertThat(doubts("two-keys.csv"))
                .singleElement()
                .satisfies(d -> assertThat(d.kind()).isEqualTo(Doubt.Kind.VISIT_TWICE));
    }

    /** Both rows stand under one key, the second written later and without the odometer. */
    @Test
    void aVisitSplitOverTwoRowsIsOneVisitAndItsRowsThatDisagreeAreTold() {
        ResolvedVisits resolved =
                VisitResolver.resolve(byVehicle("split-visit.csv").get("K42"));

        assertThat(resolved.visits())
                .singleElement()
                .satisfies(v -> assertThat(v.wheels()).hasSize(2));
        assertThat(doubts("split-visit.csv")).extracting(Doubt::kind).containsExactly(Doubt.Kind.VISIT_FIELDS_DIFFER);
    }

    /** PersonalDataTest looks for such texts in everything that a run leaves behind. */
    @Test
    void freeTextIsKeptInTheStoreAndToldNowhere() {
        List<LogRow> rows = read("free-text.csv");

        assertThat(Fixtures.accepted(rows).get(0).visit().notes()).contains("Erika Muster");
        Rejection refused = Fixtures.rejected(rows).get(0);
        assertThat(refused.field()).isEqualTo("read");
        assertThat(List.of(refused.rawValue(), refused.expected(), refused.remedy(), refused.visitId()))
                .noneMatch(t -> t.contains("Muster") || t.contains("01 23 45") || t.contains("Example"));
    }

    /** A conversion, a sent-twice row, a refusal and a doubt, each counted. */
    @Test
    void everyConversionRefusalDuplicateAndDoubtIsCounted() {
        List<LogRow> rows = read("countable.csv");
        FileCount count = rows.get(rows.size() - 1).file();

        assertThat(count.rows()).isEqualTo(4);
        assertThat(count.notes())
                .isEqualTo(Map.of(
                        Note.PRESSURE_PSI, 2L,
                        Note.DISTANCE_MILES, 2L,
                        Note.ID_NORMALISED, 2L,
                        Note.DATE_WITHOUT_TIME, 2L,
                        Note.OFFSET_LEFT_OUT, 1L,
                        Note.PRESSURE_SMALL, 1L));
        assertThat(Fixtures.rejected(rows)).hasSize(1);
        ResolvedVisits resolved = VisitResolver.resolve(Fixtures.accepted(rows));
        assertThat(resolved.duplicates()).extracting(Duplicate::rule).containsExactly(Duplicate.Rule.EXACT);
        assertThat(resolved.accepted()).hasSize(2);
    }
}
