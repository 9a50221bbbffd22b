package sensorrounds.condition;

import java.io.Serializable;
import java.time.LocalDate;
import sensorrounds.visit.WheelPosition;

/**
 * A sensor that still works and shows a sign of weakness.
 *
 * @param sign the sign
 * @param since first day of the sign
 * @param probability posterior probability of slow waking, or NaN for other signs
 * @param reason the sign in words, with its figures
 * @param settledBy what reading would move the sensor off the list
 */
public record WatchEntry(
        String vehicleId,
        String depot,
        WheelPosition position,
        String wheelSet,
        String sensorId,
        String part,
        Sign sign,
        LocalDate since,
        double probability,
        String reason,
        String settledBy)
        implements Serializable {
    /** Sign of weakness. */
    public enum Sign {
        LOW_BATTERY,
        SLOW_TO_WAKE,
        SILENT_ONCE
    }
}
