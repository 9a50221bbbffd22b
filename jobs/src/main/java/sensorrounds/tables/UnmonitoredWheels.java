package sensorrounds.tables;

import static sensorrounds.tables.Column.day;
import static sensorrounds.tables.Column.text;

import java.util.List;
import sensorrounds.outlook.UnmonitoredWheel;

/** Stored table of wheels without low-pressure warning. */
public final class UnmonitoredWheels {
    public static final Table<UnmonitoredWheel> TABLE = new Table<>(
            "unmonitored_wheels",
            "Wheels without low-pressure warning: the sensor is known dead, or a plain valve is fitted.",
            List.of(
                    text("vehicle_id", "Vehicle.", UnmonitoredWheel::vehicleId),
                    text("depot", "Depot; null when not known.", UnmonitoredWheel::depot),
                    text(
                            "position",
                            "Place.",
                            u -> u.position() == null ? null : u.position().code()),
                    text("wheel_set", "Wheel set; null for a vehicle with one set.", UnmonitoredWheel::wheelSet),
                    text("sensor_id", "Sensor; null with a plain valve.", UnmonitoredWheel::sensorId),
                    day("since", "Day from which it is known.", UnmonitoredWheel::since),
                    text("reason", "Why.", UnmonitoredWheel::reason)));

    private UnmonitoredWheels() {}
}
