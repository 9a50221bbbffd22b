package sensorrounds.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.apache.hadoop.conf.Configuration;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sensorrounds.assemble.Histories;
import sensorrounds.assemble.Moves;
import sensorrounds.history.FollowUp;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VehicleMoves;
import sensorrounds.history.WarningEpisode;
import sensorrounds.ingest.LogFile;
import sensorrounds.ingest.LogReader;
import sensorrounds.ingest.LogSlice;
import sensorrounds.recurrence.RecurringVehicle;
import sensorrounds.recurrence.RecurringVehicle.Pattern;
import sensorrounds.recurrence.Suspect;
import sensorrounds.review.FleetReview;
import sensorrounds.review.VehicleReview;
import sensorrounds.tables.LogRow;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.Warning;

/**
 * What any technician knows (common practice, no source), from lines of a log to the suspects of a whole review: each vehicle of
 * the fixture is named after the case it stands for, beside sixteen sound ones.
 */
class TradeFactsReviewTest {
    private static final String DATA = "src/test/resources/fixtures/trade-facts";
    private static final LocalDate AS_OF = LocalDate.of(2026, 11, 20);

    private static Map<String, VehicleHistory> histories;
    private static Map<String, VehicleReview> reviews;

    @BeforeAll
    static void review() {
        Configuration hadoop = new Configuration();
        RunInputs inputs = RunInputs.find(new RunOptions(DATA, null, null, "unused", null), hadoop);
        SortedMap<String, List<LoggedWheel>> byVehicle = new TreeMap<>();
        for (LogFile file : inputs.logs()) {
            LogReader reader = LogReader.open(LogSlice.whole(file), hadoop);
            while (reader.hasNext()) {
                LogRow row = reader.next();
                assertThat(row.quarantined()).isNull();
                if (row.accepted() != null) {
                    byVehicle
                            .computeIfAbsent(row.accepted().visit().vehicleId(), k -> new ArrayList<>())
                            .add(row.accepted());
                }
            }
        }
        var settings = inputs.settings().review();
        Map<String, VehicleMoves> moves = Moves.of(byVehicle, inputs.fleet(), settings.history(), AS_OF);
        List<VehicleHistory> all = byVehicle.values().stream()
                .map(rows -> Histories.of(rows, inputs.fleet(), moves, settings.history(), AS_OF))
                .toList();
        histories = all.stream().collect(Collectors.toMap(VehicleHistory::vehicleId, Function.identity()));
        reviews = FleetReview.of(all, settings, inputs.parts(), inputs.stock(), AS_OF).vehicles().stream()
                .collect(Collectors.toMap(VehicleReview::vehicleId, Function.identity()));
    }

    private static RecurringVehicle recurring(String vehicle) {
        RecurringVehicle v = reviews.get(vehicle).recurring();
        assertThat(v).as(vehicle).isNotNull();
        return v;
    }

    private static Suspect first(String vehicle) {
        return recurring(vehicle).suspects().get(0);
    }

    private static Suspect at(String vehicle, String place) {
        return recurring(vehicle).suspects().stream()
                .filter(s -> s.isSensor() && s.position().code().equals(place))
                .findFirst()
                .orElseThrow();
    }

    private static FollowUp.State proof(String vehicle) {
        List<FollowUp> all = histories.get(vehicle).followUps();
        return all.get(all.size() - 1).state();
    }

    @Test
    void twoTriesAreOrdinary() {
        assertThat(recurring("two-tries").pattern()).isEqualTo(Pattern.RECURRING_INTERMITTENT);
        assertThat(first("two-tries").isSensor()).isFalse();
        assertThat(reviews.get("two-tries").watch()).isEmpty();
    }

    @Test
    void threeTriesOnOneWheelWhileTheOthersAnswerAtOnceMakeItTheFirstSuspectThoughItsBatteryIsReportedOk() {
        String v = "three-tries";
        assertThat(recurring(v).pattern()).isEqualTo(Pattern.RECURRING_INTERMITTENT);
        assertThat(first(v)).isEqualTo(at(v, "2R"));
        assertThat(first(v).reasons()).anyMatch(r -> r.startsWith("battery reported OK"));
        assertThat(first(v).nextStep()).contains("another reader");
    }

