package sensorrounds.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SortedMap;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import sensorrounds.reference.ReferenceCase;
import sensorrounds.reference.References;

/** A law of life from few failures and a declared prior. */
class WeakPriorFitterTest {
    private static final double YEAR = 365.25;
    private static final double SHAPE = 2.5;
    private static final double SCALE = 7 * YEAR;

    private static LifetimeSample bearings(ReferenceCase reference) {
        double[] running = reference.data("running");
        double[] count = reference.data("count");
        double[] failed = reference.data("failed");
        List<Lifetime> lives = new ArrayList<>();
        for (int i = 0; i < running.length; i++) {
            lives.add(new Lifetime(0, (int) running[i], Lifetime.NEVER, count[i]));
        }
        for (double age : failed) {
            lives.add(Lifetime.exact(0, (int) age));
        }
        return LifetimeSample.of(lives);
    }

    /** 1,703 bearing cages, 6 failures: the posterior by a grid of 1,501 x 1,501 points in R, and the fit without a prior as printed. */
    @Test
    void bearingCages() {
        ReferenceCase reference = ReferenceCase.load("survival/weak-prior.json", "bearing-cage");
        LifetimeSample sample = bearings(reference);
        assertThat(sample.lives()).isEqualTo(1703);
        ParametricFit plain = ParametricFitter.of(Family.WEIBULL).fit(sample);
        assertThat(plain.shape().value()).isCloseTo(2.035, within(5e-4));
        assertThat(plain.scale().value()).isCloseTo(11792, within(1.0));

        WeakPriorFit fit = WeakPriorFitter.of(new WeakPrior(2000, 40000, 1, 5)).fit(sample);

        check(reference, "shape", fit.shape());
        check(reference, "medianLife", fit.quantile(0.5));
        check(reference, "tenPercent", fit.quantile(0.1));
        check(reference, "survival8000", fit.survival(8000));
        check(reference, "within300at2000", fit.failureWithin(2000, 300));
        double[] moments = reference.expected("moments");
        WeibullLife law = fit.life();
        References.check(reference, "mean log scale", Math.log(law.scaleDays()), moments[0], 1e-6, 0);
        References.check(reference, "mean log shape", Math.log(law.shape()), moments[1], 1e-5, 0);
        References.check(reference, "var log scale", law.varLogScale(), moments[2], 1e-4, 0);
        References.check(reference, "var log shape", law.varLogShape(), moments[3], 1e-4, 0);
        References.check(reference, "cov", law.covLogs(), moments[4], 1e-4, 0);
    }

    private static void check(ReferenceCase reference, String quantity, Estimate actual) {
        References.check(reference, quantity, new double[] {actual.value(), actual.lower(), actual.upper()});
    }

    /** On paper: with the shape all but given (1), one parameter is left; its posterior by plain summation. */
    @Test
    void oneParameterByPlainSummation() {
        LifetimeSample sample = LifetimeSample.of(
                List.of(Lifetime.exact(0, 400), Lifetime.exact(100, 900), Lifetime.censored(0, 2000)));
        WeakPriorFit fit =
                WeakPriorFitter.of(new WeakPrior(500, 5000, 0.99999, 1.00001)).fit(sample);
        double mu = Math.log(500 * 5000) / 2;
        double sd = Math.log(10) / 2 / 1.959963984540054;
        // log median = log(log 2 / rate); 2 failures, 400 + 800 + 2000 days at risk.
        DoubleUnaryOperator density = x -> {
            double rate = Math.log(2) / Math.exp(x);
            return rate * rate * Math.exp(-3200 * rate - (x - mu) * (x - mu) / (2 * sd * sd));
        };
        double all = 0;
        double below = 0;
        double limit = Math.log(fit.quantile(0.5).lower());
        for (double x = mu - 12 * sd; x < mu + 12 * sd; x += 1e-4) {
            double f = density.applyAsDouble(x + 5e-5);
            all += f;
            below += x + 5e-5 < limit ? f : 0;
        }
        assertThat(below / all).isCloseTo(0.025, within(2e-4));
        assertThat(fit.shape().value()).isCloseTo(1, within(1e-5));
    }

