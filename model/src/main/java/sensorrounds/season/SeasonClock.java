package sensorrounds.season;

import java.io.Serializable;
import java.time.LocalDate;

/**
 * Time as it counts for a hazard that the cold multiplies by one factor at every age: a cold day is as long as {@code
 * factor} other days. A factor of an external covariate common to all ages is a change of clock, so that a cumulative hazard
 * over a stretch of days is rate times operational length (Cox and Oakes 1984, Analysis of Survival Data, 5.3 and 8.1).
 *
 * @param factor hazard in cold months for one in others; above 0, and 1 is the calendar itself
 */
public record SeasonClock(ColdMonths cold, double factor) implements Serializable {
    public SeasonClock {
        if (!(factor > 0 && factor < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("a season's factor must be finite and above 0, not " + factor);
        }
    }

    /** Operational days after one day up to and with another, which is not earlier. */
    public double length(LocalDate after, LocalDate to) {
        long coldDays = cold.daysBetween(after, to);
        return ColdMonths.allDays(after, to) - coldDays + factor * coldDays;
    }

    /** Derivative of {@link #length} in the log of the factor. */
    public double slope(LocalDate after, LocalDate to) {
        return factor * cold.daysBetween(after, to);
    }
}
