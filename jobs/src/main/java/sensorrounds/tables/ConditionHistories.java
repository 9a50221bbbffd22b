package sensorrounds.tables;

import static sensorrounds.tables.Column.day;
import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.place;
import static sensorrounds.tables.Column.text;

import java.util.List;
import sensorrounds.condition.ConditionMoment;

/** Stored table of the condition of sensors over time. */
public final class ConditionHistories {
    public static final Table<ConditionMoment> TABLE = new Table<>(
            "condition_history",
            "Condition over time, after each read, of sensors in service that are weak or dead with a chance of 5 % or more "
                    + "now, and of all sensors on vehicles whose warning recurs.",
            List.of(
                    text("vehicle_id", "Vehicle.", ConditionMoment::vehicleId),
                    place("position", "Place.", ConditionMoment::position),
                    text("wheel_set", "Wheel set; null for a vehicle with one set.", ConditionMoment::wheelSet),
                    text("sensor_id", "Sensor.", ConditionMoment::sensorId),
                    day("day", "Day of the read.", ConditionMoment::day),
                    number(
                            "p_weak",
                            "Probability of being weak then, still answering, from all reads up to that day.",
                            ConditionMoment::pWeak),
                    number("p_dead", "Probability of being dead then.", ConditionMoment::pDead)));

    private ConditionHistories() {}
}
