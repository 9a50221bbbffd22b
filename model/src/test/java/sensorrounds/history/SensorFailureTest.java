package sensorrounds.history;

import static org.assertj.core.api.Assertions.assertThat;
import static sensorrounds.history.Logbook.age;
import static sensorrounds.history.Logbook.kinds;
import static sensorrounds.history.Logbook.life;
import static sensorrounds.history.Wheel.heard;
import static sensorrounds.history.Wheel.silent;
import static sensorrounds.history.Wheel.untried;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import sensorrounds.survival.Lifetime;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.RelearnResult;
import sensorrounds.visit.Warning;
import sensorrounds.visit.WorkReason;

/** When a sensor counts as failed, and between which ages. */
class SensorFailureTest {
    private final Logbook log = new Logbook();

    /** Common practice, no source: a failure found at a visit happened some time since the last answer. */
    @Test
    void failsBetweenItsLastAnswerAndTheVisitThatFoundItDead() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2022-06-01").heard("A1", "A2", "A3", "A4");
        log.on("2023-06-01").heard("A1", "A2", "A3").wheels(silent("2R").replaced(WorkReason.BATTERY_EXHAUSTED, "B4"));

        SensorLife dead = life(log.history(), "A4");

        assertThat(dead.end()).isEqualTo(LifeEnd.FAILED);
        assertThat(dead.cause()).isEqualTo(FailureCause.BATTERY);
        assertThat(dead.basis()).isEqualTo(OriginBasis.VEHICLE_FIRST_USE);
        assertThat(dead.part()).isEqualTo("P-ORIGINAL");
        assertThat(dead.endedOn()).isEqualTo(LocalDate.of(2023, 6, 1));
        assertThat(dead.lifetime())
                .as("not from age 0, and not failed exactly on the day it was found")
                .isEqualTo(Lifetime.interval(age("2020-01-01"), age("2022-06-01"), age("2023-06-01")));
    }

    @Test
    void aSensorInServiceIsCensoredAtItsLastAnswerNotToday() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").heard("A1", "A2", "A3", "A4");

        SensorLife alive = life(log.history(), "A1");

        assertThat(alive.end()).isEqualTo(LifeEnd.IN_SERVICE);
        assertThat(alive.onVehicle()).isTrue();
        assertThat(alive.lifetime()).isEqualTo(Lifetime.censored(age("2020-01-01"), age("2021-01-01")));
    }

    @Test
    void aRecordedFittingIsWatchedFromItsFirstDay() {
        log.on("2020-01-01").heard("A1", "A2", "A3").wheels(silent("2R").replaced(WorkReason.NO_ANSWER, "B4"));
        log.on("2021-01-01").heard("A1", "A2", "A3", "B4");

        VehicleHistory history = log.history();

        assertThat(life(history, "B4").basis()).isEqualTo(OriginBasis.RECORDED_FITTING);
        assertThat(life(history, "B4").lifetime()).isEqualTo(Lifetime.censored(0, 366));
        assertThat(life(history, "B4").readings())
                .as("it is read for the first time at the next visit")
                .hasSize(1);
        assertThat(life(history, "no-id-2R").exclusion())
                .as("a sensor dead before anyone looked tells nothing of how long it lived")
                .isEqualTo("it never answered while the vehicle was under observation");
        assertThat(history.findings()).isEmpty();
    }

    /** Common practice, no source: one failed wake is not a death. */
    @Test
    void oneSilentVisitIsNoDeathAndTwoAre() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").heard("A1", "A2", "A3").wheels(silent("2R"));

        assertThat(life(log.history(), "A4").end()).isEqualTo(LifeEnd.IN_SERVICE);

        log.on("2022-01-01").heard("A1", "A2", "A3").wheels(silent("2R"));
        SensorLife dead = life(log.history(), "A4");

        assertThat(dead.end()).isEqualTo(LifeEnd.FAILED);
        assertThat(dead.cause()).isEqualTo(FailureCause.UNKNOWN);
        assertThat(dead.onVehicle()).as("it still sits on the wheel").isTrue();
        assertThat(dead.firstKnownFailed())
                .as("from the first silent visit, not the second")
                .isEqualTo(LocalDate.of(2021, 1, 1));
        assertThat(dead.readings()).hasSize(3);
    }

    @Test
    void twoTriesOnOneDayAreOneSilence() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").heard("A1", "A2", "A3").wheels(silent("2R"));
        log.on("2021-01-01").heard("A1", "A2", "A3").wheels(silent("2R"));

        assertThat(life(log.history(), "A4").end()).isEqualTo(LifeEnd.IN_SERVICE);
    }

    @Test
    void wheelsNotTriedBreakNoSilenceAndMakeNone() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").heard("A1", "A2", "A3").wheels(silent("2R"));
        log.on("2021-06-01").heard("A1", "A2", "A3").wheels(untried("2R"));
        log.on("2021-09-01").heard("A1", "A2", "A3").wheels(Wheel.notPresent("2R"));

        assertThat(life(log.history(), "A4").end()).isEqualTo(LifeEnd.IN_SERVICE);

        log.on("2022-01-01").heard("A1", "A2", "A3").wheels(silent("2R"));

        assertThat(life(log.history(), "A4").firstKnownFailed()).isEqualTo(LocalDate.of(2021, 1, 1));
        assertThat(life(log.history(), "A4").readings()).hasSize(3);
    }

    @Test
    void aSensorThatAnswersAgainWasNotDead() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").heard("A1", "A2", "A3").wheels(silent("2R"));
        log.on("2022-01-01").heard("A1", "A2", "A3").wheels(silent("2R"));
        log.on("2023-01-01").heard("A1", "A2", "A3", "A4");

        VehicleHistory history = log.history();

        assertThat(life(history, "A4").end()).isEqualTo(LifeEnd.IN_SERVICE);
        assertThat(life(history, "A4").lifetime()).isEqualTo(Lifetime.censored(age("2020-01-01"), age("2023-01-01")));
        assertThat(history.findings()).singleElement().satisfies(f -> {
            assertThat(f.kind()).isEqualTo(Finding.Kind.ALIVE_AGAIN);
            assertThat(f.what())
                    .isEqualTo("sensor A4 was silent at 2 visits in a row, the last on 2022-01-01, and answers again");
            assertThat(f.sources())
                    .extracting(Object::toString)
                    .containsExactly("day.jsonl:23", "day.jsonl:33", "day.jsonl:43");
        });
    }

    /** Common practice, no source: a reader that hears no wheel at all is the likelier cause than four deaths. */
    @Test
    void aVisitThatHeardNothingSaysNothingOfTheSensors() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").heard("A1", "A2", "A3").wheels(silent("2R"));
        log.on("2021-06-01").wheels(silent("1L"), silent("1R"), silent("2L"), silent("2R"));
        log.on("2021-07-01").wheels(silent("1L"), silent("1R"), silent("2L"), silent("2R"));

        VehicleHistory history = log.history();

        assertThat(history.lives()).hasSize(4).allMatch(SensorLife::inService);
        assertThat(life(history, "A1").readings()).as("kept, not counted").hasSize(4);
        assertThat(kinds(history))
                .containsExactly(Finding.Kind.READER_HEARD_NOTHING, Finding.Kind.READER_HEARD_NOTHING);
    }

    /** Common practice, no source: crews replace what looks weak, and what still answers has not failed. */
    @ParameterizedTest
    @EnumSource(
            value = WorkReason.class,
            names = {"BATTERY_EXHAUSTED", "NO_ANSWER", "UNKNOWN", "PREVENTIVE"})
    void replacedWhileItAnsweredIsNoFailure(WorkReason reason) {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2022-01-01")
                .heard("A1", "A2", "A3")
                .wheels(heard("2R", "A4").battery(BatteryReport.LOW).replaced(reason, "B4"));

        SensorLife life = life(log.history(), "A4");

        assertThat(life.end()).isEqualTo(LifeEnd.PREVENTIVE);
        assertThat(life.firstWeak()).isEqualTo(LocalDate.of(2022, 1, 1));
        assertThat(life.firstKnownFailed()).isNull();
        assertThat(life.lifetime()).isEqualTo(Lifetime.censored(age("2020-01-01"), age("2022-01-01")));
    }

    @ParameterizedTest
    @CsvSource({
        "WRONG_TYPE, PROCESS,",
        "NOT_LEARNED, PROCESS,",
        "LOST, LOST,",
        "CUSTOMER_WHEELS, LOST,",
        "PREVENTIVE, PREVENTIVE,",
        "BATTERY_EXHAUSTED, FAILED, BATTERY",
        "NO_ANSWER, FAILED, UNKNOWN",
        "UNKNOWN, FAILED, UNKNOWN",
        "STEM_BROKEN, FAILED, STEM_OR_CORROSION",
        "CORROSION, FAILED, STEM_OR_CORROSION",
        "TYRE_CHANGE_DAMAGE, FAILED, TYRE_CHANGE_DAMAGE",
        "INGRESS, FAILED, INGRESS"
    })
    void theReasonForReplacingASilentSensorDecides(WorkReason reason, LifeEnd end, FailureCause cause) {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2022-01-01").heard("A1", "A2", "A3").wheels(silent("2R").replaced(reason, "B4"));

        SensorLife life = life(log.history(), "A4");

        assertThat(life.end()).isEqualTo(end);
        assertThat(life.cause()).isEqualTo(cause);
        assertThat(life.lifetime().upper()).isEqualTo(end == LifeEnd.FAILED ? age("2022-01-01") : Lifetime.NEVER);
        assertThat(life.lifetime().lower()).isEqualTo(age("2021-01-01"));
    }

    @Test
    void replacedWithoutAReasonAndWithoutSilenceIsNoFailure() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2022-01-01").heard("A1", "A2", "A3").wheels(untried("2R").replaced(null, "B4"));

        assertThat(life(log.history(), "A4").end()).isEqualTo(LifeEnd.PREVENTIVE);
    }

    /** A stem may be broken or corroded for a while before anyone looks, though the sensor answers. */
    @Test
    void aBrokenStemOfAnAnsweringSensorFailedSinceTheVisitBefore() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2022-01-01").heard("A1", "A2", "A3").wheels(heard("2R", "A4").replaced(WorkReason.CORROSION, "B4"));

        assertThat(life(log.history(), "A4").lifetime())
                .isEqualTo(Lifetime.interval(age("2020-01-01"), age("2021-01-01"), age("2022-01-01")));
    }

    @Test
    void aSensorBrokenAtTheTyreChangeFailedOnThatDay() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2022-01-01")
                .heard("A1", "A2", "A3")
                .wheels(heard("2R", "A4").replaced(WorkReason.TYRE_CHANGE_DAMAGE, "B4"));

        assertThat(life(log.history(), "A4").lifetime())
                .isEqualTo(Lifetime.exact(age("2020-01-01"), age("2022-01-01")));
    }

    @Test
    void foundBrokenAtItsFirstReadingItWasNeverUnderObservation() {
        log.on("2020-01-01").heard("A1", "A2", "A3").wheels(heard("2R", "A4").replaced(WorkReason.STEM_BROKEN, "B4"));

        SensorLife life = life(log.history(), "A4");

        assertThat(life.end()).isEqualTo(LifeEnd.FAILED);
        assertThat(life.lifetime()).isNull();
        assertThat(life.exclusion()).contains("found failed when it was first read");
    }

    @Test
    void aSilenceThatEndsInReplacementBeganWithItsFirstVisit() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").heard("A1", "A2", "A3").wheels(silent("2R"));
        log.on("2022-01-01").heard("A1", "A2", "A3").wheels(silent("2R").replaced(WorkReason.NO_ANSWER, "B4"));

        assertThat(life(log.history(), "A4").firstKnownFailed()).isEqualTo(LocalDate.of(2021, 1, 1));
        assertThat(life(log.history(), "A4").endedOn()).isEqualTo(LocalDate.of(2022, 1, 1));
    }

    @Test
    void theDriversWarningNarrowsTheIntervalWhenOneSensorAloneIsSilent() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01")
                .warning(Warning.SYSTEM_FAULT)
                .since("2020-11-20")
                .heard("A1", "A2", "A3")
                .wheels(silent("2R").replaced(WorkReason.BATTERY_EXHAUSTED, "B4"));

        assertThat(life(log.history(), "A4").firstKnownFailed()).isEqualTo(LocalDate.of(2020, 11, 20));
    }

    @ParameterizedTest
    @CsvSource({
        "LOW_PRESSURE, 2020-11-20, false",
        "SYSTEM_FAULT, 2019-11-20, false",
        "SYSTEM_FAULT, 2021-03-01, false",
        "SYSTEM_FAULT, 2020-11-20, true"
    })
    void anotherWarningAnotherTimeOrAnotherSilentSensorNarrowsNothing(
            Warning warning, String since, boolean secondSilent) {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01")
                .warning(warning)
                .since(since)
                .heard("A1", "A2")
                .wheels(secondSilent ? silent("2L") : heard("2L", "A3"))
                .wheels(silent("2R").replaced(WorkReason.BATTERY_EXHAUSTED, "B4"));

        assertThat(life(log.history(), "A4").firstKnownFailed()).isEqualTo(LocalDate.of(2021, 1, 1));
    }

    @Test
    void leavingTheFleetEndsNoLifeInFailure() {
        log.leftFleet("2023-01-01");
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").heard("A1", "A2", "A3", "A4");

        SensorLife life = life(log.history(), "A1");

        assertThat(life.end()).isEqualTo(LifeEnd.LEFT_FLEET);
        assertThat(life.endedOn()).isEqualTo(LocalDate.of(2023, 1, 1));
        assertThat(life.lifetime()).isEqualTo(Lifetime.censored(age("2020-01-01"), age("2021-01-01")));
        assertThat(life(log.historyAsOf(LocalDate.of(2022, 1, 1)), "A1").end())
                .as("nothing from the future")
                .isEqualTo(LifeEnd.IN_SERVICE);
    }

    @Test
    void aPlainValveEndsTheLifeAndItsSilenceCountsForNothing() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").heard("A1", "A2", "A3").wheels(silent("2R").plainValve(null));
        log.on("2022-01-01").heard("A1", "A2", "A3").wheels(silent("2R"));
        log.on("2023-01-01").heard("A1", "A2", "A3").wheels(silent("2R"));

        VehicleHistory history = log.history();

        assertThat(history.lives()).hasSize(4);
        assertThat(life(history, "A4").end()).isEqualTo(LifeEnd.FAILED);
        assertThat(life(history, "A4").onVehicle())
                .as("the place is left unmonitored")
                .isFalse();
    }

    @Test
    void aSensorFittedInPlaceOfAPlainValveIsListenedToAgain() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").heard("A1", "A2", "A3").wheels(silent("2R").plainValve(null));
        log.on("2021-02-01").heard("A1", "A2", "A3").wheels(untried("2R").replaced(null, "B4"));
        log.on("2022-03-01").heard("A1", "A2", "A3").wheels(silent("2R"));
        log.on("2023-03-01").heard("A1", "A2", "A3").wheels(silent("2R"));

        VehicleHistory history = log.history();

        assertThat(history.lives()).hasSize(5);
        assertThat(life(history, "B4").lifetime())
                .as("never heard since it was fitted: dead between that day and the first silence")
                .isEqualTo(Lifetime.interval(0, 0, 393));
    }

    @Test
    void aPlainValveForALostSensorIsNoFailure() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").heard("A1", "A2", "A3").wheels(silent("2R").plainValve(WorkReason.LOST));

        assertThat(life(log.history(), "A4").end()).isEqualTo(LifeEnd.LOST);
    }

    @Test
    void aRelearnEndsNoLife() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01")
                .relearned(RelearnResult.DONE)
                .heard("A1", "A2", "A3")
                .wheels(silent("2R"));
        log.on("2022-01-01").heard("A1", "A2", "A3", "A4");

        assertThat(log.history().lives()).hasSize(4).allMatch(SensorLife::inService);
    }
}
