package sensorrounds.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.history.LifeEnd;

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
