package sensorrounds.story;

import java.time.LocalDate;
import java.util.List;
import sensorrounds.visit.BatteryReport;

/**
 * What holds for every vehicle of a run.
 *
 * @param proofMinutes driving that proves a system warning off
 * @param drivingKmh speed under which a drive does not count; 0 in runs that knew of none
 * @param referenceCelsius temperature pressures are referred to, °C
 * @param lowPressureShare share under the placard at which the warning comes
 * @param low limits under which a battery report is low
 * @param horizonDays days the ranking looks ahead
 * @param currency of costs
 * @param readers rows of the table of readers
 */
public record RunContext(
        String runId,
        LocalDate asOf,
        double proofMinutes,
        double drivingKmh,
        double referenceCelsius,
        double lowPressureShare,
        BatteryReport.LowLimits low,
        int horizonDays,
        String currency,
        List<StoredRow> readers) {
    public RunContext {
        readers = List.copyOf(readers);
    }
}
