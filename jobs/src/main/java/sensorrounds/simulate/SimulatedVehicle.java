package sensorrounds.simulate;

import java.util.List;
import sensorrounds.fleet.Vehicle;

/**
 * A vehicle with its visits and the truth about its sensors.
 *
 * @param story null for an ordinary vehicle
 * @param lifeFactor factor its batteries share
 */
record SimulatedVehicle(
        Vehicle register, List<SimulatedVisit> visits, List<FittedSensor> sensors, Story story, double lifeFactor) {
    SimulatedVehicle {
        visits = List.copyOf(visits);
        sensors = List.copyOf(sensors);
    }

    /** A sensor and the place it was fitted to. */
    record FittedSensor(SimulatedSensor sensor, String position, String wheelSet) {}
}
