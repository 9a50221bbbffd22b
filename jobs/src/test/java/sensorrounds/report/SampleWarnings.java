package sensorrounds.report;

import java.util.ArrayList;
import java.util.List;
import sensorrounds.history.Repair;
import sensorrounds.recurrence.ComebackRate;
import sensorrounds.recurrence.FalseFlags;
import sensorrounds.recurrence.NoFaultShare;
import sensorrounds.recurrence.PeerRates;
import sensorrounds.recurrence.WarningCurvePoint;
import sensorrounds.recurrence.WarningCurvePoint.Clock;
import sensorrounds.recurrence.WarningTrend;
import sensorrounds.recurrence.WarningTrend.Direction;
import sensorrounds.review.WarningCounts;

/** Invented figures of system warnings over time and after repair. */
final class SampleWarnings {
    private SampleWarnings() {}

    static WarningCounts.Summary realistic() {
        List<WarningCurvePoint> curve = new ArrayList<>();
        for (String cohort : List.of("truck", "van", PeerRates.ALL)) {
            curve(curve, cohort, cohort.equals("truck") ? 1.3 : 0.8);
        }
        return new WarningCounts.Summary(
                curve,
                List.of(
                        trend("truck", 92, 41, Direction.MORE_OFTEN, 2.41, 0.016),
                        trend("van", 270, 14, Direction.TOO_FEW, Double.NaN, Double.NaN),
                        trend(PeerRates.ALL, 362, 55, Direction.NO_TREND_SHOWN, 0.62, 0.535)),
                List.of(
                        new ComebackRate(
                                Repair.SENSOR_REPLACED, 30, 61, 3, 40, 14, 4, 0.0508, 0.017, 0.139, 0.07, 0.06),
                        new ComebackRate(Repair.RELEARN, 30, 44, 19, 11, 12, 2, 0.441, 0.306, 0.586, 0.633, 0.402),
                        new ComebackRate(Repair.RELEARN, 90, 44, 24, 8, 8, 4, 0.562, 0.416, 0.698, 0.75, 0.533),
                        new ComebackRate(
                                Repair.SET_REPLACED, 30, 2, 0, 0, 0, 2, Double.NaN, 0, 1, Double.NaN, Double.NaN),
                        new ComebackRate(null, 30, 107, 22, 51, 26, 8, 0.213, 0.146, 0.3, 0.301, 0.213)),
                List.of(
                        new NoFaultShare("van", 60, 2, 21, 9, 10, 18, 0.3103, 0.206, 0.438),
                        new NoFaultShare(PeerRates.ALL, 131, 5, 48, 20, 23, 35, 0.2778, 0.207, 0.362)),
                List.of(new FalseFlags(PeerRates.ALL, 3, 0.4, 1)));
    }

    /** The realistic figures with one more class that is called {@code text}. */
    static WarningCounts.Summary withText(String text) {
        WarningCounts.Summary w = realistic();
        List<WarningCurvePoint> points = new ArrayList<>(w.curve());
        curve(points, text, 0.5);
        List<WarningTrend> trends = new ArrayList<>(w.trends());
        trends.add(trend(text, 5, 1, Direction.TOO_FEW, Double.NaN, Double.NaN));
        List<NoFaultShare> shares = new ArrayList<>(w.noFaults());
        shares.add(new NoFaultShare(text, 1, 0, 0, 0, 0, 1, 1, 0.2, 1));
        return new WarningCounts.Summary(points, trends, w.comebacks(), shares, w.falseFlags());
    }

    private static WarningTrend trend(
            String cohort, long vehicles, long warned, Direction direction, double statistic, double p) {
        double years = 2.4 * vehicles;
        return new WarningTrend(
                cohort, vehicles, warned, 2 * warned, years, 2 * warned / years, statistic, p, direction);
    }

    private static void curve(List<WarningCurvePoint> points, String cohort, double perYear) {
        points.add(new WarningCurvePoint(Clock.SINCE_FIRST_VISIT, cohort, 0, 362, 0, 0, 0, Double.NaN, Double.NaN));
        for (int week = 4; week <= 182; week += 4) {
            double mean = perYear * week / 52.18;
            points.add(new WarningCurvePoint(
                    Clock.SINCE_FIRST_VISIT,
                    cohort,
                    7 * week,
                    362 - week,
                    week % 3,
                    mean,
                    0.1 * mean,
                    mean * 0.82,
                    mean * 1.22));
        }
        points.add(new WarningCurvePoint(Clock.IN_SERVICE, cohort, 4200, 3, 1, 9, 3, 5, 16));
    }
}
