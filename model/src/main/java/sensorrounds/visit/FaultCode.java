package sensorrounds.visit;

import java.io.Serializable;

/**
 * A fault code read from the vehicle.
 *
 * @param code in the form of SAE J2012 / ISO 15031-6, upper case
 * @param state null when the log does not say
 * @param position null when the code names no wheel
 */
public record FaultCode(String code, State state, WheelPosition position) implements Serializable {
    /** State of the code when it was read. */
    public enum State {
        CURRENT,
        STORED,
        CLEARED
    }
}