    @Test
    void aRecentlyReplacedSensorIsNotTheFirstSuspect() {
        List<Suspect> sensors = recurring("new-sensor").suspects().stream()
                .filter(Suspect::isSensor)
                .toList();
        assertThat(sensors.get(0).position().code()).isNotEqualTo("1L");
        assertThat(at("new-sensor", "1L").reasons())
                .anyMatch(r -> r.startsWith("fitted on 2026-05-01, the warning was"));
        assertThat(at("new-sensor", "1L").probability()).isLessThan(0.05);
    }

    @Test
    void aGenericCodeWithoutAPositionNamesNobodyAndAClearedOneSaysNothing() {
        double plain = first("no-code").probability();
        for (String v : List.of("generic-code", "cleared-code")) {
            assertThat(first(v).isSensor()).as(v).isFalse();
            assertThat(first(v).probability()).as(v).isEqualTo(plain);
        }
        assertThat(recurring("generic-code").story()).contains("The code C0750 names no wheel.");
        assertThat(first("named-code")).isEqualTo(at("named-code", "2R"));
    }

    @Test
    void onlyALongEnoughDriveProvesARelearnAndClear() {
        assertThat(proof("no-drive")).isEqualTo(FollowUp.State.OPEN);
        assertThat(proof("short-drive")).isEqualTo(FollowUp.State.OPEN);
        assertThat(proof("stood-still")).isEqualTo(FollowUp.State.OPEN);
        assertThat(proof("parked")).as("off the next day, one kilometre on").isEqualTo(FollowUp.State.OPEN);
        assertThat(proof("long-drive")).isEqualTo(FollowUp.State.PROVEN);
        assertThat(proof("came-back")).isEqualTo(FollowUp.State.RETURNED);
        assertThat(recurring("short-drive").followUpOpen()).isTrue();
        assertThat(recurring("short-drive").story()).contains("not yet proven by a drive of at least 20 minutes");
    }

    /** 228 kPa at 20 °C is 192 at -12 °C by the gas law on absolute pressure, near four fifths of 240. */
    @Test
    void lowPressureOnColdMorningsIsTheColdsAndALeakIsNot() {
        assertThat(histories.get("cold-mornings").episodes())
                .hasSize(2)
                .allMatch(e -> e.kind() == Warning.LOW_PRESSURE && e.explainedByCold());
        assertThat(histories.get("cold-leak").episodes()).hasSize(2).noneMatch(WarningEpisode::explainedByCold);
        for (String v : List.of("cold-mornings", "cold-leak")) {
            assertThat(reviews.get(v).recurring())
                    .as("no warning of the system")
                    .isNull();
            assertThat(reviews.get(v).watch()).isEmpty();
        }
    }

    @Test
    void steadyAndFlashingAreTwoEpisodesAndOneLampSeenTwiceIsOne() {
        assertThat(histories.get("steady-and-flashing").episodes())
                .extracting(WarningEpisode::kind)
                .containsExactly(Warning.SYSTEM_FAULT, Warning.LOW_PRESSURE);
        assertThat(recurring("steady-and-flashing").pattern()).isEqualTo(Pattern.NOT_RECURRING);
        assertThat(recurring("two-visits-one-lamp").episodes()).isEqualTo(1);
        assertThat(recurring("two-visits-one-lamp").returnsAfterRepair()).isZero();
    }

    @Test
    void aReaderThatHeardNothingBlamesNobody() {
        assertThat(first("deaf-reader").isSensor()).isFalse();
        assertThat(recurring("deaf-reader").suspects().stream().flatMap(s -> s.reasons().stream()))
                .noneMatch(r -> r.startsWith("silent"));
    }

