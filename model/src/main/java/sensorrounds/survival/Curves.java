package sensorrounds.survival;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.SortedMap;
import java.util.TreeMap;

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
     * rounded up to whole days. The limits at age 0 are those in force from there to the first failure. Where S is 0 its variance is undefined; the lower limit is then 0 and the upper limit
     * that of the last age before. Without failures, age 0 alone.
     */
    public static List<CurvePoint> kaplanMeier(String cohort, LifetimeSample sample) {
        return steps(
                cohort,
                CurvePoint.Method.KAPLAN_MEIER,
                KaplanMeier.withDefaults().fit(sample.atMidpoints()));
    }

    /** {@link #kaplanMeier} of a fit at hand, under the name of this method. */
    public static List<CurvePoint> steps(String cohort, CurvePoint.Method method, KaplanMeierFit fit) {
        List<CurvePoint> points = new ArrayList<>();
        points.add(new CurvePoint(
                cohort,
                method,
                0,
                1,
                fit.lowerBeforeFailures(),
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
                    cohort, method, age, step.survival(), defined ? step.lower() : 0, upper, step.atRisk(), failures));
        }
        return points;
    }

    /**
     * A fitted law every {@link #GRID_DAYS} days from age 0 to the last age the sample knows anything about, and at that
     * age. Numbers at risk and failures (midpoints) are the sample's.
     */
    public static List<CurvePoint> law(String cohort, CurvePoint.Method method, LifeLaw life, LifetimeSample sample) {
        Counts counts = new Counts(sample);
        List<CurvePoint> points = new ArrayList<>();
        for (int age : grid(sample.lastAge())) {
            double[] limits = life.survivalLimits(age);
            points.add(new CurvePoint(
                    cohort,
                    method,
                    age,
                    life.survival(age),
                    limits[0],
                    limits[1],
                    counts.atRisk(age),
                    counts.failures(age)));
        }
        return points;
    }

    /**
     * A curve at ages where it is known, without limits (NaN). Numbers at risk and failures (midpoints) are the sample's.
     *
     * @param survival by age
     */
    public static List<CurvePoint> withoutLimits(
            String cohort, CurvePoint.Method method, SortedMap<Integer, Double> survival, LifetimeSample sample) {
        Counts counts = new Counts(sample);
        List<CurvePoint> points = new ArrayList<>();
        survival.forEach((age, share) -> points.add(new CurvePoint(
                cohort, method, age, share, Double.NaN, Double.NaN, counts.atRisk(age), counts.failures(age))));
        return points;
    }

    /** Every {@link #GRID_DAYS} days from 0 to an age, and that age in whole days. */
    public static List<Integer> grid(double lastAge) {
        int last = (int) Math.floor(lastAge);
        List<Integer> ages = new ArrayList<>();
        for (int age = 0; age < last; age += GRID_DAYS) {
            ages.add(age);
        }
        ages.add(last);
        return ages;
    }

    /** A sample's numbers at risk and its failures so far, each in O(log n). */
    private static final class Counts {
        private final RiskSet riskSet;
        private final NavigableMap<Double, Double> failures = new TreeMap<>();

        Counts(LifetimeSample sample) {
            riskSet = RiskSet.of(sample);
            for (int i = 0; i < sample.size(); i++) {
                if (sample.failed(i)) {
                    failures.merge(sample.exit(i), sample.weight(i), Double::sum);
                }
            }
            double sum = 0;
            for (Map.Entry<Double, Double> at : failures.entrySet()) {
                sum += at.getValue();
                at.setValue(sum);
            }
        }

        double atRisk(int age) {
            return riskSet.at(Math.max(age, Double.MIN_VALUE));
        }

        double failures(int age) {
            Map.Entry<Double, Double> last = failures.floorEntry((double) age);
            return last == null ? 0 : last.getValue();
        }
    }
}
