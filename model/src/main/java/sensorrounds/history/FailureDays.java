package sensorrounds.history;

import java.time.LocalDate;
import sensorrounds.visit.VisitReason;
import sensorrounds.visit.Warning;

/**
 * On which days a sensor may have failed: after {@code after}, on {@code last} at the latest.
 *
 * <p>A failure lies between the last answer and the day it is known. Where a warning brought it to light it lies near the end:
 * the warning comes on soon after a sensor falls silent (49 CFR 571.138 S4.4: within 20 minutes of driving), and most drivers
 * come within weeks. Such a failure is taken to lie in the last {@value #WARNED_DAYS} days; common practice, no source.
 */
public record FailureDays(LocalDate after, LocalDate last) {
    /** Days before a failure came out by a warning, in which it lies. */
    public static final int WARNED_DAYS = 30;

    public FailureDays {
        if (!after.isBefore(last)) {
            throw new IllegalArgumentException("no day lies after " + after + " and not after " + last);
        }
    }

    /**
     * The days of a life that failed; null for one that did not, or of which no good day is known before.
     *
     * @param life one of the history's
     */
    public static FailureDays of(VehicleHistory history, SensorLife life) {
        LocalDate worked = life.lastAnswered() == null ? life.fittedOn() : life.lastAnswered();
        LocalDate last = life.firstKnownFailed();
        if (worked == null || last == null) {
            return null;
        }
        // One that answered on the day it was broken failed on that day.
        LocalDate before = worked.isBefore(last) ? worked : last.minusDays(1);
        LocalDate warned = last.minusDays(WARNED_DAYS);
        return new FailureDays(byWarning(history, last) && warned.isAfter(before) ? warned : before, last);
    }

    /** Number of the days. */
    public long length() {
        return last.toEpochDay() - after.toEpochDay();
    }

    /** A day without a visit is one that a driver named, when the warning came on. */
    private static boolean byWarning(VehicleHistory history, LocalDate day) {
        boolean visited = false;
        for (VisitSummary v : history.visits()) {
            if (v.day().equals(day)) {
                visited = true;
                if (v.reason() == VisitReason.WARNING || v.warning() == Warning.SYSTEM_FAULT) {
                    return true;
                }
            }
        }
        return !visited;
    }
}
