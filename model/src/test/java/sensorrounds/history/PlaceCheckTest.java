package sensorrounds.history;

import static org.assertj.core.api.Assertions.assertThat;
import static sensorrounds.history.Logbook.kinds;
import static sensorrounds.history.Logbook.life;
import static sensorrounds.history.Wheel.silent;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sensorrounds.survival.Lifetime;
import sensorrounds.visit.WorkReason;

/** Common practice, no source: one position failing across replaced sensors points away from the sensors. */
class PlaceCheckTest {
    private final Logbook log = new Logbook();

    private void replacedAgainAndAgain(String second, WorkReason reason) {
        log.on("2019-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2022-01-01").heard("A1", "A2", "A3").wheels(silent("2R").replaced(WorkReason.NO_ANSWER, "B4"));
        log.on("2022-02-01").heard("A1", "A2", "A3", "B4");
        log.on(second).heard("A1", "A2", "A3").wheels(silent("2R").replaced(reason, "C4"));
    }

    @Test
    void youngSensorsSilentOneAfterTheOtherAreNoFailures() {
        replacedAgainAndAgain("2022-06-01", WorkReason.NO_ANSWER);
        log.on("2022-09-01").heard("A1", "A2", "A3").wheels(silent("2R").replaced(WorkReason.NO_ANSWER, "D4"));

        VehicleHistory history = log.history();

        assertThat(life(history, "A4").end())
                .as("three years old: it may well have died")
                .isEqualTo(LifeEnd.FAILED);
        SensorLife young = life(history, "B4");
        assertThat(young.end()).isEqualTo(LifeEnd.PLACE_SUSPECTED);
        assertThat(young.cause()).isNull();
        assertThat(young.firstKnownFailed()).isNull();
        assertThat(young.lifetime()).isEqualTo(Lifetime.censored(0, 31));
        assertThat(kinds(history)).containsExactly(Finding.Kind.PLACE_KEEPS_FAILING);
        assertThat(history.findings().get(0).what()).contains("3 sensors", "axle 2, right", "2 of them younger");
        assertThat(history.findings().get(0).wheelSet()).isNull();
    }

    /** An old sensor that died of age, and one new one that died early: two deaths, no pattern. */
    @Test
    void oneYoungSilenceAfterAnOldSensorsDeathSaysNothingAgainstThePlace() {
        replacedAgainAndAgain("2022-06-01", WorkReason.NO_ANSWER);

        assertThat(life(log.history(), "B4").end()).isEqualTo(LifeEnd.FAILED);
        assertThat(log.history().findings()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"2023-08-31, PLACE_SUSPECTED", "2023-09-01, FAILED"})
    void aLaterSensorHeardThereForAYearClearsThePlace(String heard, LifeEnd expected) {
        replacedAgainAndAgain("2022-06-01", WorkReason.NO_ANSWER);
        log.on("2022-09-01").heard("A1", "A2", "A3").wheels(silent("2R").replaced(WorkReason.NO_ANSWER, "D4"));
        log.on(heard).heard("A1", "A2", "A3", "D4");

        VehicleHistory history = log.history();

        assertThat(life(history, "B4").end()).isEqualTo(expected);
        assertThat(life(history, "C4").end()).isEqualTo(expected);
        assertThat(kinds(history).contains(Finding.Kind.PLACE_KEEPS_FAILING))
                .isEqualTo(expected == LifeEnd.PLACE_SUSPECTED);
    }

    @Test
    void theFindingNamesTheWheelSetWhoseSensorsFellSilent() {
        log.on("2022-01-01")
                .set("W")
                .heard("A1", "A2", "A3")
                .wheels(silent("2R").replaced(WorkReason.NO_ANSWER, "B4"));
        log.on("2022-02-01").set("W").heard("A1", "A2", "A3", "B4");
        log.on("2022-04-01")
                .set("W")
                .heard("A1", "A2", "A3")
                .wheels(silent("2R").replaced(WorkReason.NO_ANSWER, "C4"));
        log.on("2022-06-01")
                .set("W")
                .heard("A1", "A2", "A3")
                .wheels(silent("2R").replaced(WorkReason.NO_ANSWER, "D4"));

        assertThat(log.history().findings())
                .filteredOn(f -> f.kind() == Finding.Kind.PLACE_KEEPS_FAILING)
                .singleElement()
                .satisfies(f -> assertThat(f.wheelSet()).isEqualTo("W"));
    }

    @ParameterizedTest
    @CsvSource({"2023-06-01, NO_ANSWER", "2022-06-01, STEM_BROKEN", "2022-06-01, WRONG_TYPE"})
    void anOldSensorOrAnotherCauseSaysNothingAgainstThePlace(String second, WorkReason reason) {
        replacedAgainAndAgain(second, reason);

        assertThat(life(log.history(), "B4").end()).isNotEqualTo(LifeEnd.PLACE_SUSPECTED);
        assertThat(log.history().findings()).isEmpty();
    }

    @Test
    void youngSilencesAtDifferentPlacesSayNothingAgainstAny() {
        log.firstUsed(LocalDate.of(2021, 12, 1));
        log.on("2022-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2022-02-01")
                .heard("A1", "A2")
                .wheels(silent("2L").replaced(WorkReason.NO_ANSWER, "B3"))
                .wheels(silent("2R").replaced(WorkReason.NO_ANSWER, "B4"));

        assertThat(life(log.history(), "A3").end()).isEqualTo(LifeEnd.FAILED);
        assertThat(life(log.history(), "A4").end()).isEqualTo(LifeEnd.FAILED);
        assertThat(log.history().findings()).isEmpty();
    }

    @Test
    void threeYoungSilencesInARowAreAllBlamedOnThePlace() {
        log.firstUsed(LocalDate.of(2021, 12, 1));
        replacedAgainAndAgain("2022-06-01", WorkReason.NO_ANSWER);
        log.on("2022-09-01").heard("A1", "A2", "A3").wheels(silent("2R").replaced(WorkReason.NO_ANSWER, "D4"));

        VehicleHistory history = log.history();

        assertThat(history.lives())
                .filteredOn(l -> l.end() == LifeEnd.PLACE_SUSPECTED)
                .extracting(SensorLife::sensorId)
                .containsExactlyInAnyOrder("B4", "C4");
        assertThat(kinds(history)).containsOnlyOnce(Finding.Kind.PLACE_KEEPS_FAILING);
    }
}
