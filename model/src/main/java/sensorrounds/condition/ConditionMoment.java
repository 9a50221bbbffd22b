package sensorrounds.condition;

import java.io.Serializable;
import java.time.LocalDate;
import sensorrounds.visit.WheelPosition;

/**
 * What was to be thought of a sensor's condition after one of its reads, from that read and all before it.
 *
 * @param wheelSet null for a vehicle with one set
 * @param pWeak probability of being weak, still answering
 * @param pDead probability of being dead
 */
public record ConditionMoment(
        String vehicleId,
        WheelPosition position,
        String wheelSet,
        String sensorId,
        LocalDate day,
        double pWeak,
        double pDead)
        implements Serializable {}
