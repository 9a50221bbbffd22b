package sensorrounds.causes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sensorrounds.causes.Lives.Cause;
import sensorrounds.cox.CoxFit;
import sensorrounds.cox.CoxFitter;
import sensorrounds.cox.CoxSample;
import sensorrounds.cox.Ties;
import sensorrounds.numeric.ChiSquareTest;
import sensorrounds.survival.FitStatus;

/** Gray's test and the Fine-Gray regression: what must hold beside the reference case. */
class IncidenceComparisonTest {
    private static final List<Cause> CAUSES = List.of(Cause.BATTERY, Cause.DAMAGE);

    private static List<EndedLife<Cause>> lives(long seed, int n, double batteryRate) {
        Random random = new Random(seed);
        List<EndedLife<Cause>> lives = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double battery = Math.ceil(-100 * Math.log(1 - random.nextDouble()) / batteryRate);
            double damage = Math.ceil(-100 * Math.log(1 - random.nextDouble()) / 0.5);
            double last = Math.ceil(300 * random.nextDouble());
            double end = Math.min(last, Math.min(battery, damage));
            lives.add(
                    end == last
                            ? EndedLife.censored(0, end)
                            : EndedLife.by(end == battery ? Cause.BATTERY : Cause.DAMAGE, 0, end));
        }
        return lives;
    }

    private static CauseSample<Cause> sample(List<EndedLife<Cause>> lives) {
        return CauseSample.of(CAUSES, lives);
    }

    /**
     * Two units a group, A: battery at 2, alive at 3. B: first damage at 1, alive at 3. The unit ended by damage stays in the risk set,
     * so at 2 each group counts 2 of 4: A has 1 where 1/2 was expected. Each of the four counts 1/8 of the variance of that end at its
     * group, 1/8 + 1/8 in all, as in the log-rank test. That B's damage fell when it did moves what B counts at 2: by the delta
     * method (2 x 1/4)^2 x 1/4 = 1/16 more. So the statistic is (1/2)^2 / (5/16) = 4/5; without the damage (1/2)^2 / (1/4) = 1.
     */
    @Test
    void oneEndOfEachCauseOnPaper() {
        List<EndedLife<Cause>> a = List.of(EndedLife.by(Cause.BATTERY, 0, 2), EndedLife.censored(0, 3));
        List<EndedLife<Cause>> b = List.of(EndedLife.by(Cause.DAMAGE, 0, 1), EndedLife.censored(0, 3));
        assertThat(GrayTest.of(List.of(sample(a), sample(b)), Cause.BATTERY).statistic())
                .isCloseTo(0.8, within(1e-12));
        List<EndedLife<Cause>> sound = List.of(EndedLife.censored(0, 3), EndedLife.censored(0, 3));
        assertThat(GrayTest.of(List.of(sample(a), sample(sound)), Cause.BATTERY).statistic())
                .isCloseTo(1, within(1e-12));
    }

    /**
     * x = 1: battery at 1, alive at 4. x = 0: damage at 2, battery at 3. The damaged one stays at risk, so with u = exp(b) the
     * likelihood is u / (2 + 2 u) times 1 / (2 + u), and 1 / (1 + u) = u / (2 + u) has the root u = sqrt(2). Taken out
     * of the risk set, as for the hazard of the cause alone, it would leave 1 / (1 + u) = u / (1 + u): no difference.
     */
    @Test
    void regressionOnIncidenceOnPaper() {
        List<EndedLife<Cause>> lives = List.of(
                EndedLife.by(Cause.BATTERY, 0, 1),
                EndedLife.censored(0, 4),
                EndedLife.by(Cause.DAMAGE, 0, 2),
                EndedLife.by(Cause.BATTERY, 0, 3));
        double[][] x = {{1}, {1}, {0}, {0}};
        FineGrayFit fit = FineGray.of(Cause.BATTERY).fit(List.of("x"), lives, x);
        assertThat(fit.values()[0]).isCloseTo(Math.log(2) / 2, within(1e-9));
        boolean[] failed = {true, false, false, true};
        CoxFit hazard = CoxFitter.withDefaults()
                .fit(CoxSample.of(List.of("x"), new double[4], new double[] {1, 4, 2, 3}, failed, x));
        assertThat(hazard.values()[0]).isCloseTo(0, within(1e-9));
    }

    @Test
    void groupsThatDifferAreFoundAndGroupsThatDoNotAreNot() {
        assertThat(GrayTest.of(List.of(sample(lives(1, 300, 1)), sample(lives(2, 300, 2))), Cause.BATTERY)
                        .pValue())
                .isLessThan(1e-4);
        int alarms = 0;
        for (int seed = 0; seed < 400; seed++) {
            alarms += GrayTest.of(
                                            List.of(
                                                    sample(lives(1000 + seed, 60, 1)),
                                                    sample(lives(5000 + seed, 40, 1)),
                                                    sample(lives(9000 + seed, 50, 1))),
                                            Cause.BATTERY)
                                    .pValue()
                            < 0.05
                    ? 1
                    : 0;
        }
        // 20 of 400 with a spread of 4.4; three spreads on either side.
        assertThat(alarms).isBetween(7, 33);
    }

    @Test
    void theOrderOfGroupsDoesNotMatterAndAWeightIsARepetition() {
        List<EndedLife<Cause>> a = lives(3, 80, 1);
        List<EndedLife<Cause>> b = lives(4, 70, 1.5);
        List<EndedLife<Cause>> c = lives(5, 60, 0.7);
        ChiSquareTest one = GrayTest.of(List.of(sample(a), sample(b), sample(c)), Cause.BATTERY);
        ChiSquareTest other = GrayTest.of(List.of(sample(c), sample(a), sample(b)), Cause.BATTERY);
        assertThat(other.statistic()).isCloseTo(one.statistic(), within(1e-9));
        assertThat(one.degreesOfFreedom()).isEqualTo(2);
        List<EndedLife<Cause>> twice = new ArrayList<>();
        List<EndedLife<Cause>> weighted = new ArrayList<>();
        for (EndedLife<Cause> life : a) {
            twice.addAll(Collections.nCopies(2, life));
            weighted.add(new EndedLife<>(0, life.exit(), life.cause(), 2));
        }
        assertThat(GrayTest.of(List.of(sample(weighted), sample(b)), Cause.BATTERY)
                        .statistic())
                .isCloseTo(
                        GrayTest.of(List.of(sample(twice), sample(b)), Cause.BATTERY)
                                .statistic(),
                        within(1e-9));
    }

    @Test
    void withoutCompetingCausesTheRegressionIsThatOfTheHazardWithRobustErrors() {
        List<EndedLife<Cause>> lives = lives(6, 200, 1).stream()
                .map(l -> l.cause() == Cause.DAMAGE ? EndedLife.<Cause>censored(0, l.exit()) : l)
                .toList();
        int n = lives.size();
        double[] exit = new double[n];
        boolean[] failed = new boolean[n];
        double[][] x = new double[n][];
        Random random = new Random(7);
        for (int i = 0; i < n; i++) {
            exit[i] = lives.get(i).exit();
            failed[i] = lives.get(i).cause() != null;
            x[i] = new double[] {random.nextGaussian(), random.nextInt(2)};
        }
        List<String> columns = List.of("cold", "late build");
        FineGrayFit incidence = FineGray.of(Cause.BATTERY).fit(columns, lives, x);
        CoxFit hazard =
                CoxFitter.withDefaults().with(Ties.BRESLOW).fit(CoxSample.of(columns, new double[n], exit, failed, x));
        assertThat(incidence.values()).containsExactly(hazard.values(), within(1e-9));
        for (int j = 0; j < 2; j++) {
            assertThat(incidence.standardError(j))
                    .isCloseTo(hazard.coefficients().get(j).robustError(), within(1e-9));
        }
    }

    @Test
    void withoutAnAnswerItSaysSo() {
        List<EndedLife<Cause>> lives = List.of(
                EndedLife.by(Cause.BATTERY, 0, 1),
                EndedLife.by(Cause.DAMAGE, 0, 2),
                EndedLife.by(Cause.BATTERY, 0, 3),
                EndedLife.censored(0, 4));
        FineGray<Cause> regression = FineGray.of(Cause.BATTERY);
        List<String> columns = List.of("x");
        FineGrayFit separated = regression.fit(columns, lives, new double[][] {{1}, {0}, {1}, {0}});
        assertThat(separated.report().status()).isEqualTo(FitStatus.SEPARATED_COLUMN);
        assertThatThrownBy(separated::values).isInstanceOf(IllegalStateException.class);
        FineGrayFit constant = regression.fit(columns, lives, new double[][] {{1}, {1}, {1}, {1}});
        assertThat(constant.report().status()).isEqualTo(FitStatus.COLLINEAR_COLUMN);
        FineGrayFit none = FineGray.of(Cause.PREVENTIVE).fit(columns, lives, new double[][] {{1}, {0}, {1}, {0}});
        assertThat(none.report().status()).isEqualTo(FitStatus.NO_FAILURES);
        assertThat(none.report().cause()).contains("PREVENTIVE");
        List<EndedLife<Cause>> late = List.of(EndedLife.by(Cause.BATTERY, 1, 2));
        assertThatThrownBy(() -> regression.fit(columns, late, new double[][] {{1}}))
                .hasMessageContaining("entered observation at age 1.0");
        assertThatThrownBy(() -> GrayTest.of(List.of(sample(late), sample(late)), Cause.BATTERY))
                .hasMessageContaining("later than");
    }
}
