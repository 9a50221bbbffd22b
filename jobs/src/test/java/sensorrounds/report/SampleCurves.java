package sensorrounds.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import sensorrounds.survival.CohortFit;
import sensorrounds.survival.CurvePoint;
import sensorrounds.survival.NpmleCheck;
import sensorrounds.survival.WeibullLife;

/** Fits and curves of three invented cohorts. */
final class SampleCurves {
    private SampleCurves() {}

    static List<CohortFit> fits() {
        return List.of(
                new CohortFit(
                        "van",
                        "OWN_FIT",
                        "CONVERGED",
                        812,
                        121,
                        2410.5,
                        2.61,
                        2.2,
                        3.1,
                        2711,
                        2590,
                        2838,
                        2355,
                        -412.83,
                        14,
                        3.2e-9,
                        0.11,
                        "",
                        new NpmleCheck("CONVERGED", 210, "UNIQUE", ""),
                        CohortFit.LawInUse.weibull(-1.5)),
                new CohortFit(
                        "truck",
                        "OWN_FIT",
                        "CONVERGED",
                        402,
                        58,
                        1020,
                        1.94,
                        1.5,
                        2.51,
                        2301,
                        2010,
                        2634,
                        1905,
                        -233.1,
                        17,
                        8.8e-9,
                        0.28,
                        "Few sensors are at risk before the age of one year.",
                        new NpmleCheck("CONVERGED", 310, "NOT_UNIQUE", ""),
                        new CohortFit.LawInUse(
                                CohortFit.Form.EARLY_AND_WEAR, 1, 40000, 3.1, 2500, 6.2, CohortFit.Shares.OWN)),
                new CohortFit(
                        "car",
                        "POOLED_SHAPE",
                        "NOT_CONVERGED",
                        196,
                        4,
                        310,
                        2.4,
                        2.05,
                        2.81,
                        3105,
                        2250,
                        4285,
                        2664,
                        Double.NaN,
                        60,
                        0.4,
                        0.02,
                        "4 failures, an own fit needs 5; pooled shape, own scale shrunk towards the pooled one with the weight of 3 failures",
                        NpmleCheck.NOT_RUN,
                        CohortFit.LawInUse.weibull(-1.5)));
    }

    static List<CurvePoint> curves() {
        List<CurvePoint> points = new ArrayList<>();
        curve(points, "van", new WeibullLife(2.61, 2711, 0, 0, 0), 3300, 1);
        curve(points, "truck", new WeibullLife(1.94, 2301, 0, 0, 0), 2900, 2);
        smooth(points, "car", new WeibullLife(2.4, 3105, 0, 0, 0), 2600, 0.08);
        return points;
    }

    private static void curve(List<CurvePoint> points, String cohort, WeibullLife law, int last, long seed) {
        smooth(points, cohort, law, last, 0.035);
        Random random = new Random(seed);
        double s = 1;
        double failures = 0;
        points.add(new CurvePoint(cohort, CurvePoint.Method.KAPLAN_MEIER, 0, 1, 1, 1, 90, 0));
        for (int age = 120; age <= last - 200; age += 30 + random.nextInt(70)) {
            double truth = law.survival(age);
            s = Math.min(s, truth + 0.03 * random.nextGaussian() * Math.sqrt(truth * (1 - truth)));
            failures += 1 + random.nextInt(4);
            double half = 0.02 + 0.08 * age / last;
            double atRisk = atRisk(age);
            points.add(new CurvePoint(
                    cohort,
                    CurvePoint.Method.KAPLAN_MEIER,
                    age,
                    s,
                    Math.max(0, s - half),
                    Math.min(1, s + half),
                    atRisk,
                    failures));
        }
    }

    private static void smooth(List<CurvePoint> points, String cohort, WeibullLife law, int last, double width) {
        for (int age = 0; age <= last; age += 20) {
            double s = law.survival(age);
            double half = width * (0.2 + age / (double) last) * Math.min(1, 4 * s * (1 - s) + 0.05);
            points.add(new CurvePoint(
                    cohort,
                    CurvePoint.Method.FITTED_LAW,
                    age,
                    s,
                    Math.max(0, s - half),
                    Math.min(1, s + half),
                    atRisk(age),
                    Math.floor(age / 90.0)));
        }
    }

    /** Sensors come under observation late: the number at risk rises before it falls. */
    private static double atRisk(int age) {
        return Math.rint(90 + 400 * Math.exp(-Math.pow((age - 1500) / 900.0, 2)));
    }
}
