package sensorrounds.backtest;

import java.io.Serializable;
import java.time.LocalDate;
import sensorrounds.history.FailureDays;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;

/**
 * Of a life as it is known today, what a fate needs.
 *
 * @param continues key of its life on the vehicle it came from; null when it was on none before
 * @param workedOn last day it is known, or by a warning taken ({@link FailureDays}), to have worked; null when there is none
 * @param failedBy first day it is known failed; null unless it failed
 */
public record LifeFate(String lifeId, String continues, LocalDate workedOn, LocalDate failedBy, LifeEnd end)
        implements Serializable {
    /** @param life one of the history's */
    public static LifeFate of(VehicleHistory history, SensorLife life) {
        FailureDays days = FailureDays.of(history, life);
        LocalDate worked = life.lastAnswered() == null ? life.fittedOn() : life.lastAnswered();
        return new LifeFate(
                life.lifeId(),
                life.continues(),
                days == null ? worked : days.after(),
                life.firstKnownFailed(),
                life.end());
    }
}
