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

    /** As {@link #of}, and dead already with this chance. */
    static SensorOutlook deadAlready(String place, WeibullLife law, int age, int horizon, double p) {
        SensorOutlook o = of("V1", place, law, age, horizon, 1);
        return with(
                o,
                o.lastReport(),
                p,
                either(p, o.p30()),
                either(p, o.p90()),
                either(p, o.p180()),
                either(p, o.p365()),
                either(p, o.pHorizon()));
    }

    static SensorOutlook with(SensorOutlook o, LastReport report) {
        return with(o, report, o.pNow(), o.p30(), o.p90(), o.p180(), o.p365(), o.pHorizon());
    }

    private static double either(double p, double q) {
        return 1 - (1 - p) * (1 - q);
    }

    private static SensorOutlook with(
            SensorOutlook o,
            LastReport report,
            double now,
            double p30,
            double p90,
            double p180,
            double p365,
            double pHorizon) {
        return new SensorOutlook(
                o.vehicleId(),
                o.depot(),
                o.vehicleClass(),
                o.position(),
                o.wheelSet(),
                o.sensorId(),
                o.lifeId(),
                o.part(),
                o.ageDays(),
                o.basis(),
                report,
                o.lastReadOn(),
                o.failureRatio(),
                now,
                p30,
                p90,
                p180,
                p365,
                pHorizon,
                o.pHorizonLower(),
                o.pHorizonUpper(),
                o.cohort(),
                o.rung());
    }
}
