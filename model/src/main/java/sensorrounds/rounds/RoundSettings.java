package sensorrounds.rounds;

import java.io.Serializable;
import java.util.Map;

/**
 * What a depot can do.
 *
 * @param weeks weeks planned, from the day after the as-of day on, at least 1
 * @param weeklyMinutes minutes of work that a depot has for planned stops in a week
 * @param depotMinutes the same for depots that have more or fewer, by name
 * @param stopMinutes minutes of one stop beside the work on wheels: going there, reading, relearn, test drive
 * @param wheelMinutes minutes of work on one wheel
 */
public record RoundSettings(
        int weeks, double weeklyMinutes, Map<String, Double> depotMinutes, double stopMinutes, double wheelMinutes)
        implements Serializable {
    public RoundSettings {
        if (!(weeks >= 1 && weeklyMinutes >= 0 && stopMinutes > 0 && wheelMinutes >= 0)) {
            throw new IllegalArgumentException("rounds settings: weeks " + weeks + ", minutes a week " + weeklyMinutes
                    + ", minutes a stop " + stopMinutes + ", minutes a wheel " + wheelMinutes
                    + "; needs at least 1 week, minutes from 0, and a stop over 0");
        }
        depotMinutes = Map.copyOf(depotMinutes);
        depotMinutes.forEach((depot, minutes) -> {
            if (!(minutes >= 0)) {
                throw new IllegalArgumentException(
                        "rounds settings: " + minutes + " minutes a week of depot " + depot + "; needs minutes from 0");
            }
        });
    }

    /** The same minutes for every depot. */
    public RoundSettings(int weeks, double weeklyMinutes, double stopMinutes, double wheelMinutes) {
        this(weeks, weeklyMinutes, Map.of(), stopMinutes, wheelMinutes);
    }

    /** Minutes that a depot has in a week; {@code depot} is null for vehicles without one. */
    public double minutesOf(String depot) {
        return depot == null ? weeklyMinutes : depotMinutes.getOrDefault(depot, weeklyMinutes);
    }

    /** Four weeks of one van with two days a week for it, 45 minutes a stop and 20 a wheel: common practice, no source. */
    public static RoundSettings defaults() {
        return new RoundSettings(4, 960, 45, 20);
    }
}
