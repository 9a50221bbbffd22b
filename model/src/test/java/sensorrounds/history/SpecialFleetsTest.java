package sensorrounds.history;

import static org.assertj.core.api.Assertions.assertThat;
import static sensorrounds.history.Logbook.age;
import static sensorrounds.history.Logbook.kinds;
import static sensorrounds.history.Logbook.life;
import static sensorrounds.history.Wheel.heard;
import static sensorrounds.history.Wheel.notPresent;
import static sensorrounds.history.Wheel.silent;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.survival.Lifetime;
import sensorrounds.visit.WorkReason;

/** Vehicles that are no plain car with four wheels: each case with its lives written out by hand. */
class SpecialFleetsTest {
    private final Logbook log = new Logbook();

    /** Common practice, no source: two sets, eight sensors; each is watched while it is mounted and no set is lost. */
    @Test
    void seasonalSetsAreEightLivesAndAbsenceIsNoLoss() {
        log.on("2018-04-10").set("summer").heard("A1", "A2", "A3", "A4");
        log.on("2018-11-05").set("winter").heard("B1", "B2", "B3", "B4");
        log.on("2019-04-08").set("summer").heard("A1", "A2", "A3").wheels(silent("2R", "A4"));
        log.on("2019-05-06")
                .set("summer")
                .heard("A1", "A2", "A3")
                .wheels(silent("2R", "A4").replaced(WorkReason.BATTERY_EXHAUSTED, "A5"));
        log.on("2019-11-04").set("winter").heard("B1", "B2", "B3", "B4");
        log.on("2020-04-06").set("summer").heard("A1", "A2", "A3", "A5");

        VehicleHistory history = log.history();

        assertThat(history.lives()).hasSize(9);
        for (String id : new String[] {"A1", "A2", "A3"}) {
            assertThat(life(history, id).lifetime()).isEqualTo(Lifetime.censored(age("2018-04-10"), age("2020-04-06")));
        }
        for (String id : new String[] {"B1", "B2", "B3", "B4"}) {
            assertThat(life(history, id).end()).isEqualTo(LifeEnd.IN_SERVICE);
            assertThat(life(history, id).wheelSet()).isEqualTo("winter");
            assertThat(life(history, id).basis()).isEqualTo(OriginBasis.VEHICLE_FIRST_USE);
            assertThat(life(history, id).lifetime()).isEqualTo(Lifetime.censored(age("2018-11-05"), age("2019-11-04")));
        }
        assertThat(life(history, "A4").lifetime())
                .as("good when the set was taken off in autumn as far as known: last heard in April")
                .isEqualTo(Lifetime.interval(99, 99, age("2019-04-08")));
        assertThat(life(history, "A5").lifetime()).isEqualTo(Lifetime.censored(0, 336));
        assertThat(history.findings()).isEmpty();
    }

    @Test
    void aSpareThatChangesPlacesWithAWheelIsTwoMovesAndNoDeath() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4").wheels(heard("spare", "A5"));
        log.on("2021-01-01").heard("A1", "A2", "A3", "A5").wheels(silent("spare"));
        log.on("2022-01-01").heard("A1", "A2", "A3", "A5").wheels(heard("spare", "A4"));

        VehicleHistory history = log.history();

