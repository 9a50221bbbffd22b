package sensorrounds.cox;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The check must speak up where an effect changes with age, and keep quiet as often as it says where none does. */
class ProportionalityCheckTest {
    /** Two groups of Weibull lives with these shapes, all of scale 1000, watched to 2000. */
    private static CoxSample groups(long seed, int n, double shapeOfNone, double shapeOfGroup) {
        Random random = new Random(seed);
        double[] exit = new double[n];
        boolean[] failed = new boolean[n];
        double[][] x = new double[n][1];
        for (int i = 0; i < n; i++) {
            x[i][0] = i % 2;
            double shape = i % 2 == 0 ? shapeOfNone : shapeOfGroup;
            double life = 1000 * Math.pow(-Math.log(1 - random.nextDouble()), 1 / shape);
            exit[i] = Math.max(1, Math.ceil(Math.min(life, 2000)));
            failed[i] = life <= 2000;
        }
        return CoxSample.of(List.of("group"), new double[n], exit, failed, x);
    }

    /**
     * On paper. x = 1: failed at 1 and at 2, alive at 5. x = 0: alive at 1.5 and at 3, failed at 4. At each failure as many
     * of either kind are at risk (3, 2, 1), so with u = exp(beta) the mean of x is m = u / (1 + u) each time; two
     * failures of x = 1 and one of x = 0 make m = 2/3, u = 2. Residuals 1/3, 1/3, -2/3; variance 2/9 each time. Then
     *
     * <pre>
     *   score = sum g r,  its information given the fit = 2/9 sum (g - mean g)^2,  statistic = score^2 / information
     *   g = age           1, 2, 4     score -5/3        squares 14/3          (25/9) / (28/27)    = 75/28
     *   g = log age / L   0, 1, 2     score -1          squares 2             1 / (4/9)           = 9/4    (L = log 2)
     *   g = share failed  0, 1/6, 3/8: times 24 that is 0, 4, 9
     *                                 score -14/3       squares 122/3         (196/9) / (244/27)  = 147/61
     * </pre>
     *
     * Kaplan-Meier of all: 5/6 past 1, then 3/4 of it, 5/8, past 2. An effect at each age: log 2 + 3 r / (3 (2/9)).
     * R survival 3.5-3, cox.zph, gives 2.678571, 2.25 and 2.409836.
     */
    @Test
    void threeFailuresOnPaper() {
        CoxFit fit = CoxFitter.withDefaults()
                .fit(CoxSample.of(
                        List.of("x"),
                        new double[6],
                        new double[] {1, 2, 5, 1.5, 3, 4},
                        new boolean[] {true, true, false, false, false, true},
                        new double[][] {{1}, {1}, {1}, {0}, {0}, {0}}));
        assertThat(fit.values()[0]).isCloseTo(Math.log(2), within(1e-12));
        Map<ProportionalityCheck.AgeScale, Double> paper = Map.of(
                ProportionalityCheck.AgeScale.AGE, 75 / 28.0,
                ProportionalityCheck.AgeScale.LOG_AGE, 9 / 4.0,
                ProportionalityCheck.AgeScale.SHARE_FAILED, 147 / 61.0);
        paper.forEach((scale, statistic) -> {
            ProportionalityCheck.Result result =
                    ProportionalityCheck.withDefaults().with(scale).of(fit);
            assertThat(result.global().statistic()).as("%s", scale).isCloseTo(statistic, within(1e-10));
            assertThat(result.columns().get(0).test().degreesOfFreedom()).isEqualTo(1);
        });
        List<ProportionalityCheck.Drift> drift =
                ProportionalityCheck.withDefaults().of(fit).drift();
        assertThat(drift).extracting(ProportionalityCheck.Drift::age).containsExactly(1.0, 2.0, 4.0);
        double[] effect = {Math.log(2) + 1.5, Math.log(2) + 1.5, Math.log(2) - 3};
        for (int i = 0; i < 3; i++) {
            assertThat(drift.get(i).coefficient()[0]).isCloseTo(effect[i], within(1e-10));
        }
    }

    @Test
    void aHazardRatioThatGrowsWithAgeIsSeenOnEveryScale() {
        CoxFit fit = CoxFitter.withDefaults().fit(groups(1, 600, 1, 3));
        for (ProportionalityCheck.AgeScale scale : ProportionalityCheck.AgeScale.values()) {
            ProportionalityCheck.Result result =
                    ProportionalityCheck.withDefaults().with(scale).of(fit);
            assertThat(result.global().pValue()).as("%s", scale).isLessThan(1e-6);
            // One column: its test is the global one.
            assertThat(result.columns().get(0).test()).isEqualTo(result.global());
        }
    }

    @Test
    void theDriftPointsWhereTheEffectGoes() {
        List<ProportionalityCheck.Drift> drift = ProportionalityCheck.withDefaults()
                .of(CoxFitter.withDefaults().fit(groups(1, 600, 1, 3)))
                .drift();
        int third = drift.size() / 3;
        double early = drift.subList(0, third).stream()
                .mapToDouble(d -> d.coefficient()[0])
                .average()
                .orElseThrow();
        double late = drift.subList(2 * third, drift.size()).stream()
                .mapToDouble(d -> d.coefficient()[0])
                .average()
                .orElseThrow();
        assertThat(early).isLessThan(0);
        assertThat(late).isGreaterThan(0.5);
        assertThat(drift).isSortedAccordingTo((a, b) -> Double.compare(a.age(), b.age()));
    }

    @Test
    void aFalseAlarmComesAsOftenAsStated() {
        int alarms = 0;
        int fleets = 400;
        for (int seed = 0; seed < fleets; seed++) {
            CoxFit fit = CoxFitter.withDefaults().fit(groups(seed, 120, 2, 2));
            alarms += ProportionalityCheck.withDefaults().of(fit).global().pValue() < 0.05 ? 1 : 0;
        }
        // 5 % of 400 is 20 with a spread of 4.4; three spreads on either side.
        assertThat(alarms).isBetween(7, 33);
    }
}
