package sensorrounds.history;

import static org.assertj.core.api.Assertions.assertThat;
import static sensorrounds.history.Logbook.age;
import static sensorrounds.history.Logbook.life;
import static sensorrounds.history.Wheel.heard;
import static sensorrounds.history.Wheel.silent;
import static sensorrounds.history.Wheel.untried;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import sensorrounds.survival.Lifetime;
import sensorrounds.visit.WorkReason;

/** Sensors that go from vehicle to vehicle: one life in two parts. Both vehicles are first used on 1 January 2018. */
class MovedSensorsTest {
    private final Logbook one = new Logbook("V1");
    private final Logbook two = new Logbook("V2");

    private static MovedSensors.Heard span(String id, String vehicle, String first, String last) {
        return new MovedSensors.Heard(id, vehicle, List.of(LocalDate.parse(first), LocalDate.parse(last)));
    }

    /** The histories of both vehicles, with the moves between them. */
    private List<VehicleHistory> together(MovedSensors.Heard... heard) {
        MovedSensors moved = MovedSensors.of(List.of(heard));
        Map<String, VehicleMoves> departures = moved.departures();
        List<MovedSensors.Known> known = new ArrayList<>();
        Stream.of(one, two).forEach(log -> {
            String vehicle = log.vehicle().vehicleId();
            if (moved.sources().contains(vehicle)) {
                known.addAll(moved.known(log.moves(departures.getOrDefault(vehicle, VehicleMoves.NONE))
                        .history()));
            }
        });
        Map<String, VehicleMoves> moves = moved.moves(known);
        return Stream.of(one, two)
                .map(log -> log.moves(moves.getOrDefault(log.vehicle().vehicleId(), VehicleMoves.NONE))
                        .history())
                .toList();
    }

    @Test
    void aSensorThatMovedIsOneLifeInTwoParts() {
        one.on("2020-01-01").wheels(heard("1L", "A1"), heard("1R", "A2"));
        one.on("2021-01-01").wheels(silent("1L"), heard("1R", "A2"));
        one.on("2021-06-01").wheels(silent("1L"), heard("1R", "A2"));
        two.on("2022-01-01").wheels(heard("1L", "A1"), heard("1R", "B2"));
        two.on("2023-01-01").wheels(heard("1L", "A1"), heard("1R", "B2"));

        List<VehicleHistory> both =
                together(span("A1", "V1", "2020-01-01", "2020-01-01"), span("A1", "V2", "2022-01-01", "2023-01-01"));
        SensorLife before = life(both.get(0), "A1");
        SensorLife after = life(both.get(1), "A1");

        assertThat(before.end())
                .as("twice silent, and no death: it was not there any more")
                .isEqualTo(LifeEnd.MOVED);
        assertThat(before.endedOn()).isEqualTo("2022-01-01");
        assertThat(before.exclusion()).contains("heard on one day only");
        assertThat(after.basis()).isEqualTo(OriginBasis.EARLIER_VEHICLE);
        assertThat(after.continues()).isEqualTo("V1/A1/1");
        assertThat(after.fittedOn()).isEqualTo("2018-01-01");
        assertThat(after.lifetime())
                .as("watched here from its first answer: those that died on the way were never seen here")
                .isEqualTo(Lifetime.censored(age("2022-01-01"), age("2023-01-01")));
        assertThat(both.get(0).findings()).singleElement().satisfies(f -> {
            assertThat(f.kind()).isEqualTo(Finding.Kind.MOVED);
            assertThat(f.what())
                    .isEqualTo("sensor A1 was last heard at axle 1, left on 2020-01-01 and answers on vehicle V2 since"
                            + " 2022-01-01");
            assertThat(f.done()).contains("ends without a failure and goes on there");
        });
        assertThat(both.get(1).findings()).singleElement().satisfies(f -> {
            assertThat(f.what())
                    .isEqualTo("sensor A1 was on vehicle V1 until 2020-01-01 and answers here since 2022-01-01");
            assertThat(f.done()).contains("age zero on 2018-01-01");
            assertThat(f.sources()).extracting(Object::toString).containsExactly("day.jsonl:10");
        });
    }

    @Test
    void withoutTheOtherVehicleItWouldBeADeathAndAnOriginal() {
        one.on("2020-01-01").wheels(heard("1L", "A1"), heard("1R", "A2"));
        one.on("2021-01-01").wheels(silent("1L"), heard("1R", "A2"));
        one.on("2021-06-01").wheels(silent("1L"), heard("1R", "A2"));
        two.on("2021-12-01").wheels(heard("1L", "A1"));

        assertThat(life(one.history(), "A1").end()).isEqualTo(LifeEnd.FAILED);
        assertThat(life(two.history(), "A1").basis()).isEqualTo(OriginBasis.VEHICLE_FIRST_USE);
    }