    @Test
    void troubleThatStaysSpeaksAgainstThePlaceAndTroubleThatMovesAgainstTheSensor() {
        assertThat(recurring("one-place").pattern()).isEqualTo(Pattern.RECURRING_AT_ONE_PLACE);
        assertThat(first("one-place").isSensor()).isFalse();
        assertThat(first("one-place").position().code()).isEqualTo("2R");
        assertThat(first("one-sensor")).isEqualTo(at("one-sensor", "2R"));
        assertThat(first("one-sensor").reasons()).anyMatch(r -> r.contains("the trouble went with the sensor"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"not-learned", "unknown-id", "winter-set"})
    void idsTheVehicleWasNeverTaughtPointOutsideTheSensors(String v) {
        assertThat(first(v).isSensor()).isFalse();
        assertThat(first(v).reasons()).anyMatch(r -> r.endsWith("and no relearn is on record since (×4.0)"));
        assertThat(first(v).nextStep()).startsWith("teach the vehicle the IDs now on its wheels");
    }

    @Test
    void aPlainValveExplainsTheWarning() {
        assertThat(first("plain-valve").isSensor()).isFalse();
        assertThat(first("plain-valve").position().code()).isEqualTo("2L");
        assertThat(first("plain-valve").nextStep())
                .startsWith("look whether a sensor is at axle 2, left; if none, fit");
    }

    @Test
    void oneSensorApartFromTheGaugeIsSuspectedAndAGaugeThatIsOffEverywhereBlamesNobody() {
        assertThat(at("gauge-apart", "2L").probability())
                .isGreaterThan(2 * at("gauge-apart", "1L").probability());
        assertThat(at("gauge-off-everywhere", "2L").probability())
                .isEqualTo(at("gauge-off-everywhere", "1L").probability());
        assertThat(first("gauge-off-everywhere").isSensor()).isFalse();
    }

    @Test
    void aDeadSensorLeftOnTheWheelIsTheFirstSuspectAndSoIsANewOneThatDied() {
        assertThat(first("dead-sensor")).isEqualTo(at("dead-sensor", "2R"));
        assertThat(first("dead-sensor").nextStep()).startsWith("replace the sensor");
        assertThat(first("new-one-dies")).isEqualTo(at("new-one-dies", "1R"));
    }

    @Test
    void aPlainValveFromBeforeTheLogsIsAWheelWithoutWarningAndExplainsIt() {
        assertThat(reviews.get("plain-from-the-start").unmonitored())
                .anyMatch(w -> w.position() != null && w.position().code().equals("2L") && w.sensorId() == null);
        assertThat(first("plain-from-the-start").position().code()).isEqualTo("2L");
    }

    @Test
    void aSuspectThatWasReplacedAndHoldsIsLookedForOnlyIfTheWarningComesBack() {
        assertThat(recurring("replaced-and-holds").heldSince()).isEqualTo(LocalDate.of(2026, 10, 1));
        assertThat(recurring("replaced-and-holds").suspects())
                .allMatch(s -> s.nextStep().startsWith("only if the warning comes back: "));
        assertThat(recurring("replaced-and-holds").story())
                .contains("Since a sensor was replaced on 2026-10-01 it has stayed off");
        assertThat(recurring("three-tries").heldSince()).isNull();
    }

    @Test
    void warningsOfTheWinterSetSuspectItsSensorsInSummerToo() {
        assertThat(first("stored-set")).isEqualTo(at("stored-set", "1L"));
        assertThat(first("stored-set").nextStep()).startsWith("when wheel set B is on again: ");
    }

    @Test
    void suspectsAlikeAreNotToldApartByTheirPlace() {
        assertThat(recurring("two-late").story())
                .contains("First suspect: none stands out, axle 1, left, axle 2, right alike at");
    }

    @Test
    void aVehicleThatHasLeftIsNotLookedAt() {
        assertThat(recurring("left-fleet").pattern()).isEqualTo(Pattern.NOT_RECURRING);
        assertThat(recurring("left-fleet").suspects()).isEmpty();
        assertThat(recurring("left-fleet").followUpOpen()).isFalse();
    }

    @Test
    void everySensorAnsweredIsSaidOnlyWhereEveryOneWasTried() {
        assertThat(recurring("three-tries").story()).contains("every sensor answered each time");
        assertThat(recurring("half-read").story()).doesNotContain("every sensor answered");
        assertThat(first("half-read").isSensor()).isFalse();
    }
}
