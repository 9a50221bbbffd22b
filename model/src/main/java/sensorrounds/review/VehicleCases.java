package sensorrounds.review;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import sensorrounds.fleet.Vehicle;
import sensorrounds.history.Finding;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VisitSummary;
import sensorrounds.outlook.SensorOutlook;
import sensorrounds.outlook.UnmonitoredWheel;
import sensorrounds.outlook.UnmonitoredWheel.Certainty;
import sensorrounds.replacement.Mounting;
import sensorrounds.replacement.ReplacementSettings;
import sensorrounds.replacement.VehicleCase;
import sensorrounds.replacement.VehicleCase.Place;
import sensorrounds.replacement.VehicleCase.Sight;
import sensorrounds.replacement.VehicleCase.Stops;
import sensorrounds.visit.VisitReason;
import sensorrounds.visit.WheelPosition;

/** What of a vehicle's history bears on the decision about its sensors. */
final class VehicleCases {
    private static final double MONTH = 365.25 / 12;

    private VehicleCases() {}

    static VehicleCase of(
            VehicleHistory history,
            List<VehicleCase.Sensor> sensors,
            List<UnmonitoredWheel> unmonitored,
            ReplacementSettings settings,
            LocalDate asOf) {
        String setOnVehicle = Mounting.setOnVehicle(history);
        List<WheelPosition> dead = unmonitored.stream()
                .filter(w -> w.certainty() == Certainty.KNOWN && w.position() != null)
                .filter(w -> Mounting.of(w.position(), w.wheelSet(), setOnVehicle) == Mounting.ON_THE_ROAD)
                .map(UnmonitoredWheel::position)
                .sorted()
                .toList();
        return new VehicleCase(
                sensors, asOf, stops(history, settings, asOf), sight(history, settings.outOfSightDays(), asOf), dead);
    }

    static Place place(VehicleHistory history, SensorOutlook outlook) {
        boolean keepsFailing = history.findings().stream()
                .anyMatch(f -> f.kind() == Finding.Kind.PLACE_KEEPS_FAILING
                        && outlook.sensor().position().equals(f.position())
                        && Objects.equals(outlook.sensor().wheelSet(), f.wheelSet()));
        return keepsFailing ? Place.KEEPS_FAILING : Place.ORDINARY;
    }

    /**
     * The rhythm of a vehicle's stops, by its own visits as far as there are any: gamma-Poisson, the settings' gap counting
     * for so many stops. Visits for a warning do not count: what is to be known is how often it stands anyway. Whole months,
     * so that few rhythms serve a large fleet.
     */
    private static Stops stops(VehicleHistory history, ReplacementSettings settings, LocalDate asOf) {
        List<LocalDate> days = history.visits().stream()
                .filter(v -> v.reason() != VisitReason.WARNING && !v.day().isAfter(asOf))
                .map(VisitSummary::day)
                .distinct()
                .sorted()
                .toList();
        LocalDate last = days.isEmpty() ? null : days.get(days.size() - 1);
        double seen = days.isEmpty() ? 0 : ChronoUnit.DAYS.between(days.get(0), asOf);
        double stops = settings.stopGapWeight() + Math.max(0, days.size() - 1);
        double gap = (settings.stopGapWeight() * settings.stopGapDays() + seen) / stops;
        int months = (int) Math.max(1, Math.round(gap / MONTH));
        return new Stops(nextStop(history.vehicle(), asOf), last, (int) Math.round(months * MONTH));
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
