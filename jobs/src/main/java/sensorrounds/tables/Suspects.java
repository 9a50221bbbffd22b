package sensorrounds.tables;

import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.place;
import static sensorrounds.tables.Column.text;
import static sensorrounds.tables.Column.whole;

import java.io.Serializable;
import java.util.List;
import sensorrounds.recurrence.RecurringVehicle;
import sensorrounds.recurrence.Suspect;

/** Stored table of suspects per recurring vehicle. */
public final class Suspects {
    /** One suspect with the vehicle it belongs to. */
    public record Line(String vehicleId, Suspect suspect) implements Serializable {}

    public static final Table<Line> TABLE = new Table<>(
            "suspects",
            "Per recurring vehicle, what may be behind it: each wheel's sensor, or not a sensor, with the reasons.",
            List.of(
                    text("vehicle_id", "Vehicle.", Line::vehicleId),
                    whole(
                            "suspect_order",
                            "1 for the most probable.",
                            l -> l.suspect().order()),
                    place(
                            "position",
                            "Place; null when no one place is meant.",
                            l -> l.suspect().position()),
                    text(
                            "sensor_id",
                            "Sensor; null for 'not a sensor'.",
                            l -> l.suspect().sensorId()),
                    number(
                            "probability",
                            "Posterior probability; a vehicle's add up to one.",
                            l -> l.suspect().probability()),
                    text(
                            "reasons",
                            "What speaks for or against it, strongest first.",
                            l -> String.join("; ", l.suspect().reasons())),
                    text("next_step", "What would settle it.", l -> l.suspect().nextStep())));

    private Suspects() {}

    /** All suspects of a vehicle. */
    public static List<Line> of(RecurringVehicle v) {
        return v.suspects().stream().map(s -> new Line(v.vehicleId(), s)).toList();
    }
}
