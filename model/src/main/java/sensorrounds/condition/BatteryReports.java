package sensorrounds.condition;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import sensorrounds.history.LifeReading;
import sensorrounds.history.SensorLife;

/** What the battery reports of one sensor come to. A blank field is no report, never OK. */
public final class BatteryReports {
    private BatteryReports() {}

    /** Readings with a battery report up to and including {@code asOf}, oldest first. */
    public static List<LifeReading> upTo(SensorLife life, LocalDate asOf) {
        return life.readings().stream()
                .filter(r -> r.battery() != null && !r.day().isAfter(asOf))
                .toList();
    }

    /** The newest reading with a battery report. */
    public static Optional<LifeReading> last(SensorLife life, LocalDate asOf) {
        List<LifeReading> reports = upTo(life, asOf);
        return reports.isEmpty() ? Optional.empty() : Optional.of(reports.get(reports.size() - 1));
    }

    /**
     * The low report that still stands. An OK report takes a low one back only when it was not taken in clearly warmer
     * air: cold raises a cell's inner resistance, so that low in winter and OK in summer do not contradict each other
     * (Linden's Handbook of Batteries; from memory).
     */
    public static Optional<LifeReading> standingLow(SensorLife life, ConditionSettings settings, LocalDate asOf) {
        LifeReading low = null;
        for (LifeReading r : upTo(life, asOf)) {
            if (r.battery().isLow(settings.battery())) {
                low = r;
            } else if (low != null && !clearlyWarmer(r, low, settings)) {
                low = null;
            }
        }
        return Optional.ofNullable(low);
    }

    private static boolean clearlyWarmer(LifeReading later, LifeReading low, ConditionSettings settings) {
        return later.ambientCelsius() != null
                && low.ambientCelsius() != null
                && later.ambientCelsius() >= low.ambientCelsius() + settings.warmerCelsius();
    }
}
