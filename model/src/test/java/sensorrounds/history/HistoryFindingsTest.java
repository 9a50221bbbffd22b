package sensorrounds.history;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static sensorrounds.history.Logbook.kinds;
import static sensorrounds.history.Logbook.life;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import sensorrounds.fleet.Vehicle;

/** What the logs contradict, and what is made of it. */
class HistoryFindingsTest {
    private final Logbook log = new Logbook();

    @Test
    void aVisitBeforeFirstUseTakesTheAgeAway() {
        log.on("2017-12-31").heard("A1", "A2", "A3", "A4");
        log.on("2019-01-01").heard("A1", "A2", "A3", "A4");

        VehicleHistory history = log.history();

        assertThat(kinds(history)).containsExactly(Finding.Kind.IMPOSSIBLE_ORDER);
        assertThat(life(history, "A1").lifetime()).isNull();
        assertThat(life(history, "A1").exclusion()).contains("before its first use on 2018-01-01");
    }

    @Test
    void aVisitAfterTheVehicleLeftMovesTheLeaving() {
        log.leftFleet("2020-01-01");
        log.on("2019-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2020-05-01").heard("A1", "A2", "A3", "A4");

        VehicleHistory history = log.history();

        assertThat(history.findings()).singleElement().satisfies(f -> {
            assertThat(f.kind()).isEqualTo(Finding.Kind.IMPOSSIBLE_ORDER);
            assertThat(f.what()).contains("visit-2", "2020-05-01", "after the vehicle left on 2020-01-01");
            assertThat(f.sources()).hasSize(4);
        });
        assertThat(life(history, "A1").endedOn()).isEqualTo(LocalDate.of(2020, 5, 1));
    }

    @Test
    void anOdometerThatGoesBackIsToldOnceAndRoundingIsNot() {
        log.on("2019-01-01").odometer(10_000.6);
        log.on("2019-02-01").odometer(10_000);
        log.on("2019-03-01").odometer(110_000);
        log.on("2019-04-01").odometer(11_000);
        log.on("2019-05-01").odometer(12_000);

        VehicleHistory history = log.history();

        assertThat(history.findings()).singleElement().satisfies(f -> {
            assertThat(f.kind()).isEqualTo(Finding.Kind.ODOMETER_BACK);
            assertThat(f.what()).isEqualTo("the odometer shows 11000 km after 110000 km on 2019-03-01");
            assertThat(f.sources()).extracting(Object::toString).containsExactly("day.jsonl:30", "day.jsonl:40");
        });
    }

    @Test
    void aVehicleOutsideTheRegisterIsTold() {
        log.unregistered();
        log.on("2019-01-01").heard("A1", "A2", "A3", "A4");

        VehicleHistory history = log.history();

        assertThat(kinds(history)).containsExactly(Finding.Kind.UNREGISTERED_VEHICLE);
        assertThat(life(history, "A1").exclusion()).contains("register does not say when the vehicle was first used");
    }

    @Test
    void nothingFromTheFuture() {
        log.on("2019-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2020-01-01").heard("A1", "A2", "A3", "FF");

        VehicleHistory history = log.historyAsOf(LocalDate.of(2019, 12, 31));

        assertThat(history.visits()).hasSize(1);
        assertThat(history.lives()).hasSize(4);
        assertThat(history.findings()).isEmpty();
        assertThat(log.historyAsOf(LocalDate.of(2020, 1, 1)).lives()).hasSize(5);
    }

    @Test
    void aVehicleWithoutVisitsHasAnEmptyHistory() {
        VehicleHistory history = log.unregistered().history();

        assertThat(history.lives()).isEmpty();
        assertThat(history.findings()).isEmpty();
        assertThat(history.vehicleId()).isEqualTo("V1");
    }

    @Test
    void anotherVehiclesVisitIsRefused() {
        log.on("2019-01-01").heard("A1");

        assertThatThrownBy(() -> HistoryBuilder.build(
                        Vehicle.unregistered("V2"), log.visits(), HistorySettings.defaults(), Logbook.FAR_AHEAD))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("visit visit-1 is of vehicle V1, not of V2; group the visits by vehicle first");
    }
}
