package sensorrounds.outlook;

import java.io.Serializable;
import java.time.LocalDate;
import sensorrounds.history.OriginBasis;
import sensorrounds.visit.WheelPosition;

/**
 * A sensor in service as of a day: where it sits, how old it is, and how it last answered.
 *
 * @param depot null when not known, as {@code vehicleClass}, {@code wheelSet} and {@code part}
 * @param ageDays age as of that day; null when its origin is unknown, and then the probabilities rest on the vehicle's
 *     class as a whole
 * @param lastReport state at its last reading
 * @param lastReadOn day of that reading
 */
public record SensorInService(
        String vehicleId,
        String depot,
        String vehicleClass,
        WheelPosition position,
        String wheelSet,
        String sensorId,
        String lifeId,
        String part,
        Integer ageDays,
        OriginBasis basis,
        LastReport lastReport,
        LocalDate lastReadOn)
        implements Serializable {}