        assertThat(history.lives()).hasSize(5).allMatch(SensorLife::inService);
        assertThat(life(history, "A4").position().isSpare()).isTrue();
        assertThat(life(history, "A5").position().code()).isEqualTo("2R");
        assertThat(life(history, "A4").lifetime()).isEqualTo(Lifetime.censored(age("2020-01-01"), age("2022-01-01")));
        assertThat(kinds(history)).containsOnly(Finding.Kind.MOVED);
    }

    @Test
    void innerAndOuterWheelOfADualAreTwoPlaces() {
        log.axles("SD");
        log.on("2020-01-01")
                .wheels(heard("1L", "A1"), heard("1R", "A2"), heard("2LO", "A3"), heard("2LI", "A4"))
                .wheels(heard("2RO", "A5"), heard("2RI", "A6"));
        for (String day : new String[] {"2021-01-01", "2021-07-01"}) {
            log.on(day)
                    .wheels(heard("1L", "A1"), heard("1R", "A2"), heard("2LO", "A3"), silent("2LI"))
                    .wheels(heard("2RO", "A5"), heard("2RI", "A6"));
        }

        VehicleHistory history = log.history();

        assertThat(history.lives()).hasSize(6);
        assertThat(life(history, "A4").end()).isEqualTo(LifeEnd.FAILED);
        assertThat(life(history, "A4").lifetime())
                .isEqualTo(Lifetime.interval(age("2020-01-01"), age("2020-01-01"), age("2021-01-01")));
        assertThat(life(history, "A3").inService()).isTrue();
    }

    /** Common practice, no source: a trailer is a vehicle of its own, whatever tractor draws it. */
    @Test
    void aTrailersSensorsLiveOnTheTrailer() {
        Logbook trailer = new Logbook("TRAILER").axles("SSS");
        trailer.on("2020-01-01").wheels(heard("1L", "C1"), heard("2L", "C2"), heard("3L", "C3"));
        trailer.on("2021-01-01").wheels(heard("1L", "C1"), heard("2L", "C2"), heard("3L", "C3"));
        log.axles("SD").on("2020-01-01").wheels(heard("1L", "A1"));
        log.on("2021-01-01").wheels(heard("1L", "A1"));

        assertThat(trailer.history().lives())
                .extracting(SensorLife::lifeId)
                .containsExactly("TRAILER/C1/1", "TRAILER/C2/1", "TRAILER/C3/1");
        assertThat(log.history().lives()).extracting(SensorLife::lifeId).containsExactly("V1/A1/1");
        assertThat(life(trailer.history(), "C3").lifetime())
                .isEqualTo(Lifetime.censored(age("2020-01-01"), age("2021-01-01")));
    }

    @Test
    void fourSilentWheelsOfAnIndirectSystemAreNoDeaths() {
        log.system(MonitoringSystem.INDIRECT);
        for (String day : new String[] {"2020-01-01", "2021-01-01", "2022-01-01"}) {
            log.on(day).wheels(silent("1L"), silent("1R"), silent("2L"), silent("2R"));
        }

        VehicleHistory history = log.history();

        assertThat(history.lives()).isEmpty();
        assertThat(history.findings()).singleElement().satisfies(f -> {
            assertThat(f.kind()).isEqualTo(Finding.Kind.NO_WHEEL_SENSORS);
            assertThat(f.what()).startsWith("12 tries met silence");
            assertThat(f.done()).isEqualTo("the silence counts for nothing");
            assertThat(f.sources()).hasSize(12);
        });
    }

    @Test
    void aPlainValveIsAPlaceWithoutASensorUntilOneIsFitted() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").heard("A1", "A2", "A3").wheels(heard("2R", "A4").plainValve(WorkReason.CUSTOMER_WHEELS));
        log.on("2022-01-01").heard("A1", "A2", "A3").wheels(notPresent("2R"));
        log.on("2023-01-01").heard("A1", "A2", "A3").wheels(notPresent("2R").replaced(null, "B4"));
        log.on("2024-01-01").heard("A1", "A2", "A3", "B4");

        VehicleHistory history = log.history();

        assertThat(life(history, "A4").end())
                .as("gone with the wheels: no failure")
                .isEqualTo(LifeEnd.LOST);
        assertThat(life(history, "A4").endedOn()).isEqualTo("2021-01-01");
        assertThat(life(history, "A4").lifetime()).isEqualTo(Lifetime.censored(age("2020-01-01"), age("2021-01-01")));
        assertThat(life(history, "B4").lifetime()).isEqualTo(Lifetime.censored(0, 365));
        assertThat(history.lives()).hasSize(5);
    }

    @Test
    void aVehicleThatLeavesTakesItsSensorsAlongAlive() {
        log.leftFleet("2022-03-31");
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2022-01-01").heard("A1", "A2", "A3").wheels(silent("2R"));

        VehicleHistory history = log.history();

        assertThat(history.lives())
                .hasSize(4)
                .allMatch(l -> l.end() == LifeEnd.LEFT_FLEET)
                .allMatch(l -> l.endedOn().equals(LocalDate.of(2022, 3, 31)));
        assertThat(life(history, "A1").lifetime()).isEqualTo(Lifetime.censored(age("2020-01-01"), age("2022-01-01")));
        assertThat(life(history, "A4").lifetime())
                .as("one silence before it left is no death, and what followed its last answer is not known")
                .isNull();
    }
}
