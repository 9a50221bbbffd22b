package sensorrounds.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import sensorrounds.fleet.AxleLayout;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.fleet.Vehicle;
import sensorrounds.history.Finding;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.Repair;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VisitSummary;
import sensorrounds.history.WarningEpisode;
import sensorrounds.outlook.UnmonitoredWheel.Certainty;
import sensorrounds.visit.Warning;
import sensorrounds.visit.WheelPosition;

class UnmonitoredWheelsTest {
    private static List<UnmonitoredWheel> of(Lives... lives) {
        return UnmonitoredWheels.of(Lives.history(null, lives), Lives.day(1000));
    }

    @Test
    void aDeadSensorStillOnTheWheelIsListed() {
        assertThat(of(
                        new Lives("A2").at("1R").ok(100),
                        new Lives("A1").at("1L").ok(100).failed(300)))
                .singleElement()
                .satisfies(w -> {
                    assertThat(w.certainty()).isEqualTo(Certainty.KNOWN);
                    assertThat(w.position().code()).isEqualTo("1L");
                    assertThat(w.sensorId()).isEqualTo("A1");
                    assertThat(w.since()).isEqualTo(Lives.day(300));
                    assertThat(w.reason()).contains("known failed since 2020-10-27");
                });
    }

    @Test
    void aSensorReplacedByAnotherIsNot() {
        assertThat(of(new Lives("A1").ok(100).failed(300).ended(LifeEnd.FAILED, 300), new Lives("A2").ok(300)))
                .isEmpty();
    }

    @Test
    void aSensorTakenOutWithNoneAfterItIsAPlainValveAsFarAsIsKnown() {
        assertThat(of(
                        new Lives("A0").ok(50).failed(80).ended(LifeEnd.FAILED, 80),
                        new Lives("A1").ok(100).failed(300).ended(LifeEnd.FAILED, 300)))
                .singleElement()
                .satisfies(w -> {
                    assertThat(w.sensorId()).isNull();
                    assertThat(w.since()).isEqualTo(Lives.day(300));
                    assertThat(w.reason())
                            .contains("A1 was taken out on 2020-10-27")
                            .contains("plain valve");
                });
    }

    @Test
    void aSensorSilentBecauseOfItsPlaceWarnsOfNothingEither() {
        assertThat(of(new Lives("A1").ok(100).silent(200, 300).placeSuspected()))
                .singleElement()
                .satisfies(w -> {
                    assertThat(w.since()).isEqualTo(Lives.day(200));
                    assertThat(w.reason()).contains("look at the place");
                });
    }

    @Test
    void aSensorSilentWhenTriedLastIsProbable() {
        assertThat(of(
                        new Lives("A1").ok(100).silent(200),
                        new Lives("A2").at("1R").ok(100).silent(200).ok(300)))
                .singleElement()
                .satisfies(w -> {
                    assertThat(w.certainty()).isEqualTo(Certainty.PROBABLE);
                    assertThat(w.sensorId()).isEqualTo("A1");
                    assertThat(w.since()).isEqualTo(Lives.day(200));
                    assertThat(w.reason()).contains("Did not answer on 2020-07-19", "last answered on 2020-04-10");
                });
    }

    @Test
    void theReadersSilenceIsNotTheSensors() {
        VehicleHistory h = Lives.history(null, new Lives("A1").ok(100).silent(200));
        Finding deaf = new Finding(
                Finding.Kind.READER_HEARD_NOTHING, "V1", null, null, null, Lives.day(200), "", "", List.of());
        VehicleHistory unheard =
                new VehicleHistory(h.vehicle(), h.visits(), h.lives(), h.episodes(), h.followUps(), List.of(deaf));

        assertThat(UnmonitoredWheels.of(unheard, Lives.day(1000))).isEmpty();
    }

    @Test
    void aSpareNeverHeardIsListedWhereTheRegisterSaysItHasASensor() {
        assertThat(UnmonitoredWheels.of(tried("SS+spare", WheelPosition.SPARE), Lives.day(1000)))
                .singleElement()
                .satisfies(w -> {
                    assertThat(w.certainty()).isEqualTo(Certainty.PROBABLE);
                    assertThat(w.position()).isEqualTo(WheelPosition.SPARE);
                    assertThat(w.sensorId()).isNull();
                    assertThat(w.reason()).contains("never been heard", "2 visits since 2020-04-10");
                });
        assertThat(UnmonitoredWheels.of(tried("SS", WheelPosition.SPARE), Lives.day(1000)))
                .isEmpty();
        assertThat(UnmonitoredWheels.of(tried("SS+spare"), Lives.day(1000))).isEmpty();
    }

