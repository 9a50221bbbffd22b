package sensorrounds.history;

import static org.assertj.core.api.Assertions.assertThat;
import static sensorrounds.history.Logbook.kinds;
import static sensorrounds.history.Logbook.life;
import static sensorrounds.history.Wheel.heard;
import static sensorrounds.history.Wheel.silent;
import static sensorrounds.history.Wheel.untried;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sensorrounds.history.MovedSensors.Heard;
import sensorrounds.visit.WorkReason;

/** Trailers written down under their tractors, and the other way round. Common practice of the trade, without a source. */
class ForeignWheelsTest {
    private final Logbook tractor = new Logbook("TRACTOR").axles("SD");

    private static Heard on(String vehicle, String... days) {
        return new Heard("A1", vehicle, Stream.of(days).map(LocalDate::parse).toList());
    }

    private static VehicleMoves strays(String id) {
        return new VehicleMoves(Map.of(), Map.of(), Map.of(id, "TRAILER"));
    }

    @Test
    void anAxleTheVehicleDoesNotHaveIsATrailers() {
        tractor.on("2020-01-01").wheels(heard("1L", "A1"), heard("3L", "T1"), silent("4R"));
        tractor.on("2020-06-01").wheels(heard("1L", "A1"), silent("3L", "T1"), silent("4R"));
        tractor.on("2021-01-01").wheels(heard("1L", "A1"), silent("3L", "T1"), silent("4R"));

        VehicleHistory history = tractor.history();

        assertThat(history.lives()).extracting(SensorLife::sensorId).containsExactly("A1");
        assertThat(kinds(history)).hasSize(3).containsOnly(Finding.Kind.WHEEL_OF_ANOTHER_VEHICLE);
        assertThat(history.findings().get(0).what())
                .isEqualTo("visit visit-1 has 2 wheels at 3L, 4R, and by the fleet register the vehicle has 2 axles");
        assertThat(history.findings().get(0).sources()).hasSize(2);
    }

    @Test
    void aSpareMayBeAnywhereAndWithoutARegisterEveryAxleCounts() {
        tractor.on("2020-01-01").wheels(heard("1L", "A1"), heard("spare", "S1"));
        assertThat(tractor.history().findings()).isEmpty();

        Logbook unknown = new Logbook("X").unregistered();
        unknown.on("2020-01-01").wheels(heard("1L", "A1"), heard("4L", "B1"));
        assertThat(unknown.history().lives()).hasSize(2);
    }

    /** What answered was the trailer's; the tractor's own sensor at that place neither answered nor was silent. */
    @Test
    void aStrayAnswerSaysNothingOfTheSensorAtThatPlace() {
        tractor.moves(strays("T1"));
        tractor.on("2020-01-01").wheels(heard("1L", "A1"), heard("1R", "A2"));
        tractor.on("2021-01-01").wheels(heard("1L", "T1"), heard("1R", "A2"));
        tractor.on("2022-01-01").wheels(heard("1L", "A1"), heard("1R", "A2"));

        VehicleHistory history = tractor.history();

        assertThat(history.lives()).extracting(SensorLife::sensorId).containsExactly("A1", "A2");
        assertThat(life(history, "A1").end()).isEqualTo(LifeEnd.IN_SERVICE);
        assertThat(life(history, "A1").readings()).hasSize(2);
        assertThat(kinds(history)).containsExactly(Finding.Kind.WHEEL_OF_ANOTHER_VEHICLE);
    }

    @Test
    void workOnAWheelIsDoneWhateverAnsweredThere() {
        tractor.moves(strays("T1"));
        tractor.on("2020-01-01").wheels(heard("1L", "A1"));
        tractor.on("2021-01-01").wheels(heard("1L", "T1").replaced(WorkReason.PREVENTIVE, "N1"));
        tractor.on("2022-01-01").wheels(heard("1L", "N1"));

        VehicleHistory history = tractor.history();

        assertThat(life(history, "A1").end()).isEqualTo(LifeEnd.PREVENTIVE);
        assertThat(life(history, "N1").fittedOn()).isEqualTo("2021-01-01");
    }

    /** A visit whose only wheels are another vehicle's stays a visit, so that its warning and its repair count. */
    @Test
    void aVisitWithoutAnOwnWheelStaysAVisit() {
        tractor.on("2020-01-01").wheels(heard("1L", "A1"));
        tractor.on("2021-01-01").wheels(untried("3L"));

        assertThat(tractor.history().visits()).hasSize(2);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "heard at home before and after,     2020-01-01 2022-01-01,            2021-01-01,            true",
        "on the same day as at home,         2020-01-01 2021-01-01,            2021-01-01,            true",
        "twice and at home between,          2020-01-01 2021-06-01 2022-01-01, 2021-01-01 2021-09-01, true",
        "lent and not at home meanwhile,     2020-01-01 2022-01-01 2023-01-01, 2021-01-01 2021-09-01, false",
        "gone for good,                      2020-01-01 2020-06-01,            2021-01-01,            false",
        "first here and then at home,        2021-01-01 2022-01-01,            2020-01-01,            false",
        "as often here as there,             2020-01-01,                       2020-01-01,            false",
    })
    void aStrayIsHeardAtHomeBeforeAndAfter(String name, String atHome, String here, boolean stray) {
        MovedSensors moved = MovedSensors.of(List.of(on("HOME", atHome.split(" ")), on("HERE", here.split(" "))));

        assertThat(moved.isStray("A1", "HERE")).isEqualTo(stray);
        assertThat(moved.isStray("A1", "HOME")).isFalse();
        assertThat(moved.departures().containsKey("HERE")).isEqualTo(stray || name.startsWith("first"));
    }

    /** Two sensors with one ID are heard on both vehicles again and again. */
    @Test
    void anIdHeardHereAgainAndAgainIsNoStray() {
        MovedSensors moved = MovedSensors.of(List.of(
                on("HOME", "2020-01-01", "2021-01-01", "2022-01-01", "2023-01-01", "2024-01-01"),
                on("HERE", "2020-06-01", "2021-06-01", "2022-06-01")));

        assertThat(moved.isStray("A1", "HERE")).isFalse();
    }

    /** Without the stray the rest is a plain move. */
    @Test
    void aStrayDoesNotHideAMove() {
        MovedSensors moved = MovedSensors.of(List.of(
                on("V1", "2020-01-01", "2021-01-01"), on("V2", "2022-01-01", "2023-01-01"), on("V3", "2020-06-01")));

        assertThat(moved.isStray("A1", "V3")).isTrue();
        assertThat(moved.departures().get("V1").departures().get("A1").toVehicle())
                .isEqualTo("V2");
    }
}
