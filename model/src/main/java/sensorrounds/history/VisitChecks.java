package sensorrounds.history;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import sensorrounds.fleet.Vehicle;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.Source;
import sensorrounds.visit.Visit;

/** Holds the visits of a vehicle against its register line and against each other. */
final class VisitChecks {
    /** Under this, a lower odometer is a matter of rounding between miles and kilometres. */
    private static final double ROUNDING_KM = 1;

    private final Vehicle vehicle;
    private final FindingLog findings;

    VisitChecks(Vehicle vehicle, FindingLog findings) {
        this.vehicle = vehicle;
        this.findings = findings;
    }

    /**
     * @param visits in time order
     * @param leftOn day the vehicle is taken to have left; null while it is in the fleet
     */
    void check(List<Visit> visits, LocalDate leftOn) {
        if (visits.isEmpty()) {
            return;
        }
        if (vehicle.equals(Vehicle.unregistered(vehicle.vehicleId()))) {
            findings.vehicle(
                    Finding.Kind.UNREGISTERED_VEHICLE,
                    visits.get(0).day(),
                    "vehicle " + vehicle.vehicleId() + " is in the logs and not in the fleet register",
                    "its class, depot and first use are not known",
                    sources(visits.get(0)));
        }
        visits.forEach(v -> checkDates(v, leftOn));
        checkOdometer(visits);
    }

    private void checkDates(Visit visit, LocalDate leftOn) {
        if (vehicle.firstUsed() != null && visit.day().isBefore(vehicle.firstUsed())) {
            findings.vehicle(
                    Finding.Kind.IMPOSSIBLE_ORDER,
                    visit.day(),
                    "visit " + visit.header().visitId() + " on " + visit.day()
                            + " lies before the vehicle's first use on " + vehicle.firstUsed(),
                    "no age is taken from the first use",
                    sources(visit));
        }
        if (leftOn != null && visit.day().isAfter(vehicle.leftFleet())) {
            findings.vehicle(
                    Finding.Kind.IMPOSSIBLE_ORDER,
                    visit.day(),
                    "visit " + visit.header().visitId() + " on " + visit.day() + " lies after the vehicle left on "
                            + vehicle.leftFleet(),
                    "the vehicle is taken to have left on the day of its last visit, " + leftOn
                            + "; if it came back, take the day of leaving out of the register",
                    sources(visit));
        }
    }

    private void checkOdometer(List<Visit> visits) {
        Visit before = null;
        for (Visit visit : visits) {
            Double km = visit.header().odometerKm();
            if (km == null) {
                continue;
            }
            if (before != null && km < before.header().odometerKm() - ROUNDING_KM) {
                findings.vehicle(
                        Finding.Kind.ODOMETER_BACK,
                        visit.day(),
                        String.format(
                                Locale.ROOT,
                                "the odometer shows %.0f km after %.0f km on %s",
                                km,
                                before.header().odometerKm(),
                                before.day()),
                        "ages go by the calendar, so nothing rests on it",
                        List.of(source(before), source(visit)).stream()
                                .flatMap(List::stream)
                                .toList());
            }
            before = visit;
        }
    }

    private static List<Source> source(Visit visit) {
        return visit.rows().stream().limit(1).map(LoggedWheel::source).toList();
    }

    private static List<Source> sources(Visit visit) {
        return visit.rows().stream().map(LoggedWheel::source).toList();
    }
}
