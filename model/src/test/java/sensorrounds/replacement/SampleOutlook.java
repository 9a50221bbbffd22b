package sensorrounds.replacement;

import java.time.LocalDate;
import sensorrounds.history.OriginBasis;
import sensorrounds.outlook.LastReport;
import sensorrounds.outlook.SensorOutlook;
import sensorrounds.survival.WeibullLife;
import sensorrounds.visit.WheelPosition;

/** An outlook of a sensor that answered on the as-of day. */
final class SampleOutlook {
    private SampleOutlook() {}

    static SensorOutlook of(WeibullLife law, int age, int horizon, double ratio) {
        return of("V1", "1L", law, age, horizon, ratio);
    }

    static SensorOutlook of(String vehicle, String place, WeibullLife law, int age, int horizon, double ratio) {
        double[] limits = law.failureWithinLimits(age, horizon, ratio, 0.1);
        WheelPosition position = WheelPosition.parse(place).orElseThrow();
        return new SensorOutlook(
                vehicle,
                "North",
                "van",
                position,
                null,
                "A1",
                vehicle + "/A1/1",
                "P1",
                age,
                OriginBasis.RECORDED_FITTING,
                LastReport.SOUND,
                LocalDate.of(2026, 3, 1),
                ratio,
                0,
                law.failureWithin(age, 30, ratio),
                law.failureWithin(age, 90, ratio),
                law.failureWithin(age, 180, ratio),
                law.failureWithin(age, 365, ratio),
                law.failureWithin(age, horizon, ratio),
                limits[0],
                limits[1],
                "van",
                "own fit");
    }
}