    /** Without lives the prior comes back; with many failures it has no say. */
    @Test
    void betweenThePriorAndTheData() {
        WeakPriorFit none = WeakPriorFitter.of(WeakPrior.declared()).fit(LifetimeSample.of(List.<Lifetime>of()));
        assertThat(none.quantile(0.5).lower()).isCloseTo(3 * YEAR, within(2.0));
        assertThat(none.quantile(0.5).upper()).isCloseTo(20 * YEAR, within(5.0));
        assertThat(none.shape().lower()).isCloseTo(1, within(2e-3));
        assertThat(none.medianLife().fromPrior()).isCloseTo(1, within(1e-6));
        assertThat(none.shapeAgainstPrior().moved()).isCloseTo(0, within(1e-6));

        LifetimeSample many = fleet(new Random(3), 3000, 6, 4);
        ParametricFit plain = ParametricFitter.of(Family.WEIBULL).fit(many);
        WeakPriorFit fit = WeakPriorFitter.of(new WeakPrior(1, 1e8, 0.01, 100)).fit(many);
        assertThat(fit.modeShape()).isCloseTo(plain.shape().value(), within(1e-3));
        assertThat(fit.modeScale() / plain.scale().value()).isCloseTo(1, within(1e-4));
        assertThat(fit.modeErrors()[0]).isCloseTo(Math.sqrt(plain.varLogScale()), within(1e-4));
        assertThat(fit.survival(1826).lower()).isCloseTo(plain.survival(1826).lower(), within(1e-3));
        assertThat(fit.medianLife().fromPrior()).isLessThan(0.001);
    }

    /** No failure at all is news too: the life is longer than the prior held likely at its low end. */
    @Test
    void noFailuresStillTellSomething() {
        List<Lifetime> alive = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            alive.add(Lifetime.censored(0, 1200));
        }
        WeakPriorFit fit = WeakPriorFitter.of(WeakPrior.declared()).fit(LifetimeSample.of(alive));

