package sensorrounds.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sensorrounds.numeric.Objective;
import sensorrounds.survival.EarlyWearFitter.Early;

class EarlyWearTest {
    private static final EarlyWearLife TRUTH = new EarlyWearLife(1, 20_000, 5, 3000, new double[4][4]);

    /** Lives met at a random age and visited every half year for four years. */
    private static LifetimeSample rounds(LifeLaw law, int lives, long seed) {
        Random random = new Random(seed);
        List<Lifetime> all = new ArrayList<>();
        while (all.size() < lives) {
            int entry = random.nextInt(2500);
            double dies = law.quantile(random.nextDouble());
            if (dies <= entry) {
                continue;
            }
            int good = entry;
            int next = entry + 120 + random.nextInt(120);
            while (next < dies && next <= entry + 1461) {
                good = next;
                next += 120 + random.nextInt(120);
            }
            boolean seenDead = next <= entry + 1461;
            all.add(seenDead ? Lifetime.interval(entry, good, next) : Lifetime.censored(entry, good));
        }
        return LifetimeSample.of(all);
    }

    private static EarlyWearFit fit(LifetimeSample sample, Early early) {
        return EarlyWearFitter.of(early)
                .fit(sample, ParametricFitter.of(Family.WEIBULL).fit(sample));
    }

    @Test
    void derivativesAreThoseOfTheLikelihood() {
        LifetimeSample sample = LifetimeSample.of(List.of(
                Lifetime.exact(0, 900),
                Lifetime.exact(300, 2500),
                Lifetime.interval(100, 1200, 1500),
                Lifetime.interval(0, 0, 400),
                Lifetime.censored(800, 2600),
                new Lifetime(0, 700, Lifetime.NEVER, 3)));
        EarlyWearLikelihood likelihood = new EarlyWearLikelihood(sample, Math.log(2000));
        double[] p = {1.9, 0.1, 0.2, 1.2};
        Objective.Evaluation here = likelihood.at(p);
        double h = 1e-5;
        for (int i = 0; i < 4; i++) {
            double[] up = p.clone();
            double[] down = p.clone();
            up[i] += h;
            down[i] -= h;
            Objective.Evaluation above = likelihood.at(up);
            Objective.Evaluation below = likelihood.at(down);
            assertThat(here.gradient()[i]).isCloseTo((above.value() - below.value()) / (2 * h), within(1e-7));
            for (int j = 0; j < 4; j++) {
                assertThat(here.hessian()[i][j])
                        .isCloseTo((above.gradient()[j] - below.gradient()[j]) / (2 * h), within(1e-6));
            }
        }
    }

    /** Two equal exponential hazards are one of twice the rate, whose likelihood is d log(rate) - rate x exposure. */
    @Test
    void twoExponentialHazardsAreOne() {
        LifetimeSample sample = LifetimeSample.of(
                List.of(Lifetime.exact(0, 900), Lifetime.exact(300, 2500), Lifetime.censored(800, 2600)));
        double rate = 2.0 / 4000;
        double exposure = 900 + 2200 + 1800;
        double value = new EarlyWearLikelihood(sample, 0)
                .at(new double[] {Math.log(4000), 0, Math.log(4000), 0})
                .value();
        assertThat(value).isCloseTo(2 * Math.log(rate) - rate * exposure, within(1e-12));
    }

    @Test
    void theTruthComesBackFromIntervalsWithDelayedEntry() {
        EarlyWearLife law = fit(rounds(TRUTH, 6000, 1), Early.CONSTANT).law().orElseThrow();
        assertThat(law.earlyShape()).isEqualTo(1);
        assertThat(law.wearShape()).isCloseTo(5, withinPercentage(8));
        assertThat(law.wearScaleDays()).isCloseTo(3000, withinPercentage(2));
        for (int age : new int[] {700, 1500, 2500, 3000, 3500}) {
            double[] limits = law.survivalLimits(age);
            assertThat(TRUTH.survival(age)).isBetween(limits[0] - 0.005, limits[1] + 0.005);
        }
    }

