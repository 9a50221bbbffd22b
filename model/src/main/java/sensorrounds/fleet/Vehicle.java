package sensorrounds.fleet;

import java.io.Serializable;
import java.time.LocalDate;

/**
 * One line of the fleet register. Every field but the key may be null: not known.
 *
 * @param vehicleClass the operator's own word for the class, a cohort of the survival curves
 * @param firstUsed first day on the road
 * @param system never null; UNKNOWN when the register does not say
 * @param originalPart part number of the sensors fitted when new
 * @param annualKm expected distance a year, kilometres
 * @param nextPlannedVisit next service or tyre work already booked
 * @param leftFleet day the vehicle left
 */
public record Vehicle(
        String vehicleId,
        String vehicleClass,
        String modelGroup,
        LocalDate firstUsed,
        String depot,
        String drivingSide,
        MonitoringSystem system,
        AxleLayout axles,
        String originalPart,
        Double annualKm,
        LocalDate nextPlannedVisit,
        LocalDate leftFleet)
        implements Serializable {

    /** A vehicle met in the logs that the register does not know. */
    public static Vehicle unregistered(String vehicleId) {
        return new Vehicle(
                vehicleId, null, null, null, null, null, MonitoringSystem.UNKNOWN, null, null, null, null, null);
    }
}
