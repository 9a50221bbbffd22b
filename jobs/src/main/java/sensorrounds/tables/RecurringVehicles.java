package sensorrounds.tables;

import static sensorrounds.tables.Column.day;
import static sensorrounds.tables.Column.flag;
import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.text;
import static sensorrounds.tables.Column.whole;
import static sensorrounds.tables.Column.word;

import java.util.List;
import sensorrounds.recurrence.RecurringVehicle;

/** Stored table of vehicles with system warnings. */
public final class RecurringVehicles {
    public static final Table<RecurringVehicle> TABLE = new Table<>(
            "recurring_vehicles",
            "Vehicles that had system warnings, how they recur, and what to look at.",
            List.of(
                    text("vehicle_id", "Vehicle.", RecurringVehicle::vehicleId),
                    text("depot", "Depot; null when not known.", RecurringVehicle::depot),
                    text("vehicle_class", "Class; null when not known.", RecurringVehicle::vehicleClass),
                    word("pattern", "Sort of recurrence.", RecurringVehicle::pattern),
                    whole("episodes", "System-warning episodes.", RecurringVehicle::episodes),
                    whole(
                            "returns_after_repair",
                            "Times the warning was there again after work.",
                            RecurringVehicle::returnsAfterRepair),
                    number("exposure_years", "Years under observation.", RecurringVehicle::exposureYears),
                    number(
                            "exposure_km",
                            "Distance driven from the first odometer reading to the last; null where the odometer does not"
                                    + " tell.",
                            v -> v.driven() == null ? null : v.driven().km()),
                    number(
                            "rate_per_10000_km",
                            "Episodes and returns seen between these readings, by 10,000 km; null with exposure_km.",
                            v -> v.driven() == null ? null : v.driven().per10000Km()),
                    number("rate_per_year", "Episodes and returns a year, as counted.", RecurringVehicle::ratePerYear),
                    number(
                            "shrunk_rate_per_year",
                            "The rate shrunk to its peers.",
                            RecurringVehicle::shrunkRatePerYear),
                    number(
                            "probability_above_peers",
                            "Posterior probability that its rate is above the peers' mean.",
                            RecurringVehicle::probabilityAbovePeers),
                    day("last_seen", "Last day with the warning.", RecurringVehicle::lastSeen),
                    flag(
                            "follow_up_open",
                            "True when the last work is not yet proven by a drive.",
                            RecurringVehicle::followUpOpen),
                    day(
                            "held_since",
                            "Day of the last work, when it replaced a sensor, was proven, and the warning was not seen again;"
                                    + " null else.",
                            RecurringVehicle::heldSince),
                    text(
                            "first_suspect",
                            "Place of the first suspect, or 'not a sensor'; null when there is none.",
                            RecurringVehicles::firstSuspect),
                    number(
                            "first_suspect_probability",
                            "Its posterior probability; null when there is none.",
                            v -> v.suspects().isEmpty()
                                    ? null
                                    : v.suspects().get(0).probability()),
                    text("story", "In words.", RecurringVehicle::story)));

    private RecurringVehicles() {}

    private static String firstSuspect(RecurringVehicle v) {
        if (v.suspects().isEmpty()) {
            return null;
        }
        var s = v.suspects().get(0);
        return s.isSensor() ? s.position().code() : "not a sensor";
    }
}