        assertThat(fit.quantile(0.5).lower()).isGreaterThan(1.5 * 3 * YEAR);
        assertThat(fit.survival(1200).lower()).isBetween(0.97, 1.0);
        assertThat(fit.medianLife().moved()).isPositive();
    }

    /**
     * 50 vehicles of which 4 sensors failed: the limits of the law are wide and hold the truth; the share of simulated fleets in
     * which they do is in docs/coverage.md.
     */
    @Test
    void fiftyVehiclesWithFourFailures() {
        LifetimeSample small = null;
        for (int seed = 0; small == null; seed++) {
            LifetimeSample tried = fleet(new Random(seed), 200, 3, 0.7);
            small = tried.failures() == 4 ? tried : null;
        }
        WeakPriorFit fit = WeakPriorFitter.of(WeakPrior.declared()).fit(small);

        double truth = Math.exp(-Math.pow(5 * YEAR / SCALE, SHAPE));
        assertThat(truth)
                .isBetween(
                        fit.survival(5 * YEAR).lower(), fit.survival(5 * YEAR).upper());
        assertThat(fit.survival(5 * YEAR).upper() - fit.survival(5 * YEAR).lower())
                .isGreaterThan(0.15);
        assertThat(fit.shapeAgainstPrior().fromPrior()).isBetween(0.2, 1.0);
        assertThat(fit.quantile(0.5).lower()).isLessThan(SCALE);

        CohortLadder plain = CohortLadder.withDefaults();
        assertThat(plain.fit(Map.of("cars", small)).get("cars").life()).isEmpty();
        SortedMap<String, CohortLife> rows = plain.with(WeakPrior.declared()).fit(Map.of("cars", small));
        for (String row : List.of("cars", CohortLadder.POOL)) {
            assertThat(rows.get(row).rung()).isEqualTo(CohortLadder.Rung.WEAK_PRIOR);
            assertThat(rows.get(row).fit().note()).contains("4 failures");
        }
        CohortFit pool = rows.get(CohortLadder.POOL).fit();
        assertThat(pool.note())
                .contains("median life 3 to 20 years, shape 1 to 5")
                .contains("the prior's part of what is known is");
        assertThat(pool.law().shares().prior())
                .isCloseTo(fit.medianLife().fromPrior(), within(1e-12))
                .isCloseTo(1 - pool.law().shares().own(), within(1e-12));
        assertThat(rows.get("cars").fit().law().shares().own()).isZero();
        LifeLaw law = rows.get("cars").life().orElseThrow();
        double[] limits = law.failureWithinLimits(4 * YEAR, 365, 1, 0);
        Estimate exact = fit.failureWithin(4 * YEAR, 365);
        assertThat(limits[0] / exact.lower()).isBetween(0.7, 1.4);
        assertThat(limits[1] / exact.upper()).isBetween(0.7, 1.4);
    }

    /** A fleet that has its own law never hears of the prior. */
    @Test
    void enoughFailuresNeedNoPrior() {
        Map<String, LifetimeSample> fleet = Map.of("cars", fleet(new Random(5), 400, 6, 3));
        CohortLife with = CohortLadder.withDefaults()
                .with(WeakPrior.declared())
                .fit(fleet)
                .get("cars");
        CohortLife without = CohortLadder.withDefaults().fit(fleet).get("cars");

        assertThat(with.fit()).isEqualTo(without.fit());
        assertThat(with.rung()).isEqualTo(CohortLadder.Rung.OWN_FIT);
    }

    /** A prior of days against lives of millions of years: the search finds no mode, and says so. */
    @Test
    void withoutAModeItSaysSo() {
        LifetimeSample old = LifetimeSample.of(List.of(Lifetime.exact(0, 2_000_000_000)));
        WeakPriorFit fit =
                WeakPriorFitter.of(new WeakPrior(1, 1.0001, 50, 50.0001)).fit(old);
        assertThat(fit.report().status()).isEqualTo(FitStatus.NOT_CONVERGED);
        assertThat(fit.report().cause()).contains("no mode of the posterior of 1 failure among 1 life was found");
        assertThatThrownBy(fit::life).hasMessageContaining("NOT_CONVERGED");
        assertThatThrownBy(fit::shape).hasMessageContaining("NOT_CONVERGED");
    }

    @Test
    void aPriorFarFromTheDataIsNamed() {
        SortedMap<String, CohortLife> rows = CohortLadder.withDefaults()
                .with(new CohortLadder.Settings(20, 500, 5))
                .with(new WeakPrior(40 * YEAR, 60 * YEAR, 1, 5))
                .fit(Map.of("cars", fleet(new Random(6), 400, 3, 1)));

        assertThat(rows.get(CohortLadder.POOL).fit().note()).contains("far from the prior: declare another");
        assertThatThrownBy(() -> new WeakPrior(5, 3, 1, 2)).hasMessageContaining("rising positive limits");
    }

    /** Sensors met at a uniform age, looked at each half year; written apart from the estimators. */
    static LifetimeSample fleet(Random random, int sensors, double latestEntry, double followUp) {
        return fleet(random, sensors, latestEntry, followUp, new WeibullLife(SHAPE, SCALE, 0, 0, 0));
    }

    static LifetimeSample fleet(Random random, int sensors, double latestEntry, double followUp, WeibullLife law) {
        List<Lifetime> lives = new ArrayList<>();
        for (int i = 0; i < sensors; i++) {
            int entry = (int) (latestEntry * YEAR * random.nextDouble());
            double life = law.scaleDays() * Math.pow(-Math.log(1 - random.nextDouble()), 1 / law.shape());
            if (life <= entry) {
                continue;
            }
            int lower = entry;
            int upper = Lifetime.NEVER;
            for (int visit = entry + 90 + random.nextInt(180);
                    visit <= entry + followUp * YEAR;
                    visit += 90 + random.nextInt(180)) {
                if (life <= visit) {
                    upper = visit;
                    break;
                }
                lower = visit;
            }
            lives.add(new Lifetime(entry, lower, upper, 1));
        }
        return LifetimeSample.of(lives);
    }
}
