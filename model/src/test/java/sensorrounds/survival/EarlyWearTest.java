package sensorrounds.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
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

    /**
     * On paper. 1,024 sensors are looked at on days 1,000, 2,000 and 4,000: 512, 384 and 127 are found dead, one lives. Three
     * parameters for three shares are saturated: at the maximum the law holds each share, so H is log 2, 3 log 2 and 10 log 2
     * there. With A and B the parts of the early hazard and of wear-out up to day 1,000, in units of log 2, and y = 2^shape:
     *
     * <pre>
     *   A + B = 1,  2 A + y B = 3,  4 A + y^2 B = 10
     *   second - 2 first: (y - 2) B = 1;  third - 2 second: y (y - 2) B = 4
     *   so y = 4, shape 2; B = 1/2; A = 1/2
     *   early scale 1,000 / (A log 2) = 2,000 / log 2;  wear scale 1,000 / sqrt(B log 2) = 1,000 sqrt(2 / log 2)
     * </pre>
     */
    private static final Map<int[], Double> THREE_LOOKS = Map.of(
            new int[] {0, 1000},
            512.0,
            new int[] {1000, 2000},
            384.0,
            new int[] {2000, 4000},
            127.0,
            new int[] {4000},
            1.0);

    private static LifetimeSample looks(int entry, double share) {
        List<Lifetime> lives = new ArrayList<>();
        THREE_LOOKS.forEach((ages, count) -> {
            if (ages[0] >= entry) {
                int upper = ages.length == 1 ? Lifetime.NEVER : ages[1];
                lives.add(new Lifetime(entry, ages[0], upper, share * count));
            }
        });
        return LifetimeSample.of(lives);
    }

    @Test
    void threeLooksSolvedByHand() {
        EarlyWearFit fit = fit(looks(0, 1), Early.CONSTANT);
        assertThat(fit.report().cause()).isEmpty();
        EarlyWearLife law = fit.law().orElseThrow();
        assertThat(law.wearShape()).isCloseTo(2, within(1e-8));
        assertThat(law.earlyScaleDays()).isCloseTo(2000 / Math.log(2), within(1e-4));
        assertThat(law.wearScaleDays()).isCloseTo(1000 * Math.sqrt(2 / Math.log(2)), within(1e-4));
        // That of the shares themselves.
        double shares = 512 * Math.log(512) + 384 * Math.log(384) + 127 * Math.log(127) - 1024 * Math.log(1024);
        assertThat(fit.logLikelihood()).isCloseTo(shares, within(1e-8));
        assertThat(law.quantile(0.5)).isCloseTo(1000, within(1e-5));
    }

    /** Half of those who lived on day 1,000 were met that day: their own shares are the same, and so is the maximum. */
    @Test
    void sensorsMetLaterGiveTheSameAnswerByHand() {
        LifetimeSample late = LifetimeSample.pooled(List.of(looks(0, 0.5), looks(1000, 0.5)));
        EarlyWearLife law = fit(late, Early.CONSTANT).law().orElseThrow();
        assertThat(law.wearShape()).isCloseTo(2, within(1e-8));
        assertThat(law.earlyScaleDays()).isCloseTo(2000 / Math.log(2), within(1e-4));
        assertThat(law.wearScaleDays()).isCloseTo(1000 * Math.sqrt(2 / Math.log(2)), within(1e-4));
    }

    /** Four looks saturate four parameters likewise: shares that a law gives lead back to it. */
    @Test
    void sharesOfALawLeadBackToIt() {
        EarlyWearLife truth = new EarlyWearLife(0.5, 40_000, 4, 3000, new double[4][4]);
        int[] looks = {0, 500, 1500, 2500, 3500};
        List<Lifetime> lives = new ArrayList<>();
        for (int i = 1; i < looks.length; i++) {
            double share = truth.survival(looks[i - 1]) - truth.survival(looks[i]);
            lives.add(new Lifetime(0, looks[i - 1], looks[i], 10_000 * share));
        }
        lives.add(new Lifetime(0, 3500, Lifetime.NEVER, 10_000 * truth.survival(3500)));
        EarlyWearLife law =
                fit(LifetimeSample.of(lives), Early.FREE_SHAPE).law().orElseThrow();
        assertThat(law.earlyShape()).isCloseTo(0.5, within(1e-6));
        assertThat(law.earlyScaleDays()).isCloseTo(40_000, withinPercentage(1e-3));
        assertThat(law.wearShape()).isCloseTo(4, within(1e-6));
        assertThat(law.wearScaleDays()).isCloseTo(3000, withinPercentage(1e-3));
    }

    /**
     * The score equations by arithmetic at the fitted point: each failure shared out by the two hazards at its age, either
     * hazard was to bring as many failures as it is given, and the shape of wear-out balances 1/shape + log(t / scale) of its
     * failures against log(t / scale) weighted with its hazard lived through.
     */
    @Test
    void atTheMaximumEachHazardBringsTheFailuresItIsGiven() {
        int[] failed = {120, 400, 900, 1300, 2300, 2500, 2600, 2700, 2800, 2900};
        int[] alive = {700, 1500, 2400, 2650, 3000};
        List<Lifetime> lives = new ArrayList<>();
        for (int age : failed) {
            lives.add(Lifetime.exact(0, age));
        }
        for (int age : alive) {
            lives.add(Lifetime.censored(100, age));
        }
        EarlyWearLife law = fit(LifetimeSample.of(lives), Early.CONSTANT).law().orElseThrow();
        double early = 0;
        double wear = 0;
        double shape = 0;
        for (int age : failed) {
            double share = 1 / law.earlyScaleDays() / law.hazard(age);
            double log = Math.log(age / law.wearScaleDays());
            early += share - age / law.earlyScaleDays();
            wear += 1 - share - Math.exp(law.wearShape() * log);
            shape += (1 - share) * (1 / law.wearShape() + log) - Math.exp(law.wearShape() * log) * log;
        }
        for (int age : alive) {
            double log = Math.log(age / law.wearScaleDays());
            double before = Math.log(100 / law.wearScaleDays());
            early -= (age - 100) / law.earlyScaleDays();
            wear -= Math.exp(law.wearShape() * log) - Math.exp(law.wearShape() * before);
            shape -= Math.exp(law.wearShape() * log) * log - Math.exp(law.wearShape() * before) * before;
        }
        assertThat(early).isCloseTo(0, within(1e-7));
        assertThat(wear).isCloseTo(0, within(1e-7));
        assertThat(shape).isCloseTo(0, within(1e-7));
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
