package sensorrounds.replacement;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import sensorrounds.history.LifeReading;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VisitSummary;
import sensorrounds.visit.WheelPosition;

/** Where a sensor's wheel is, which decides whether its failure stops the vehicle. */
public enum Mounting {
    ON_THE_ROAD,
    /** In a wheel set that is not the one last seen on the vehicle. */
    IN_STORE,
    SPARE;

    /** @param setOnVehicle {@link #setOnVehicle}; null when the vehicle has one set, or none was seen */
    public static Mounting of(WheelPosition position, String wheelSet, String setOnVehicle) {
        if (WheelPosition.SPARE.equals(position)) {
            return SPARE;
        }
        return wheelSet == null || setOnVehicle == null || wheelSet.equals(setOnVehicle) ? ON_THE_ROAD : IN_STORE;
    }

    /** The wheel set read at the newest visit that read any; null when none was ever named. */
    public static String setOnVehicle(VehicleHistory history) {
        List<VisitSummary> visits = history.visits();
        for (int i = visits.size() - 1; i >= 0; i--) {
            String visit = visits.get(i).visitId();
            Set<String> sets = new HashSet<>();
            for (SensorLife life : history.lives()) {
                for (LifeReading r : life.readings()) {
                    if (life.wheelSet() != null && r.visitId().equals(visit)) {
                        sets.add(life.wheelSet());
                    }
                }
            }
            if (!sets.isEmpty()) {
                // Both sets read at one visit: nothing tells which one was left on, so both count as on the road.
                return sets.size() == 1 ? sets.iterator().next() : null;
            }
        }
        return null;
    }
}