    @Test
    void heardOnBothOverTheSameTimeItHasNotMoved() {
        assertThat(MovedSensors.of(List.of(
                                span("A1", "V1", "2020-01-01", "2021-01-01"),
                                span("A1", "V2", "2020-06-01", "2022-01-01"),
                                span("A2", "V1", "2020-01-01", "2021-01-01"),
                                span("A2", "V2", "2021-01-01", "2022-01-01"),
                                span("A3", "V1", "2020-01-01", "2021-01-01"),
                                span("A3", "V2", "2021-01-02", "2022-01-01")))
                        .departures()
                        .get("V1")
                        .departures())
                .as("overlapping, on one day, and one after the other")
                .containsOnlyKeys("A3");
    }

    @Test
    void aRotationBetweenVehiclesIsTwoMoves() {
        one.on("2020-01-01").wheels(heard("1L", "A1"));
        one.on("2021-01-01").wheels(heard("1L", "B1"));
        two.on("2020-01-01").wheels(heard("1L", "B1"));
        two.on("2021-01-01").wheels(heard("1L", "A1"));

        List<VehicleHistory> both = together(
                span("A1", "V1", "2020-01-01", "2020-01-01"),
                span("B1", "V1", "2021-01-01", "2021-01-01"),
                span("B1", "V2", "2020-01-01", "2020-01-01"),
                span("A1", "V2", "2021-01-01", "2021-01-01"));

        assertThat(both).allSatisfy(h -> {
            assertThat(h.lives()).hasSize(2);
            assertThat(h.lives().get(0).end()).isEqualTo(LifeEnd.MOVED);
            assertThat(h.lives().get(1).basis()).isEqualTo(OriginBasis.EARLIER_VEHICLE);
            assertThat(h.findings()).extracting(Finding::kind).containsOnly(Finding.Kind.MOVED);
        });
    }

    @Test
    void aUsedSensorFittedOnRecordKeepsItsAge() {
        one.on("2020-01-01").wheels(heard("1L", "A1").replaced(WorkReason.PREVENTIVE, "N1"));
        two.on("2021-01-01").wheels(untried("1L").replaced(WorkReason.NO_ANSWER, "A1"));
        two.on("2022-01-01").wheels(heard("1L", "A1"));

        List<VehicleHistory> both =
                together(span("A1", "V1", "2020-01-01", "2020-01-01"), span("A1", "V2", "2022-01-01", "2022-01-01"));

        assertThat(life(both.get(0), "A1").end()).as("as recorded").isEqualTo(LifeEnd.PREVENTIVE);
        assertThat(life(both.get(1), "A1").fittedOn()).isEqualTo("2018-01-01");
        assertThat(life(both.get(1), "A1").basis()).isEqualTo(OriginBasis.EARLIER_VEHICLE);
    }

    @Test
    void takenOffAsFailedAndAliveElsewhereItBeginsALifeOfUnknownAge() {
        one.on("2020-01-01").wheels(heard("1L", "A1"));
        one.on("2021-01-01").wheels(silent("1L").replaced(WorkReason.NO_ANSWER, "N1"));
        two.on("2022-01-01").wheels(heard("1L", "A1"));

        List<VehicleHistory> both =
                together(span("A1", "V1", "2020-01-01", "2020-01-01"), span("A1", "V2", "2022-01-01", "2022-01-01"));

        assertThat(life(both.get(0), "A1").end()).isEqualTo(LifeEnd.FAILED);
        assertThat(life(both.get(1), "A1").basis()).isEqualTo(OriginBasis.UNKNOWN);
        assertThat(both.get(1).findings()).extracting(Finding::kind).containsExactly(Finding.Kind.ALIVE_AGAIN);
    }

    @Test
    void overThreeVehiclesTheAgeIsTheFirstOnes() {
        MovedSensors moved = MovedSensors.of(List.of(
                span("A1", "V3", "2024-01-01", "2024-01-01"),
                span("A1", "V1", "2020-01-01", "2020-01-01"),
                span("A1", "V2", "2022-01-01", "2022-01-01")));
        LocalDate born = LocalDate.of(2019, 5, 5);

        Map<String, VehicleMoves> moves = moved.moves(List.of(
                new MovedSensors.Known("V1", "A1", "V1/A1/1", LocalDate.of(2020, 1, 1), born, born, "P", false),
                new MovedSensors.Known("V2", "A1", "V2/A1/1", LocalDate.of(2022, 1, 1), null, null, null, false)));

        assertThat(moved.sources()).containsExactly("V1", "V2");
        assertThat(moves.get("V3").arrivals().get("A1"))
                .isEqualTo(new Arrival("V2", "V2/A1/1", LocalDate.of(2022, 1, 1), born, born, "P", false));
        assertThat(moves.get("V2").departures().get("A1").toVehicle()).isEqualTo("V3");
    }

    @Test
    void anIdOnManyVehiclesIsNobodysOwn() {
        assertThat(MovedSensors.of(Stream.of("1", "2", "3", "4", "5", "6")
                                .map(n -> span("A1", "V" + n, "202" + n + "-01-01", "202" + n + "-02-01"))
                                .toList())
                        .count())
                .isZero();
    }
}
