package sensorrounds.tables;

import static sensorrounds.tables.Column.day;
import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.place;
import static sensorrounds.tables.Column.text;
import static sensorrounds.tables.Column.word;

import java.util.List;
import sensorrounds.condition.WatchEntry;

/** Stored table of sensors that show a sign of weakness. */
public final class WatchList {
    public static final Table<WatchEntry> TABLE = new Table<>(
            "watch_list",
            "Sensors that still work and show a sign of weakness, and what would settle it.",
            List.of(
                    text("vehicle_id", "Vehicle.", WatchEntry::vehicleId),
                    text("depot", "Depot; null when not known.", WatchEntry::depot),
                    place("position", "Place.", WatchEntry::position),
                    text("wheel_set", "Wheel set; null for a vehicle with one set.", WatchEntry::wheelSet),
                    text("sensor_id", "Sensor.", WatchEntry::sensorId),
                    text("part", "Part number; null when not known.", WatchEntry::part),
                    word("sign", "Sign of weakness.", WatchEntry::sign),
                    day("since", "First day of the sign.", WatchEntry::since),
                    number(
                            "probability",
                            "Posterior probability of slow waking; null for other signs.",
                            WatchEntry::probability),
                    text("reason", "The sign in words.", WatchEntry::reason),
                    text("settled_by", "What would move the sensor off the list.", WatchEntry::settledBy)));

    private WatchList() {}
}
