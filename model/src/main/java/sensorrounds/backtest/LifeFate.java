package sensorrounds.backtest;

import java.io.Serializable;
import java.time.LocalDate;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VisitSummary;
import sensorrounds.visit.VisitReason;
import sensorrounds.visit.Warning;

/**
 * Of a life as it is known today, what a fate needs.
 *
 * <p>A failure lies between the last answer and the day it is known. Where a warning brought it to light it lies near the end:
 * the warning comes on soon after a sensor falls silent (49 CFR 571.138 S4.4: within 20 minutes of driving), and most drivers
 * come within weeks. Such a failure is taken to lie in the last {@value #WARNED_DAYS} days; common practice, no source.
 *
 * @param continues key of its life on the vehicle it came from; null when it was on none before
 * @param workedOn last day it is known, or by a warning taken, to have worked; null when there is none
 * @param failedBy first day it is known failed; null unless it failed
 */
public record LifeFate(String lifeId, String continues, LocalDate workedOn, LocalDate failedBy, LifeEnd end)
        implements Serializable {
    /** Days before a failure came out by a warning, in which it lies. */
    static final int WARNED_DAYS = 30;

    /** @param life one of the history's */
    public static LifeFate of(VehicleHistory history, SensorLife life) {
        LocalDate worked = life.lastAnswered() == null ? life.fittedOn() : life.lastAnswered();
        LocalDate failedBy = life.firstKnownFailed();
        if (worked != null && failedBy != null && byWarning(history, failedBy)) {
            LocalDate before = failedBy.minusDays(WARNED_DAYS);
            worked = before.isAfter(worked) ? before : worked;
        }
        return new LifeFate(life.lifeId(), life.continues(), worked, failedBy, life.end());
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
