package sensorrounds.condition;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import sensorrounds.history.LifeReading;
import sensorrounds.history.SensorLife;
import sensorrounds.outlook.LastReport;
import sensorrounds.visit.ReadOutcome;

/**
 * State of a sensor at its last reading up to a day, from nothing later than that day: what an outlook made on that day
 * could have known (landmarking, van Houwelingen 2007, Scand. J. Statist. 34:70). Silence comes before a low battery,
 * and a low battery before slow waking.
 */
public final class LastReports {
    private LastReports() {}

    /** As {@link #of(SensorLife, Set, WakeModel, ConditionSettings, LocalDate)} with no visit left out. */
    public static LastReport of(SensorLife life, WakeModel model, ConditionSettings settings, LocalDate asOf) {
        return of(life, Set.of(), model, settings, asOf);
    }

    /**
     * @param unheard days at which the reader heard nothing at all, see {@link UnheardVisits}
     * @param asOf last day whose readings count
     * @return the state; SOUND for a sensor not read by then, since nothing speaks against it
     */
    public static LastReport of(
            SensorLife life, Set<LocalDate> unheard, WakeModel model, ConditionSettings settings, LocalDate asOf) {
        if (lastTried(life, unheard, asOf)
                .map(r -> r.outcome() == ReadOutcome.NO_ANSWER)
                .orElse(false)) {
            return LastReport.SILENT_ONCE;
        }
        if (BatteryReports.last(life, asOf)
                .map(r -> r.battery().isLow(settings.battery()))
                .orElse(false)) {
            return LastReport.LOW_BATTERY;
        }
        List<LifeReading> counted = SlowWaking.countedReadings(life, settings, asOf, unheard);
        return SlowWaking.of(counted, model, settings).probabilitySlow() >= settings.watchProbability()
                ? LastReport.SLOW_TO_WAKE
                : LastReport.SOUND;
    }

    /** The newest reading at which the sensor was tried by a reader that heard anything. */
    static Optional<LifeReading> lastTried(SensorLife life, Set<LocalDate> unheard, LocalDate asOf) {
        for (int i = life.readings().size() - 1; i >= 0; i--) {
            LifeReading r = life.readings().get(i);
            if (!r.day().isAfter(asOf) && SlowWaking.tried(r) && !unheard.contains(r.day())) {
                return Optional.of(r);
            }
        }
        return Optional.empty();
    }
}
