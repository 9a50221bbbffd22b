package sensorrounds.replacement;

import java.time.LocalDate;
import sensorrounds.history.OriginBasis;
import sensorrounds.outlook.LastReport;
import sensorrounds.outlook.SensorInService;
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
                new SensorInService(
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
                        LocalDate.of(2026, 3, 1)),
                new SensorOutlook.Chances(
                        ratio,
                        0,
                        law.failureWithin(age, 30, ratio),
                        law.failureWithin(age, 90, ratio),
                        law.failureWithin(age, 180, ratio),
                        law.failureWithin(age, 365, ratio),
                        law.failureWithin(age, horizon, ratio),
                        limits[0],
                        limits[1]),
                SensorOutlook.Grounds.ofLaw("van", "own fit"));
    }

    /** As {@link #of}, and dead already with this chance. */
    static SensorOutlook deadAlready(String place, WeibullLife law, int age, int horizon, double p) {
        SensorOutlook o = of("V1", place, law, age, horizon, 1);
        SensorOutlook.Chances c = o.chances();
        return new SensorOutlook(
                o.sensor(),
                new SensorOutlook.Chances(
                        c.failureRatio(),
                        p,
                        either(p, c.p30()),
                        either(p, c.p90()),
                        either(p, c.p180()),
                        either(p, c.p365()),
                        either(p, c.pHorizon()),
                        c.pHorizonLower(),
                        c.pHorizonUpper()),
                o.grounds());
    }

    static SensorOutlook with(SensorOutlook o, LastReport report) {
        SensorInService s = o.sensor();
        return new SensorOutlook(
                new SensorInService(
                        s.vehicleId(),
                        s.depot(),
                        s.vehicleClass(),
                        s.position(),
                        s.wheelSet(),
                        s.sensorId(),
                        s.lifeId(),
                        s.part(),
                        s.ageDays(),
                        s.basis(),
                        report,
                        s.lastReadOn()),
                o.chances(),
                o.grounds());
    }

    private static double either(double p, double q) {
        return 1 - (1 - p) * (1 - q);
    }
}
