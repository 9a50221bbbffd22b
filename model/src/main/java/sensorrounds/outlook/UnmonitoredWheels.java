package sensorrounds.outlook;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.fleet.Vehicle;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.LifeReading;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.visit.ReadOutcome;

/**
 * The wheels of a vehicle without low-pressure warning: its sensor is known failed and still on the wheel, or was taken
 * out and none is recorded at that place of that wheel set since (a plain valve, as far as the logs tell). A vehicle that
 * has left, or whose system has no wheel sensors, has none.
 */
public final class UnmonitoredWheels {
    private UnmonitoredWheels() {}

    /** In order of wheel set, then place. */
    public static List<UnmonitoredWheel> of(VehicleHistory history, LocalDate asOf) {
        Vehicle vehicle = history.vehicle();
        boolean left = vehicle.leftFleet() != null && !vehicle.leftFleet().isAfter(asOf);
        List<UnmonitoredWheel> wheels = new ArrayList<>();
        if (left || vehicle.system() == MonitoringSystem.INDIRECT) {
            return wheels;
        }
        for (SensorLife life : history.lives()) {
            UnmonitoredWheel wheel = life.onVehicle() ? deadOnWheel(history, life) : takenOut(history, life);
            if (wheel != null && (wheel.since() == null || !wheel.since().isAfter(asOf))) {
                wheels.add(wheel);
            }
        }
        wheels.sort(Comparator.comparing(UnmonitoredWheel::wheelSet, Comparator.nullsFirst(Comparator.naturalOrder()))
                .thenComparing(UnmonitoredWheel::position, Comparator.nullsLast(Comparator.naturalOrder()))
                .thenComparing(UnmonitoredWheel::since, Comparator.nullsFirst(Comparator.naturalOrder())));
        return wheels;
    }

    private static UnmonitoredWheel deadOnWheel(VehicleHistory history, SensorLife life) {
        Vehicle vehicle = history.vehicle();
        if (history.lives().stream().anyMatch(o -> o.inService() && samePlace(o, life))) {
            return null;
        }
        if (life.end() == LifeEnd.FAILED) {
            return wheel(
                    vehicle,
                    life,
                    life.sensorId(),
                    life.firstKnownFailed(),
                    "Sensor known failed since " + life.firstKnownFailed() + " and still on the wheel.");
        }
        if (life.end() == LifeEnd.PLACE_SUSPECTED) {
            LocalDate since = firstSilence(life);
            return wheel(
                    vehicle,
                    life,
                    life.sensorId(),
                    since,
                    "Silent since " + since + "; sensors keep falling silent at this place, so look at the place"
                            + " before the sensor.");
        }
        return null;
    }

    private static UnmonitoredWheel takenOut(VehicleHistory history, SensorLife life) {
        if (life.end() == LifeEnd.LEFT_FLEET || followed(history, life)) {
            return null;
        }
        return wheel(
                history.vehicle(),
                life,
                null,
                life.endedOn(),
                "Sensor " + life.sensorId() + " was taken out on " + life.endedOn()
                        + " and none is recorded at this wheel since: plain valve, or a sensor nobody wrote down.");
    }

    /** Another sensor sat there at the time or came after; of two that ended together the first listed speaks. */
    private static boolean followed(VehicleHistory history, SensorLife life) {
        List<SensorLife> lives = history.lives();
        int at = lives.indexOf(life);
        for (int i = 0; i < lives.size(); i++) {
            SensorLife other = lives.get(i);
            if (i == at || !samePlace(other, life)) {
                continue;
            }
            if (other.onVehicle()
                    || other.endedOn().isAfter(life.endedOn())
                    || (other.endedOn().equals(life.endedOn()) && i < at)) {
                return true;
            }
        }
        return false;
    }

    private static boolean samePlace(SensorLife a, SensorLife b) {
        return Objects.equals(a.position(), b.position()) && Objects.equals(a.wheelSet(), b.wheelSet());
    }

    private static LocalDate firstSilence(SensorLife life) {
        LocalDate since = null;
        for (LifeReading reading : life.readings()) {
            if (reading.answered()) {
                since = null;
            } else if (reading.outcome() == ReadOutcome.NO_ANSWER && since == null) {
                since = reading.day();
            }
        }
        return since;
    }

    private static UnmonitoredWheel wheel(
            Vehicle vehicle, SensorLife life, String sensorId, LocalDate since, String reason) {
        return new UnmonitoredWheel(
                vehicle.vehicleId(), vehicle.depot(), life.position(), life.wheelSet(), sensorId, since, reason);
    }
}