    @Test
    void aWeibullWouldBeTooFlatForOldSensors() {
        LifetimeSample sample = rounds(TRUTH, 6000, 1);
        WeibullLife plain = ParametricFitter.of(Family.WEIBULL).fit(sample).life();
        OwnLaw own = OwnLaw.of(sample);
        assertThat(own.aicGain()).isGreaterThan(50);
        assertThat(own.law()).isInstanceOf(EarlyWearLife.class);
        // P(fail within a year | alive), where the truth is known in closed form.
        assertThat(plain.failureWithin(3400, 365, 1)).isLessThan(0.95 * TRUTH.failureWithin(3400, 365, 1));
        double[] limits = own.law().failureWithinLimits(3400, 365, 1, 0);
        assertThat(TRUTH.failureWithin(3400, 365, 1)).isBetween(limits[0], limits[1]);
    }

    /** 95 % limits hold the truth in 12 of 12 or 11 of 12 with probability .88, in fewer than 10 of 12 with .02. */
    @Test
    void limitsCoverTheTruth() {
        int covered = 0;
        for (int seed = 1; seed <= 12; seed++) {
            double[] limits = fit(rounds(TRUTH, 6000, seed), Early.CONSTANT)
                    .law()
                    .orElseThrow()
                    .failureWithinLimits(3400, 365, 1, 0);
            double truth = TRUTH.failureWithin(3400, 365, 1);
            covered += limits[0] < truth && truth < limits[1] ? 1 : 0;
        }
        assertThat(covered).isGreaterThanOrEqualTo(10);
    }

    @Test
    void plainWeibullLivesGetNoSecondHazardAndAreToldWhy() {
        OwnLaw own = OwnLaw.of(rounds(new WeibullLife(2.5, 2800, 0, 0, 0), 1500, 5));
        assertThat(own.law()).isInstanceOf(WeibullLife.class);
        assertThat(own.note()).startsWith("a single Weibull: ");
    }

    @Test
    void tooFewFailuresAreRefusedInWords() {
        LifetimeSample three =
                LifetimeSample.of(List.of(Lifetime.exact(0, 900), Lifetime.exact(0, 1200), Lifetime.exact(0, 1500)));
        EarlyWearFit fit = fit(three, Early.CONSTANT);
        assertThat(fit.law()).isEmpty();
        assertThat(fit.report().cause()).contains("3 failures cannot tell 3 parameters");
        assertThat(fit.aic()).isInfinite();
    }

    @Test
    void quantilesMeansAndLimitsFitTogether() {
        assertThat(TRUTH.survival(TRUTH.quantile(0.3))).isCloseTo(0.7, within(1e-12));
        assertThat(TRUTH.ageAtHazard(0)).isZero();
        assertThat(TRUTH.meanWithin(2000) + TRUTH.survival(2000) * TRUTH.meanResidual(2000))
                .isCloseTo(TRUTH.mean(), withinPercentage(1e-9));
        double h = 1e-3;
        assertThat(TRUTH.hazard(2500))
                .isCloseTo(
                        (TRUTH.cumulativeHazard(2500 + h) - TRUTH.cumulativeHazard(2500 - h)) / (2 * h), within(1e-10));
        double[] limits =
                fit(rounds(TRUTH, 500, 8), Early.CONSTANT).law().orElseThrow().failureWithinLimits(2000, 365, 1, 0);
        assertThat(limits[0]).isPositive().isLessThan(limits[1]);
    }

    /** A constant hazard renews at its rate; any law in the end once per mean life, less half its spread: Cox (1962), 4. */
    @Test
    void renewalsCountWhatIsReplaced() {
        RenewalCounts level = RenewalCounts.of(new WeibullLife(1, 1000, 0, 0, 0));
        assertThat(level.by(700)).isCloseTo(0.7, within(1e-3));
        assertThat(level.by(20_000)).isCloseTo(20, within(0.02));
        assertThat(level.by(0)).isZero();
        WeibullLife wear = new WeibullLife(2, 1000, 0, 0, 0);
        // Rayleigh: mean 1000 sqrt(pi)/2, variance 1000^2 (1 - pi/4); M(t) = t/mean + variance/(2 mean^2) - 1/2.
        double mean = 500 * Math.sqrt(Math.PI);
        double limit = 10_000 / mean + 1e6 * (1 - Math.PI / 4) / (2 * mean * mean) - 0.5;
        assertThat(RenewalCounts.of(wear).by(10_000)).isCloseTo(limit, within(0.01));
        // Hardly anything fails twice early on: M is F there.
        assertThat(RenewalCounts.of(wear).by(90)).isCloseTo(1 - wear.survival(90), within(1e-4));
    }
}
