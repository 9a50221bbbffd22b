package sensorrounds.survival;

import java.util.ArrayList;
import java.util.List;

/**
 * Survival curves as points for tables and charts: 95 % log-log limits, numbers at risk, failures so far. At age 0 those
 * count as at risk who came under observation new.
 */
public final class Curves {
    /** Spacing of a fitted law's points, days: four to a year. */
    public static final int GRID_DAYS = 91;

    private Curves() {}

    /**
     * Kaplan-Meier points of a sample at the midpoints of its failure intervals: age 0, then each age with failures,
     * rounded up to whole days. Where S is 0 its variance is undefined; the lower limit is then 0 and the upper limit
     * that of the last age before. Without failures, age 0 alone.
     */
    public static List<CurvePoint> kaplanMeier(String cohort, LifetimeSample sample) {
        KaplanMeierFit fit = KaplanMeier.withDefaults().fit(sample.atMidpoints());
        List<CurvePoint> points = new ArrayList<>();
        points.add(new CurvePoint(
                cohort,
                CurvePoint.Method.KAPLAN_MEIER,
                0,
                1,
                1,
                1,
                fit.riskSet().at(Double.MIN_VALUE),
                0));
        double failures = 0;
        double upper = 1;
        for (KaplanMeierFit.Step step : fit.steps()) {
            failures += step.failures();
            boolean defined = step.survival() > 0;
            upper = defined ? step.upper() : upper;
            int age = (int) Math.ceil(step.age());
            // Midpoints may lie half a day apart: the later one stands for the day.
            if (points.get(points.size() - 1).ageDays() == age) {
                points.remove(points.size() - 1);
            }
            points.add(new CurvePoint(
                    cohort,
                    CurvePoint.Method.KAPLAN_MEIER,
                    age,
                    step.survival(),
                    defined ? step.lower() : 0,
                    upper,
                    step.atRisk(),
                    failures));
        }
        return points;
    }

    /**
     * A fitted law every {@link #GRID_DAYS} days from age 0 to the last age the sample knows anything about, and at that
     * age. Numbers at risk and failures (midpoints) are the sample's.
     */
    public static List<CurvePoint> weibull(String cohort, WeibullLife life, LifetimeSample sample) {
        RiskSet riskSet = RiskSet.of(sample);
        double[] failureAges = new double[sample.size()];
        for (int i = 0; i < sample.size(); i++) {
            failureAges[i] = sample.failed(i) ? sample.exit(i) : Double.POSITIVE_INFINITY;
        }
        List<CurvePoint> points = new ArrayList<>();
        int last = (int) Math.floor(sample.lastAge());
        for (int age = 0; age <= last; age = age < last ? Math.min(age + GRID_DAYS, last) : last + 1) {
            double failures = 0;
            for (int i = 0; i < failureAges.length; i++) {
                failures += failureAges[i] <= age ? sample.weight(i) : 0;
            }
            double[] limits = life.survivalLimits(age);
            points.add(new CurvePoint(
                    cohort,
                    CurvePoint.Method.WEIBULL,
                    age,
                    life.survival(age),
                    limits[0],
                    limits[1],
                    riskSet.at(Math.max(age, Double.MIN_VALUE)),
                    failures));
        }
        return points;
    }
}
