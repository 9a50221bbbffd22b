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
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.survival.Lifetime;
import sensorrounds.visit.WheelPosition;
import sensorrounds.visit.WorkReason;

/** A sensor is not its ID, and not its place either. */
class SensorIdentityTest {
    private final Logbook log = new Logbook();

    @Test
    void aRotationIsFourMovesAndNoLoss() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").heard("A3", "A4", "A2", "A1");

        VehicleHistory history = log.history();

        assertThat(history.lives()).hasSize(4).allMatch(SensorLife::inService);
        assertThat(life(history, "A1").position().code()).isEqualTo("2R");
        assertThat(kinds(history)).hasSize(4).containsOnly(Finding.Kind.MOVED);
        assertThat(life(history, "A1").lifetime()).isEqualTo(Lifetime.censored(age("2020-01-01"), age("2021-01-01")));
    }

    @Test
    void aSensorPushedOutOfItsPlaceIsTakenToSitAtTheOnlyFreeOne() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").wheels(heard("1L", "A4")).wheels(heard("1R", "A2"), heard("2L", "A3"), silent("2R"));
        log.on("2022-01-01").wheels(heard("1L", "A4")).wheels(heard("1R", "A2"), heard("2L", "A3"), silent("2R"));

        VehicleHistory history = log.history();

        assertThat(life(history, "A1").position().code()).isEqualTo("2R");
        assertThat(life(history, "A1").end())
                .as("A1 is silent, not A4, whose place it was")
                .isEqualTo(LifeEnd.FAILED);
        assertThat(life(history, "A4").inService()).isTrue();
    }

    @Test
    void aSensorPushedOutWithNoPlaceLeftFreeIsLost() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").heard("A4", "A2", "A3", "FF");

        VehicleHistory history = log.history();

        assertThat(life(history, "A1").end()).isEqualTo(LifeEnd.LOST);
        assertThat(kinds(history))
                .as("it is not first taken to have moved to the place where a stranger answers")
                .containsExactly(Finding.Kind.UNRECORDED_CHANGE, Finding.Kind.UNRECORDED_CHANGE, Finding.Kind.MOVED);
    }

    /** Common practice, no source: missed clones make life look twice as long. */
    @Test
    void aCloneIsANewLifeUnderTheOldId() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").heard("A1", "A2", "A3").wheels(silent("2R", "A4").replaced(WorkReason.NO_ANSWER, "A4"));
        log.on("2022-01-01").heard("A1", "A2", "A3", "A4");

        VehicleHistory history = log.history();

        assertThat(life(history, "A4", 1).lifetime())
                .as("one reading alive, then dead")
                .isEqualTo(Lifetime.interval(age("2020-01-01"), age("2020-01-01"), age("2021-01-01")));
        assertThat(life(history, "A4", 2).lifetime()).isEqualTo(Lifetime.censored(0, 365));
        assertThat(life(history, "A4", 2).lifeId()).isEqualTo("V1/A4/2");
        assertThat(kinds(history)).containsExactly(Finding.Kind.CLONED_ID);
    }

    @Test
    void aCloneIsKnownByItsFlagWhenTheNewIdIsNotWrittenDown() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01")
                .heard("A1", "A2", "A3")
                .wheels(silent("2R").replaced(WorkReason.NO_ANSWER, null).cloned());

        assertThat(life(log.history(), "A4", 2).fittedOn()).isEqualTo(LocalDate.of(2021, 1, 1));
    }

    @Test
    void aFittedSensorThatAnswersWithTheOldIdWasCloned() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").heard("A1", "A2", "A3").wheels(silent("2R").replaced(WorkReason.NO_ANSWER, "B4"));
        log.on("2022-01-01").heard("A1", "A2", "A3", "A4");

        VehicleHistory history = log.history();

        assertThat(history.lives()).hasSize(5);
        assertThat(life(history, "A4", 1).end())
                .as("the old sensor did not rise from the dead")
                .isEqualTo(LifeEnd.FAILED);
        assertThat(life(history, "A4", 2).lifetime()).isEqualTo(Lifetime.censored(0, 365));
        assertThat(kinds(history)).containsExactly(Finding.Kind.CLONED_ID);
    }

    @Test
    void anIdNotWrittenDownIsLearntFromTheFirstAnswer() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").heard("A1", "A2", "A3").wheels(silent("2R").replaced(WorkReason.NO_ANSWER, null));
        log.on("2022-01-01").heard("A1", "A2", "A3", "B4");

        VehicleHistory history = log.history();

        assertThat(life(history, "B4").basis()).isEqualTo(OriginBasis.RECORDED_FITTING);
        assertThat(life(history, "B4").fittedOn()).isEqualTo(LocalDate.of(2021, 1, 1));
        assertThat(history.findings()).isEmpty();
    }

    @Test
    void anIdWrittenDownWrongIsPutRightByTheFirstAnswerAndTold() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").heard("A1", "A2", "A3").wheels(silent("2R").replaced(WorkReason.NO_ANSWER, "B8"));
        log.on("2022-01-01").heard("A1", "A2", "A3", "BB");

        VehicleHistory history = log.history();

        assertThat(life(history, "BB").fittedOn()).isEqualTo(LocalDate.of(2021, 1, 1));
        assertThat(history.findings()).singleElement().satisfies(f -> {
            assertThat(f.kind()).isEqualTo(Finding.Kind.UNRECORDED_CHANGE);
            assertThat(f.what()).contains("sensor B8 is written down", "the first to answer there is BB");
        });
    }

    @Test
    void anUnknownIdAtAKnownPlaceIsAnUnrecordedChangeAndNoFailure() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2022-01-01").heard("A1", "A2", "A3", "FF");

        VehicleHistory history = log.history();

        assertThat(life(history, "A4").end()).isEqualTo(LifeEnd.LOST);
        assertThat(life(history, "A4").lifetime()).isEqualTo(Lifetime.censored(age("2020-01-01"), age("2021-01-01")));
        assertThat(life(history, "FF").basis()).isEqualTo(OriginBasis.UNKNOWN);
        assertThat(life(history, "FF").lifetime()).isNull();
        assertThat(life(history, "FF").exclusion()).contains("its age is not known: nobody wrote down its fitting");
        assertThat(history.findings()).singleElement().satisfies(f -> {
            assertThat(f.kind()).isEqualTo(Finding.Kind.UNRECORDED_CHANGE);
            assertThat(f.position()).isEqualTo(WheelPosition.parse("2R").orElseThrow());
            assertThat(f.sources()).extracting(Object::toString).containsExactly("day.jsonl:23", "day.jsonl:33");
        });
    }

    @Test
    void anUnrecordedChangeOfADeadSensorLeavesItDead() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").heard("A1", "A2", "A3").wheels(silent("2R"));
        log.on("2021-06-01").heard("A1", "A2", "A3").wheels(silent("2R"));
        log.on("2022-01-01").heard("A1", "A2", "A3", "FF");

        SensorLife dead = life(log.history(), "A4");

        assertThat(dead.end()).isEqualTo(LifeEnd.FAILED);
        assertThat(dead.endedOn()).isEqualTo(LocalDate.of(2022, 1, 1));
    }

    @Test
    void aRowReadAfterTheWorkBelongsToTheNewSensor() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01")
                .heard("A1", "A2", "A3")
                .wheels(heard("2R", "B4").replaced(WorkReason.BATTERY_EXHAUSTED, "B4"));

        VehicleHistory history = log.history();

        assertThat(life(history, "A4").end())
                .as("the answer was the new sensor's, so the old one is not taken as alive")
                .isEqualTo(LifeEnd.FAILED);
        assertThat(life(history, "B4").readings()).hasSize(1);
        assertThat(history.lives()).hasSize(5);
        assertThat(history.findings()).isEmpty();
    }

    @Test
    void theSameIdAtTwoWheelsSaysNothingOfTheSecond() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").heard("A1", "A1", "A3", "A4");
        log.on("2022-01-01").heard("A1", "A2", "A3", "A4");

        VehicleHistory history = log.history();

        assertThat(history.lives()).hasSize(4).allMatch(SensorLife::inService);
        assertThat(life(history, "A2").readings()).hasSize(2);
        assertThat(life(history, "A1").readings()).hasSize(4);
        assertThat(life(history, "A1").position().code()).isEqualTo("1L");
        assertThat(kinds(history)).containsExactly(Finding.Kind.TWO_PLACES_AT_ONCE);
    }

    /** Common practice, no source: in winter the summer set lies in store, which is neither loss nor failure. */
    @Test
    void theOtherWheelSetIsNotLostWhileItIsInStore() {
        log.on("2018-04-01").set("summer").heard("A1", "A2", "A3", "A4");
        log.on("2018-11-01").set("winter").heard("B1", "B2", "B3", "B4");
        log.on("2019-01-01").set("winter").heard("B1", "B2", "B3").wheels(silent("2R"));
        log.on("2019-02-01").set("winter").heard("B1", "B2", "B3").wheels(silent("2R"));
        log.on("2019-04-01").set("summer").heard("A1", "A2", "A3", "A4");

        VehicleHistory history = log.history();

        assertThat(history.lives()).hasSize(8);
        assertThat(history.lives())
                .filteredOn(l -> l.end() == LifeEnd.FAILED)
                .singleElement()
                .satisfies(l -> assertThat(l.sensorId()).isEqualTo("B4"));
        assertThat(history.lives()).filteredOn(SensorLife::inService).hasSize(7);
        assertThat(life(history, "A4").wheelSet()).isEqualTo("summer");
        assertThat(history.findings()).isEmpty();
    }

    /** The vehicle's own list may still hold the summer IDs; the silent sensor is the winter wheel's. */
    @Test
    void aSilentRowsIdOfTheOtherSetMovesNothing() {
        log.on("2018-04-01").set("summer").heard("A1", "A2", "A3", "A4");
        log.on("2018-11-01").set("winter").heard("B1", "B2", "B3", "B4");
        log.on("2019-01-01").set("winter").heard("B1", "B2", "B3").wheels(silent("2R", "A4"));
        log.on("2019-02-01").set("winter").heard("B1", "B2", "B3").wheels(silent("2R", "A4"));

        VehicleHistory history = log.history();

        assertThat(life(history, "B4").end()).isEqualTo(LifeEnd.FAILED);
        assertThat(life(history, "A4").inService()).isTrue();
        assertThat(life(history, "A4").wheelSet()).isEqualTo("summer");
    }

    @Test
    void strangersOnAVisitWithoutASetNamePushNobodyOutOfANamedSet() {
        log.on("2018-04-01").set("summer").heard("A1", "A2", "A3", "A4");
        log.on("2018-11-01").heard("B1", "B2", "B3", "B4");

        VehicleHistory history = log.history();

        assertThat(history.lives()).hasSize(8).allMatch(SensorLife::inService);
        assertThat(life(history, "B1").wheelSet()).isNull();
    }

    @Test
    void aSetWithoutANameIsKnownByItsSensors() {
        log.on("2018-04-01").heard("A1", "A2", "A3", "A4");
        log.on("2018-11-01").set("winter").heard("B1", "B2", "B3", "B4");
        log.on("2019-04-01").set("summer").heard("A1", "A2", "A3", "A4");
        log.on("2019-11-01").heard("B1", "B2", "B3", "B4");

        VehicleHistory history = log.history();

        assertThat(history.lives()).hasSize(8).allMatch(SensorLife::inService);
        assertThat(life(history, "A1").wheelSet()).isEqualTo("summer");
        assertThat(life(history, "B1").wheelSet()).isEqualTo("winter");
        assertThat(history.findings()).isEmpty();
    }

    @Test
    void setsThatAreNeverNamedComeBackAsTheLivesTheyWere() {
        log.on("2018-04-01").heard("A1", "A2", "A3", "A4");
        log.on("2018-11-01").heard("B1", "B2", "B3", "B4");
        log.on("2019-04-01").heard("A1", "A2", "A3", "A4");

        VehicleHistory history = log.history();

        assertThat(history.lives()).hasSize(8);
        assertThat(life(history, "A1").inService()).isTrue();
        assertThat(life(history, "A1").lifetime()).isEqualTo(Lifetime.censored(age("2018-04-01"), age("2019-04-01")));
        assertThat(life(history, "B1").end()).isEqualTo(LifeEnd.LOST);
        assertThat(kinds(history)).containsOnly(Finding.Kind.UNRECORDED_CHANGE);
    }

    @Test
    void aSecondSetFirstSeenYearsLaterHasNoAge() {
        log.on("2018-04-01").set("summer").heard("A1", "A2", "A3", "A4");
        log.on("2020-11-01").set("winter").heard("B1", "B2", "B3", "B4");

        VehicleHistory history = log.history();

        assertThat(life(history, "A1").basis()).isEqualTo(OriginBasis.VEHICLE_FIRST_USE);
        assertThat(life(history, "B1").basis()).isEqualTo(OriginBasis.UNKNOWN);
        assertThat(life(history, "B1").exclusion()).contains("wheel set winter", "may have been bought later");
    }

    @Test
    void aVehicleFirstSeenLateHasNoKnownOriginals() {
        log.on("2022-02-01").heard("A1", "A2", "A3", "A4");
        log.on("2023-01-01").heard("A1", "A2", "A3", "A4");

        SensorLife life = life(log.history(), "A1");

        assertThat(life.basis())
                .as("1,492 days after first use, over the limit of 1,461")
                .isEqualTo(OriginBasis.UNKNOWN);
        assertThat(life.part()).isNull();
        assertThat(life.exclusion()).contains("1492 days after its first use, more than 1461");
    }

    @Test
    void aPlaceTriedLateStillHasItsOriginalSensor() {
        log.on("2020-01-01").heard("A1", "A2", "A3").wheels(untried("2R"));
        log.on("2024-01-01").heard("A1", "A2", "A3", "A4");

        assertThat(life(log.history(), "A4").basis())
                .as("the vehicle was watched since 2020, and nobody wrote down a change")
                .isEqualTo(OriginBasis.VEHICLE_FIRST_USE);
    }

    /** Common practice, no source: an indirect system has no wheel sensors, so silence there is no death. */
    @Test
    void silenceOnAnIndirectSystemMeansNothing() {
        log.system(MonitoringSystem.INDIRECT);
        log.on("2020-01-01").wheels(silent("1L"), silent("1R"));
        log.on("2021-01-01").wheels(silent("1L"), silent("1R"));

        VehicleHistory history = log.history();

        assertThat(history.lives()).isEmpty();
        assertThat(kinds(history)).containsExactly(Finding.Kind.NO_WHEEL_SENSORS);
        assertThat(history.findings().get(0).what()).startsWith("4 tries met silence");
        assertThat(history.visits().get(0).silent()).isEmpty();
    }

    @Test
    void silenceAllAlongOnASystemNobodyKnowsMakesNoSensors() {
        log.system(MonitoringSystem.UNKNOWN);
        log.on("2020-01-01").wheels(silent("1L"), silent("1R"));
        log.on("2021-01-01").wheels(silent("1L"), silent("1R"));

        assertThat(log.history().lives()).isEmpty();
        assertThat(kinds(log.history())).containsExactly(Finding.Kind.NO_WHEEL_SENSORS);

        log.system(MonitoringSystem.DIRECT);

        assertThat(log.history().lives()).hasSize(2).allMatch(l -> l.end() == LifeEnd.FAILED);
    }

    @Test
    void aSilentSpareNobodyEverHeardIsNoSensor() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4").wheels(silent("spare"));
        log.on("2021-01-01").heard("A1", "A2", "A3", "A4").wheels(silent("spare"));

        assertThat(log.history().lives()).hasSize(4);

        log.on("2022-01-01").wheels(heard("2R", "S5"), heard("spare", "A4"));
        log.on("2023-01-01").wheels(heard("2R", "S5"), heard("spare", "A4"));

        assertThat(life(log.history(), "A4").position().isSpare()).isTrue();
        assertThat(life(log.history(), "A4").inService()).isTrue();
    }

    @Test
    void aSensorTakenOffThatAnswersAgainBeginsALifeOfUnknownAge() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").heard("A1", "A2", "A3").wheels(heard("2R", "A4").replaced(WorkReason.PREVENTIVE, "B4"));
        log.on("2022-01-01").heard("A1", "A2", "A3", "B4");
        log.on("2023-01-01").heard("A1", "A2", "A4", "B4");

        VehicleHistory history = log.history();

        assertThat(life(history, "A4", 1).end()).isEqualTo(LifeEnd.PREVENTIVE);
        assertThat(life(history, "A4", 2).basis()).isEqualTo(OriginBasis.UNKNOWN);
        assertThat(kinds(history)).contains(Finding.Kind.ALIVE_AGAIN, Finding.Kind.UNRECORDED_CHANGE);
    }
}
