package sensorrounds.history;

import java.io.Serializable;
import sensorrounds.visit.BatteryReport;

/**
 * Thresholds by which histories are rebuilt. All are in the settings file.
 *
 * @param silentVisitsForFailure consecutive silent visits after which a sensor counts as failed; one silent visit is
 *     not a death
 * @param originalIfFirstSeenWithinDays a sensor without a recorded fitting is taken as the vehicle's original one when
 *     the vehicle is first seen at most this many days after its first use
 * @param youngFailureDays sensors that fall silent younger than this, one after another at one place, speak against
 *     the place
 * @param proofDriveMinutes driving that proves a system warning cured: 10 in UN R141, 20 in 49 CFR 571.138
 * @param drivingKmh speed under which a drive does not count: fewer kilometres than it makes in those minutes prove nothing
 *     (common practice, no source: makers ask for 20 to 40 km/h)
 * @param lowPressureShare share of the placard pressure lost at which a low-pressure warning is due, e.g. 0.20
 * @param referenceCelsius temperature placard pressures refer to, °C
 * @param battery limits under which a battery figure counts as low
 */
public record HistorySettings(
        int silentVisitsForFailure,
        int originalIfFirstSeenWithinDays,
        int youngFailureDays,
        double proofDriveMinutes,
        double drivingKmh,
        double lowPressureShare,
        double referenceCelsius,
        BatteryReport.LowLimits battery)
        implements Serializable {
    /** Least distance of a drive that proves a cure, km. */
    double proofDriveKm() {
        return drivingKmh * proofDriveMinutes / 60;
    }

    public static HistorySettings defaults() {
        return new HistorySettings(2, 1461, 365, 20, 20, 0.20, 20, new BatteryReport.LowLimits(20, 2.5, 6));
    }
}
