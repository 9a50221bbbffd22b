package sensorrounds.recurrence;

import static org.assertj.core.api.Assertions.assertThat;
import static sensorrounds.condition.Histories.answer;
import static sensorrounds.condition.Histories.day;
import static sensorrounds.condition.Histories.episode;
import static sensorrounds.condition.Histories.life;
import static sensorrounds.condition.Histories.visit;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sensorrounds.condition.Histories;
import sensorrounds.condition.WakeModel;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.fleet.Vehicle;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VisitSummary;
import sensorrounds.history.WarningEpisode;
import sensorrounds.visit.Warning;

/** Vehicles whose warning came back and that have no sensor to look at: nobody is named, and nothing is learned from them. */
class NothingToSuspectTest {
    private static final LocalDate AS_OF = day("2026-08-01");
    private static final RecurrenceSettings SETTINGS = RecurrenceSettings.defaults();
    private static final WakeModel MODEL = Histories.ordinaryModel();
    private static final PeerRates PEERS = PeerRates.fit(
            new PeerCells().count("van", 0, 24, 80).count("van", 1, 24, 30).count("van", 4, 24, 6), SETTINGS);
    private static final String[] DAYS = {"2026-02-10", "2026-04-14", "2026-06-20"};

    private static SensorLife sound(String place) {
        return life(place, answer(DAYS[0], place, 1), answer(DAYS[1], place, 1), answer(DAYS[2], place, 1));
    }

    private static List<VisitSummary> visits() {
        List<VisitSummary> all = new ArrayList<>(List.of(visit("2025-08-01", Warning.NONE)));
        for (String d : DAYS) {
            all.add(visit(d, Warning.SYSTEM_FAULT));
        }
        return all;
    }

    private static List<WarningEpisode> intermittent() {
        List<WarningEpisode> all = new ArrayList<>();
        for (String d : DAYS) {
            all.add(episode(Warning.SYSTEM_FAULT, d, d, 0, true, false));
        }
        return all;
    }

    private static RecurringVehicle judge(VehicleHistory history) {
        return Recurrence.of(history, PEERS, MODEL, SETTINGS, AS_OF).orElseThrow();
    }

    private static VehicleHistory of(Vehicle vehicle, List<SensorLife> lives) {
        return new VehicleHistory(vehicle, visits(), lives, intermittent(), List.of(), List.of());
    }

    private static Vehicle van(MonitoringSystem system, String left) {
        Vehicle v = Histories.vehicle("van");
        return new Vehicle(
                v.vehicleId(),
                v.vehicleClass(),
                null,
                v.firstUsed(),
                v.depot(),
                null,
                system,
                null,
                null,
                null,
                null,
                left == null ? null : day(left));
    }

    @Test
    void aVehicleThatHasLeftIsNotOnTheListAndTeachesNothing() {
        List<SensorLife> lives = List.of(sound("1L"), sound("1R"));
        VehicleHistory gone = of(van(MonitoringSystem.DIRECT, "2026-07-01"), lives);
        RecurringVehicle v = judge(gone);
        assertThat(v.pattern()).isEqualTo(RecurringVehicle.Pattern.NOT_RECURRING);
        assertThat(v.suspects()).isEmpty();
        assertThat(v.episodes()).isEqualTo(3);
        assertThat(v.story()).endsWith("last seen on 2026-06-20; the vehicle left the fleet on 2026-07-01.");
        assertThat(Recurrence.toLearnFrom(gone, MODEL, SETTINGS, AS_OF)).isEmpty();

        VehicleHistory leaving = of(van(MonitoringSystem.DIRECT, "2026-08-02"), lives);
        assertThat(judge(leaving).pattern()).isEqualTo(RecurringVehicle.Pattern.RECURRING_INTERMITTENT);
        assertThat(Recurrence.toLearnFrom(leaving, MODEL, SETTINGS, AS_OF)).isPresent();
    }

    @Test
    void aSystemWithoutWheelSensorsIsNotAskedForItsIdsAndTeachesNothing() {
        VehicleHistory indirect = of(van(MonitoringSystem.INDIRECT, null), List.of());
        assertThat(judge(indirect).suspects())
                .singleElement()
                .satisfies(s -> assertThat(s.nextStep())
                        .startsWith("this system has no wheel sensors: set all pressures by gauge"));
        assertThat(Recurrence.toLearnFrom(indirect, MODEL, SETTINGS, AS_OF)).isEmpty();
    }
}
