package sensorrounds.replacement;

import java.time.LocalDate;
import java.util.List;
import sensorrounds.outlook.SensorOutlook;
import sensorrounds.survival.LifeLaw;
import sensorrounds.visit.WheelPosition;

/**
 * A vehicle whose sensors are to be decided on together.
 *
 * @param nextStop day of the next stop booked, on or after the as-of day; null when none is
 * @param deadOnTheRoad places on the road whose sensor is known dead or missing: the vehicle has to come in for them
 */
public record VehicleCase(
        List<Sensor> sensors, LocalDate asOf, LocalDate nextStop, Sight sight, List<WheelPosition> deadOnTheRoad) {
    /** How well the vehicle is known. */
    public enum Sight {
        KNOWN,
        /** Not seen for longer than the settings allow. */
        OUT_OF_SIGHT,
        NOT_IN_REGISTER
    }

    /**
     * One sensor in service.
     *
     * @param law law of the outlook's cohort; null when none was fitted, and then nothing is reckoned
     * @param price price of the sensor to fit
     */
    public record Sensor(SensorOutlook outlook, LifeLaw law, double price, Mounting mounting, Place place) {
        boolean hasChances() {
            return law != null && !Double.isNaN(outlook.pHorizon());
        }
    }

    /** What is known of the place. */
    public enum Place {
        ORDINARY,
        /** Sensors fall silent there one after the other. */
        KEEPS_FAILING
    }

    public VehicleCase {
        sensors = List.copyOf(sensors);
        deadOnTheRoad = List.copyOf(deadOnTheRoad);
    }
}
