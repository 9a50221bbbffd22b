package sensorrounds.history;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sensorrounds.fleet.Vehicle;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.Source;
import sensorrounds.visit.Visit;
import sensorrounds.visit.WheelPosition;
import sensorrounds.visit.WheelReading;

/**
 * Takes out of a vehicle's visits what was written down under it and is another's: wheels on axles it does not have, as when a
 * trailer is logged with its tractor, and answers of sensors that sit on another vehicle. The visit itself stays.
 */
public final class ForeignWheels {
    private final Vehicle vehicle;
    private final Map<String, String> strays;
    private final FindingLog findings;

    ForeignWheels(Vehicle vehicle, VehicleMoves moves, FindingLog findings) {
        this.vehicle = vehicle;
        this.strays = moves.strays();
        this.findings = findings;
    }

    /** False for a place on an axle that the vehicle does not have by its register line; a spare may be anywhere. */
    public static boolean isPlaceOf(Vehicle vehicle, WheelPosition position) {
        return vehicle == null
                || vehicle.axles() == null
                || position.isSpare()
                || position.axle() <= vehicle.axles().axles().size();
    }

    /**
     * @param visits of this vehicle
     * @return the visits in the same order, each with the rows it had; rows of foreign wheels without their wheel
     */
    public static List<Visit> takenOut(Vehicle vehicle, VehicleMoves moves, List<Visit> visits) {
        return new ForeignWheels(vehicle, moves, new FindingLog(vehicle.vehicleId())).takenOut(visits);
    }

    /** As above, told to the findings. */
    List<Visit> takenOut(List<Visit> visits) {
        return visits.stream().map(this::own).toList();
    }

    private Visit own(Visit visit) {
        for (LoggedWheel row : visit.rows()) {
            if (row.wheel() != null && (!isPlaceOf(vehicle, row.wheel().position()) || isStray(row.wheel()))) {
                return withoutForeign(visit);
            }
        }
        return visit;
    }

    private Visit withoutForeign(Visit visit) {
        List<LoggedWheel> beyond = new ArrayList<>();
        Map<String, List<LoggedWheel>> anothers = new TreeMap<>();
        List<LoggedWheel> rows = new ArrayList<>();
        for (LoggedWheel row : visit.rows()) {
            WheelReading wheel = row.wheel();
            if (wheel != null && !isPlaceOf(vehicle, wheel.position())) {
                beyond.add(row);
                rows.add(new LoggedWheel(row.visit(), null, row.source()));
            } else if (wheel != null && isStray(wheel)) {
                anothers.computeIfAbsent(strays.get(wheel.sensorId()), v -> new ArrayList<>())
                        .add(row);
                rows.add(new LoggedWheel(row.visit(), withoutAnswer(wheel), row.source()));
            } else {
                rows.add(row);
            }
        }
        if (!beyond.isEmpty()) {
            noteBeyond(visit, beyond);
        }
        anothers.forEach((home, of) -> noteStrays(visit, home, of));
        return new Visit(visit.header(), rows);
    }

    private boolean isStray(WheelReading wheel) {
        return wheel.read() == ReadOutcome.OK && wheel.sensorId() != null && strays.containsKey(wheel.sensorId());
    }

    /** What was done to the wheel was done to this vehicle's; what answered was not its sensor. */
    private static WheelReading withoutAnswer(WheelReading w) {
        return new WheelReading(
                w.position(),
                w.positionRaw(),
                null,
                ReadOutcome.NOT_TRIED,
                null,
                null,
                w.gaugePressureKpa(),
                w.hot(),
                null,
                null,
                null,
                w.work(),
                w.workReason(),
                w.newSensorId(),
                w.newPart(),
                w.cloned(),
                w.tyreDate());
    }

    private void noteBeyond(Visit visit, List<LoggedWheel> rows) {
        int axles = vehicle.axles().axles().size();
        findings.vehicle(
                Finding.Kind.WHEEL_OF_ANOTHER_VEHICLE,
                visit.day(),
                "visit " + visit.header().visitId() + " has " + wheels(rows) + " at " + places(rows)
                        + ", and by the fleet register the vehicle has " + (axles == 1 ? "1 axle" : axles + " axles"),
                "not counted as this vehicle's",
                sources(rows));
    }

    private void noteStrays(Visit visit, String home, List<LoggedWheel> rows) {
        boolean one = rows.size() == 1;
        findings.vehicle(
                Finding.Kind.WHEEL_OF_ANOTHER_VEHICLE,
                visit.day(),
                "at visit " + visit.header().visitId() + (one ? " sensor " : " sensors ")
                        + rows.stream().map(r -> r.wheel().sensorId()).collect(Collectors.joining(", "))
                        + " answered at "
                        + places(rows) + (one ? " and sits" : " and sit") + " on vehicle " + home
                        + ", which hears " + (one ? "it" : "them") + " before and after",
                (one ? "the answer is" : "the answers are")
                        + " not counted as this vehicle's: a trailer or tractor was written under the other, or a"
                        + " neighbour's wheel answered",
                sources(rows));
    }

    private static String wheels(List<LoggedWheel> rows) {
        return rows.size() == 1 ? "1 wheel" : rows.size() + " wheels";
    }

    private static String places(List<LoggedWheel> rows) {
        return rows.stream().map(r -> r.wheel().position().code()).collect(Collectors.joining(", "));
    }

    private static List<Source> sources(List<LoggedWheel> rows) {
        return rows.stream().map(LoggedWheel::source).toList();
    }
}
