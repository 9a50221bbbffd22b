package sensorrounds.outlook;

import java.io.Serializable;
import java.time.LocalDate;
import sensorrounds.visit.WheelPosition;

/**
 * A wheel without low-pressure warning: its sensor is known dead, or a plain valve is fitted.
 *
 * @param sensorId null with a plain valve
 * @param since day from which it is known
 * @param reason why, in words
 */
public record UnmonitoredWheel(
        String vehicleId,
        String depot,
        WheelPosition position,
        String wheelSet,
        String sensorId,
        LocalDate since,
        String reason)
        implements Serializable {}
