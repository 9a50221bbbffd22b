package sensorrounds.cox;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
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
