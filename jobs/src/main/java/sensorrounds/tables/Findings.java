package sensorrounds.tables;

import static sensorrounds.tables.Column.day;
import static sensorrounds.tables.Column.place;
import static sensorrounds.tables.Column.text;
import static sensorrounds.tables.Column.word;

import java.util.List;
import java.util.stream.Collectors;
import sensorrounds.history.Finding;
import sensorrounds.visit.Source;

/** Stored table of contradictions found in the logs. */
public final class Findings {
    public static final Table<Finding> TABLE = new Table<>(
            "findings",
            "Contradictions in the logs, where they stand, what was made of them, and what would settle them.",
            List.of(
                    text("vehicle_id", "Vehicle.", Finding::vehicleId),
                    day("day", "Day of the visit that shows it; null when it concerns no one visit.", Finding::day),
                    word("kind", "Kind of contradiction.", Finding::kind),
                    text("sensor_id", "Sensor; null when it concerns the vehicle.", Finding::sensorId),
                    place("position", "Place; null when it concerns no one place.", Finding::position),
                    text(
                            "wheel_set",
                            "Wheel set of that place; null with one set, or when it concerns no one place.",
                            Finding::wheelSet),
                    text("what", "What was found.", Finding::what),
                    text("done", "What was made of it.", Finding::done),
                    text("settle", "What would settle it at the next stop, or put it right.", Finding::settle),
                    text(
                            "sources",
                            "Rows that show it, file:line, separated by blanks.",
                            f -> f.sources().stream().map(Source::toString).collect(Collectors.joining(" ")))));

    private Findings() {}
}
