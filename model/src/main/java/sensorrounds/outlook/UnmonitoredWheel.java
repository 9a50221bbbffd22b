package sensorrounds.outlook;

import java.io.Serializable;
import java.time.LocalDate;
import sensorrounds.visit.WheelPosition;

/**
 * A wheel that has no low-pressure warning, or may have none.
 *
 * @param position null when the whole vehicle is meant
 * @param sensorId null with a plain valve, a sensor never heard, or the whole vehicle
 * @param since day from which it is known, or of the first sign
 * @param reason why, in words
 */
public record UnmonitoredWheel(
        String vehicleId,
        String depot,
        WheelPosition position,
        String wheelSet,
        String sensorId,
        LocalDate since,
        String reason,
        Certainty certainty)
        implements Serializable {
    /** How sure it is, surest first. */
    public enum Certainty {
        /** The sensor is known dead, or none is recorded there: no warning. */
        KNOWN,
        /** The sensor did not answer when it was tried last: dead, or not woken. */
        PROBABLE,
        /** The system's own warning was on when it was seen last: the whole vehicle may be without. */
        SYSTEM
    }
}
