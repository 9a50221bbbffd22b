package sensorrounds.outlook;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import sensorrounds.fleet.Vehicle;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VisitSummary;
import sensorrounds.visit.WheelPosition;

/**
 * Wheels found without a sensor at which none was ever read: a plain valve from before the logs. Only beside a sensor that was read at
 * the same visit, since a vehicle without any has another system; a spare only where the register gives it one.
 */
final class BareWheels {
    private BareWheels() {}

    static List<UnmonitoredWheel> of(VehicleHistory history, LocalDate asOf) {
        Map<WheelPosition, VisitSummary> first = new TreeMap<>();
        for (VisitSummary visit : history.visits()) {
            if (!visit.day().isAfter(asOf) && readAt(history, visit) != null) {
                visit.bare().forEach(place -> first.putIfAbsent(place, visit));
            }
        }
        return first.entrySet().stream()
                .filter(e -> counts(history.vehicle(), e.getKey()))
                .filter(e -> history.lives().stream()
                        .noneMatch(l -> e.getKey().equals(l.position())
                                && Objects.equals(
                                        l.wheelSet(),
                                        readAt(history, e.getValue()).wheelSet())))
                .map(e -> wheel(history, e.getKey(), e.getValue()))
                .toList();
    }

    private static boolean counts(Vehicle vehicle, WheelPosition place) {
        return !place.isSpare() || vehicle.axles() != null && vehicle.axles().spare();
    }

    /** A sensor that answered at the visit; null for none. */
    private static SensorLife readAt(VehicleHistory history, VisitSummary visit) {
        return history.lives().stream()
                .filter(l -> l.readings().stream()
                        .anyMatch(r -> r.answered() && visit.visitId().equals(r.visitId())))
                .findFirst()
                .orElse(null);
    }

    private static UnmonitoredWheel wheel(VehicleHistory history, WheelPosition place, VisitSummary found) {
        return new UnmonitoredWheel(
                history.vehicleId(),
                history.vehicle().depot(),
                place,
                readAt(history, found).wheelSet(),
                null,
                found.day(),
                "Found without a sensor on " + found.day() + ", and none was ever read at this wheel: plain valve.",
                UnmonitoredWheel.Certainty.KNOWN);
    }
}
