package sensorrounds.tables;

import static sensorrounds.tables.Column.day;
import static sensorrounds.tables.Column.place;
import static sensorrounds.tables.Column.text;
import static sensorrounds.tables.Column.word;

import java.util.List;
import sensorrounds.outlook.UnmonitoredWheel;

/** Stored table of wheels without low-pressure warning. */
public final class UnmonitoredWheels {
    public static final Table<UnmonitoredWheel> TABLE = new Table<>(
            "unmonitored_wheels",
            "Wheels without low-pressure warning, known or probable, and vehicles whose own system warning was on.",
            List.of(
                    word(
                            "certainty",
                            "KNOWN (dead, or a plain valve), PROBABLE (silent when tried last, or never heard) or SYSTEM "
                                    + "(the system's warning was on when seen last).",
                            UnmonitoredWheel::certainty),
                    text("vehicle_id", "Vehicle.", UnmonitoredWheel::vehicleId),
                    text("depot", "Depot; null when not known.", UnmonitoredWheel::depot),
                    place("position", "Place; null when the whole vehicle is meant.", UnmonitoredWheel::position),
                    text("wheel_set", "Wheel set; null for a vehicle with one set.", UnmonitoredWheel::wheelSet),
                    text(
                            "sensor_id",
                            "Sensor; null with a plain valve, one never heard, or the whole vehicle.",
                            UnmonitoredWheel::sensorId),
                    day("since", "Day from which it is known, or of the first sign.", UnmonitoredWheel::since),
                    text("reason", "Why.", UnmonitoredWheel::reason)));

    private UnmonitoredWheels() {}
}
