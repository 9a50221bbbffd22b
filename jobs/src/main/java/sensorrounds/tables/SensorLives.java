package sensorrounds.tables;

import static sensorrounds.tables.Column.count;
import static sensorrounds.tables.Column.day;
import static sensorrounds.tables.Column.place;
import static sensorrounds.tables.Column.text;
import static sensorrounds.tables.Column.whole;
import static sensorrounds.tables.Column.word;

import java.util.List;
import sensorrounds.history.SensorLife;

/** Stored table of sensor lives. */
public final class SensorLives {
    public static final Table<SensorLife> TABLE = new Table<>(
            "sensor_lives",
            "Every sensor's life on a vehicle, with the interval in which it failed; what the survival sample is made of.",
            List.of(
                    text("life_id", "Key of the life: vehicle/sensor/generation.", SensorLife::lifeId),
                    text("vehicle_id", "Vehicle.", SensorLife::vehicleId),
                    text("sensor_id", "ID the sensor sends, hexadecimal.", SensorLife::sensorId),
                    whole("generation", "1, or more when a new sensor was given the old ID.", SensorLife::generation),
                    text("part", "Part number of the sensor; null when not known.", SensorLife::part),
                    place("position", "Place where it was last read.", SensorLife::position),
                    text("wheel_set", "Wheel set; null for a vehicle with one set.", SensorLife::wheelSet),
                    day("fitted_on", "Day of fitting; null when not known.", SensorLife::fittedOn),
                    word("basis", "On what the fitting day rests.", SensorLife::basis),
                    day(
                            "fitted_not_before",
                            "Earliest day of its fitting, if it was new then; null when nothing bounds it.",
                            SensorLife::fittedNotBefore),
                    text(
                            "continues",
                            "Key of its life on the vehicle it came from; null when it was on none before.",
                            SensorLife::continues),
                    day(
                            "first_answered",
                            "First answer under observation; null when it never answered.",
                            SensorLife::firstAnswered),
                    day("last_answered", "Last answer; null when it never answered.", SensorLife::lastAnswered),
                    day(
                            "first_known_failed",
                            "Day from which it is known failed; null unless it failed.",
                            SensorLife::firstKnownFailed),
                    day(
                            "ended_on",
                            "Day it was taken off or left; null while it is on the vehicle.",
                            SensorLife::endedOn),
                    word("life_end", "How the life ended; only FAILED is a failure.", SensorLife::end),
                    word("cause", "Cause of the failure; null unless it failed.", SensorLife::cause),
                    day(
                            "last_sound",
                            "Last sound battery report before the first low one; null when there was none.",
                            SensorLife::lastSound),
                    day("first_weak", "First low battery report; null when there was none.", SensorLife::firstWeak),
                    day(
                            "recovered",
                            "First sound battery report since the last low one; null when there was none.",
                            SensorLife::recovered),
                    whole(
                            "age_at_entry",
                            "Age in days when it came under observation; null when excluded.",
                            l -> l.lifetime() == null ? null : l.lifetime().entry()),
                    whole(
                            "age_last_known_good",
                            "Age in days when it was last known good; null when excluded.",
                            l -> l.lifetime() == null ? null : l.lifetime().lower()),
                    whole(
                            "age_first_known_failed",
                            "Age in days from which it is known failed; null when it did not fail or is excluded.",
                            l -> l.lifetime() == null || !l.lifetime().failed()
                                    ? null
                                    : l.lifetime().upper()),
                    text("exclusion", "Why it is not in the survival sample; null when it is.", SensorLife::exclusion),
                    count("readings", "Attempts to read it.", l ->
                            (long) l.readings().size())));

    private SensorLives() {}
}