    @Test
    void aWheelFoundWithoutASensorFromTheFirstVisitOnIsKnown() {
        VehicleHistory h = Lives.history(null, new Lives("A1").ok(100, 200));
        WheelPosition other = WheelPosition.parse("2R").orElseThrow();
        VehicleHistory bare = new VehicleHistory(
                h.vehicle(),
                List.of(bare(100, other, WheelPosition.SPARE), bare(200, other)),
                h.lives(),
                List.of(),
                List.of(),
                List.of());
        assertThat(UnmonitoredWheels.of(bare, Lives.day(1000))).singleElement().satisfies(w -> {
            assertThat(w.certainty()).isEqualTo(Certainty.KNOWN);
            assertThat(w.position()).isEqualTo(other);
            assertThat(w.sensorId()).isNull();
            assertThat(w.since()).isEqualTo(Lives.day(100));
            assertThat(w.reason()).startsWith("Found without a sensor on 2020-04-10");
        });
        // At a place where a sensor is read it was a slip, and with no sensor heard at all it is another system.
        WheelPosition own = h.lives().get(0).position();
        assertThat(UnmonitoredWheels.of(
                        new VehicleHistory(
                                h.vehicle(), List.of(bare(100, own)), h.lives(), List.of(), List.of(), List.of()),
                        Lives.day(1000)))
                .isEmpty();
        assertThat(UnmonitoredWheels.of(
                        new VehicleHistory(
                                h.vehicle(), List.of(bare(150, other)), h.lives(), List.of(), List.of(), List.of()),
                        Lives.day(1000)))
                .isEmpty();
    }

    private static VisitSummary bare(int day, WheelPosition... places) {
        return visit(day, List.of(), List.of(places));
    }

    @Test
    void aSystemWarningNotSeenOffConcernsTheWholeVehicle() {
        assertThat(UnmonitoredWheels.of(warned(null), Lives.day(1000)))
                .singleElement()
                .satisfies(w -> {
                    assertThat(w.certainty()).isEqualTo(Certainty.SYSTEM);
                    assertThat(w.position()).isNull();
                    assertThat(w.reason()).contains("System warning on at the visit of 2020-07-19 and not seen off");
                });
        assertThat(UnmonitoredWheels.of(warned(Lives.day(300)), Lives.day(1000)))
                .isEmpty();
    }

    private static VehicleHistory warned(LocalDate provenOff) {
        WarningEpisode episode = new WarningEpisode(
                "V1",
                Warning.SYSTEM_FAULT,
                Lives.day(200),
                Lives.day(200),
                provenOff,
                List.of("visit-200"),
                0,
                true,
                false,
                false);
        VehicleHistory h = Lives.history(null, new Lives("A1").ok(100));
        return new VehicleHistory(h.vehicle(), h.visits(), h.lives(), List.of(episode), List.of(), List.of());
    }

    /** Two visits at which these places gave no answer, and a sensor elsewhere that did. */
    private static VehicleHistory tried(String axles, WheelPosition... silent) {
        VehicleHistory h = Lives.history(null, new Lives("A1").ok(100, 200));
        Vehicle v = h.vehicle();
        Vehicle vehicle = new Vehicle(
                v.vehicleId(),
                v.vehicleClass(),
                null,
                null,
                v.depot(),
                null,
                v.system(),
                AxleLayout.parse(axles).orElseThrow(),
                null,
                null,
                null,
                null);
        return new VehicleHistory(
                vehicle, List.of(visit(100, silent), visit(200, silent)), h.lives(), List.of(), List.of(), List.of());
    }

    private static VisitSummary visit(int day, WheelPosition... silent) {
        return visit(day, List.of(silent), List.of());
    }

    private static VisitSummary visit(int day, List<WheelPosition> silent, List<WheelPosition> bare) {
        return new VisitSummary(
                Lives.day(day),
                "visit-" + day,
                "T1",
                "R1",
                null,
                Warning.NONE,
                null,
                List.of(),
                silent.isEmpty(),
                null,
                null,
                silent,
                bare,
                List.of(),
                null,
                Repair.NONE,
                false,
                false,
                null,
                null,
                null,
                null);
    }

    @Test
    void whatHasLeftOrHasNoWheelSensorsHasNone() {
        assertThat(of(new Lives("A1").ok(100).ended(LifeEnd.LEFT_FLEET, 300))).isEmpty();
        assertThat(UnmonitoredWheels.of(
                        Lives.history(null, MonitoringSystem.INDIRECT, new Lives("A1").failed(10)), Lives.day(1000)))
                .isEmpty();
        // Not yet known on an earlier as-of day.
        assertThat(UnmonitoredWheels.of(
                        Lives.history(null, new Lives("A1").ok(100).failed(300)), Lives.day(299)))
                .isEmpty();
    }
}
