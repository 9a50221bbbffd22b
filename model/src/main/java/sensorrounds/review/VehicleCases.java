package sensorrounds.review;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import sensorrounds.fleet.Vehicle;
import sensorrounds.history.Finding;
import sensorrounds.history.VehicleHistory;
import sensorrounds.outlook.SensorOutlook;
import sensorrounds.outlook.UnmonitoredWheel;
import sensorrounds.outlook.UnmonitoredWheel.Certainty;
import sensorrounds.replacement.Mounting;
import sensorrounds.replacement.VehicleCase;
import sensorrounds.replacement.VehicleCase.Place;
import sensorrounds.replacement.VehicleCase.Sight;
import sensorrounds.visit.WheelPosition;

/** What of a vehicle's history bears on the decision about its sensors. */
final class VehicleCases {
    private VehicleCases() {}

    static VehicleCase of(
            VehicleHistory history,
            List<VehicleCase.Sensor> sensors,
            List<UnmonitoredWheel> unmonitored,
            int outOfSightDays,
            LocalDate asOf) {
        String setOnVehicle = Mounting.setOnVehicle(history);
        List<WheelPosition> dead = unmonitored.stream()
                .filter(w -> w.certainty() == Certainty.KNOWN && w.position() != null)
                .filter(w -> Mounting.of(w.position(), w.wheelSet(), setOnVehicle) == Mounting.ON_THE_ROAD)
                .map(UnmonitoredWheel::position)
                .sorted()
                .toList();
        return new VehicleCase(
                sensors, asOf, nextStop(history.vehicle(), asOf), sight(history, outOfSightDays, asOf), dead);
    }

    static Place place(VehicleHistory history, SensorOutlook outlook) {
        boolean keepsFailing = history.findings().stream()
                .anyMatch(f -> f.kind() == Finding.Kind.PLACE_KEEPS_FAILING
                        && outlook.position().equals(f.position())
                        && Objects.equals(outlook.wheelSet(), f.wheelSet()));
        return keepsFailing ? Place.KEEPS_FAILING : Place.ORDINARY;
    }

    /** A stop that was booked for a day gone by may have been missed or not written down: it is no longer booked. */
    private static LocalDate nextStop(Vehicle vehicle, LocalDate asOf) {
        LocalDate booked = vehicle.nextPlannedVisit();
        return booked == null || booked.isBefore(asOf) ? null : booked;
    }

    private static Sight sight(VehicleHistory history, int outOfSightDays, LocalDate asOf) {
        boolean unregistered = history.findings().stream().anyMatch(f -> f.kind() == Finding.Kind.UNREGISTERED_VEHICLE);
        if (unregistered) {
            return Sight.NOT_IN_REGISTER;
        }
        boolean seen = history.visits().stream().anyMatch(v -> !v.day().isBefore(asOf.minusDays(outOfSightDays)));
        return seen ? Sight.KNOWN : Sight.OUT_OF_SIGHT;
    }
}
