package sensorrounds.landmark;

import java.io.Serializable;
import sensorrounds.visit.BatteryReport;

/**
 * What counts as a landmark.
 *
 * @param withinDays a report at most this old stands for the landmark age; from 1 up
 * @param coldBelowCelsius air colder than this may explain a low report, °C
 * @param battery limits under which a battery figure counts as low
 */
public record LandmarkSettings(int withinDays, double coldBelowCelsius, BatteryReport.LowLimits battery)
        implements Serializable {
    public LandmarkSettings {
        if (!(withinDays > 0 && Double.isFinite(coldBelowCelsius))) {
            throw new IllegalArgumentException("a landmark needs a window from 1 day up and a finite temperature, not "
                    + withinDays + " days and " + coldBelowCelsius);
        }
    }

    /** A year's window; 0 °C (common practice, no source). */
    public static LandmarkSettings with(BatteryReport.LowLimits battery) {
        return new LandmarkSettings(365, 0, battery);
    }
}
