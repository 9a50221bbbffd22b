package sensorrounds.review;

import sensorrounds.fleet.Vehicle;
import sensorrounds.history.SensorLife;

/** Part of a sensor, from its readings or, for a vehicle's first sensors, from the register. */
final class CohortParts {
    private CohortParts() {}

    /** @return null when not known */
    static String of(Vehicle vehicle, SensorLife life) {
        boolean original = life.basis().isOriginal();
        return life.part() == null && original ? vehicle.originalPart() : life.part();
    }
}
