package sensorrounds.recurrence;

import java.io.Serializable;

/**
 * Mean number of system warnings of a vehicle by a time: one step of the mean cumulative function of a class.
 *
 * @param cohort a vehicle class, or {@link PeerRates#ALL}
 * @param days time since the clock began, in days
 * @param atRisk vehicles under observation at that time
 * @param events warnings at that time
 * @param mean warnings of a vehicle up to that time, since the clock began
 * @param standardError of the mean, from how vehicles differ
 * @param lower 95 % limit on the log; NaN before the first warning and where too few vehicles tell how they differ, as {@code upper}
 */
public record WarningCurvePoint(
        Clock clock,
        String cohort,
        int days,
        long atRisk,
        long events,
        double mean,
        double standardError,
        double lower,
        double upper)
        implements Serializable {
    /** From when time counts. */
    public enum Clock {
        /** The vehicle's first visit. */
        SINCE_FIRST_VISIT,
        /** Its first use; vehicles of which it is not known are left out, the others join at the age of their first visit. */
        IN_SERVICE
    }
}
