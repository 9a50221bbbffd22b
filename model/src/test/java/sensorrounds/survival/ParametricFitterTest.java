package sensorrounds.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import sensorrounds.survival.LifeLikelihood.Derivatives;
import sensorrounds.survival.ParametricFitter.ScalePrior;

/** Identities, closed forms and refusals; agreement with other programs is in ParametricReferenceTest. */
class ParametricFitterTest {
    private static final ParametricFitter WEIBULL = ParametricFitter.of(Family.WEIBULL);
    private static final List<Lifetime> MIXED = List.of(
            Lifetime.exact(0, 700),
            Lifetime.exact(200, 1500),
            Lifetime.interval(0, 0, 300),
            Lifetime.interval(0, 400, 900),
            Lifetime.interval(500, 500, 1100),
            Lifetime.interval(900, 1300, 2200),
            Lifetime.censored(0, 1000),
            Lifetime.censored(800, 2500),
            Lifetime.censored(100, 100));

    private static void same(ParametricFit actual, ParametricFit expected, double rel) {
        assertThat(actual.shape().value())
                .isCloseTo(
                        expected.shape().value(), within(rel * expected.shape().value()));
        assertThat(actual.scale().value())
                .isCloseTo(
                        expected.scale().value(), within(rel * expected.scale().value()));
        assertThat(actual.varLogScale()).isCloseTo(expected.varLogScale(), within(10 * rel * expected.varLogScale()));
    }

    @ParameterizedTest
    @EnumSource(Family.class)
    void derivativesAgreeWithFiniteDifferences(Family family) {
        LifeLikelihood likelihood = new LifeLikelihood(family.law(), LifetimeSample.of(MIXED), 7);
        double h = 1e-5;
        for (double logScale : new double[] {-0.6, 0.1, 0.9}) {
            for (double logShape : new double[] {-0.7, 0, 1.1}) {
                Derivatives at = likelihood.at(logScale, logShape);
                Derivatives right = likelihood.at(logScale + h, logShape);
                Derivatives left = likelihood.at(logScale - h, logShape);
                Derivatives above = likelihood.at(logScale, logShape + h);
                Derivatives below = likelihood.at(logScale, logShape - h);
                close(at.s, (right.value - left.value) / (2 * h));
                close(at.k, (above.value - below.value) / (2 * h));
                close(at.ss, (right.s - left.s) / (2 * h));
                close(at.sk, (right.k - left.k) / (2 * h));
                close(at.kk, (above.k - below.k) / (2 * h));
            }
        }
    }

    private static void close(double analytic, double numeric) {
        assertThat(analytic).isCloseTo(numeric, within(1e-6 * (1 + Math.abs(numeric))));
    }

    /** Exponential with delayed entry in closed form: scale = exposure / failures (Klein and Moeschberger, 3.5). */
    @Test
    void exponentialInClosedForm() {
        LifetimeSample sample = LifetimeSample.of(
                List.of(Lifetime.exact(100, 400), Lifetime.exact(0, 250), Lifetime.censored(50, 600)));
        ParametricFit fit = ParametricFitter.of(Family.EXPONENTIAL).fit(sample);
        assertThat(fit.scale().value()).isCloseTo((300 + 250 + 550) / 2.0, within(1e-9));
        assertThat(fit.varLogScale()).isCloseTo(1 / 2.0, within(1e-12));
        // log L = -2 log(550) - 1100 / 550.
        assertThat(fit.logLikelihood()).isCloseTo(-2 * Math.log(550) - 2, within(1e-12));
    }

    /**
     * Weibull by hand: exact failures at 1 and 4, nothing censored. The score of the shape gives 1/b + log(4)/2 = 4^b
     * log(4) / (1 + 4^b); with u = 2^b, log u (u^2 - 1) / (u^2 + 1) = 1, that is y tanh(y) = 1 for y = b log 2, so that
     * b = 1.19967864 / log 2 (y: the root of coth y = y).
     */
    @Test
    void twoFailuresSolvedByHand() {
        LifetimeSample sample = LifetimeSample.of(List.of(Lifetime.exact(0, 1), Lifetime.exact(0, 4)));
        ParametricFit fit = WEIBULL.fit(sample);
        double shape = 1.199678640257734 / Math.log(2);
        assertThat(fit.shape().value()).isCloseTo(shape, within(1e-12));
        assertThat(fit.scale().value()).isCloseTo(Math.pow((1 + Math.pow(4, shape)) / 2, 1 / shape), within(1e-12));
    }

    @Test
    void aWeightIsTheLifeSeenThatOftenAndOrderDoesNotMatter() {
        List<Lifetime> repeated = new ArrayList<>();
        List<Lifetime> weighted = new ArrayList<>();
        int times = 1;
        for (Lifetime life : MIXED) {
            weighted.add(0, new Lifetime(life.entry(), life.lower(), life.upper(), times));
            for (int i = 0; i < times; i++) {
                repeated.add(life);
            }
            times = times % 3 + 1;
        }
        ParametricFit one = WEIBULL.fit(LifetimeSample.of(weighted));
        same(one, WEIBULL.fit(LifetimeSample.of(repeated)), 0);
        assertThat(one.shape().value())
                .isNotEqualTo(WEIBULL.fit(LifetimeSample.of(MIXED)).shape().value());
    }

    @ParameterizedTest
    @EnumSource(Family.class)
    void theUnitOfTimeScalesTheScaleAndNothingElse(Family family) {
        LifetimeSample days = LifetimeSample.of(MIXED);
        int n = days.size();
        for (double unit : new double[] {1e-9, 365.25, 1e9}) {
            double[][] columns = new double[4][n];
            for (int i = 0; i < n; i++) {
                columns[0][i] = days.entry(i) * unit;
                columns[1][i] = days.lower(i) * unit;
                columns[2][i] = days.upper(i) * unit;
                columns[3][i] = days.weight(i);
            }
            ParametricFit inDays = ParametricFitter.of(family).fit(days);
            ParametricFit scaled =
                    ParametricFitter.of(family).fit(LifetimeSample.of(columns[0], columns[1], columns[2], columns[3]));
            assertThat(scaled.scale().value() / unit)
                    .isCloseTo(
                            inDays.scale().value(), within(1e-8 * inDays.scale().value()));
            assertThat(scaled.shape().value()).isCloseTo(inDays.shape().value(), within(1e-8));
            // Two exact failures, whose density is per unit of time.
            assertThat(scaled.logLikelihood()).isCloseTo(inDays.logLikelihood() - 2 * Math.log(unit), within(1e-8));
        }
    }

    @Test
    void aNarrowIntervalIsAnExactAge() {
        double[] at = {400, 900, 1300, 1700, 2600};
        double[] entry = {0, 100, 700, 0, 1500};
        double[] weight = {1, 1, 1, 1, 1};
        double[] low = new double[5];
        double[] high = new double[5];
        for (int i = 0; i < 5; i++) {
            low[i] = at[i] - 0.005;
            high[i] = at[i] + 0.005;
        }
        same(
                WEIBULL.fit(LifetimeSample.of(entry, low, high, weight)),
                WEIBULL.fit(LifetimeSample.of(entry, at, at, weight)),
                1e-6);
    }

    @Test
    void entryChangesTheAnswerAndEntryAtBirthDoesNot() {
        LifetimeSample delayed = LifetimeSample.of(MIXED);
        LifetimeSample fromBirth = LifetimeSample.of(MIXED.stream()
                .map(life -> new Lifetime(0, life.lower(), life.upper(), 1))
                .toList());
        assertThat(WEIBULL.fit(fromBirth).scale().value())
                .isGreaterThan(1.05 * WEIBULL.fit(delayed).scale().value());
    }

    @Test
    void degenerateInputIsNamedAndGivesNoLaw() {
        LifetimeSample none = LifetimeSample.of(List.of());
        refused(WEIBULL.fit(none), FitStatus.NO_LIVES, "no lives");
        refused(
                WEIBULL.fit(LifetimeSample.of(List.of(Lifetime.censored(0, 500)))),
                FitStatus.NO_FAILURES,
                "lower bound");
        refused(
                WEIBULL.fit(LifetimeSample.of(List.of(Lifetime.exact(0, 400), Lifetime.censored(0, 500)))),
                FitStatus.ONE_FAILURE,
                "single failure");
        // All fail at one age: the shape runs to infinity.
        refused(
                WEIBULL.fit(LifetimeSample.of(List.of(new Lifetime(0, 400, 400, 5), Lifetime.censored(0, 300)))),
                FitStatus.FLAT_LIKELIHOOD,
                "no finite maximum");
        // All fail within one interval: any law with all its mass there is as good.
        refused(
                WEIBULL.fit(LifetimeSample.of(List.of(new Lifetime(0, 100, 800, 9)))),
                FitStatus.FLAT_LIKELIHOOD,
                "one interval");
        // Each was good on the day it entered, the only day it was seen good, and failed at once: no scale is too
        // short.
        refused(
                WEIBULL.fit(
                        LifetimeSample.of(List.of(Lifetime.interval(300, 300, 600), Lifetime.interval(500, 500, 900)))),
                FitStatus.FLAT_LIKELIHOOD,
                "failures");
        refused(
                WEIBULL.fit(LifetimeSample.of(List.of(Lifetime.censored(9, 9)))),
                FitStatus.EMPTY_WINDOWS,
                "left on the day it entered");
    }

    private static void refused(ParametricFit fit, FitStatus status, String words) {
        assertThat(fit.status()).as(fit.cause()).isEqualTo(status);
        assertThat(fit.cause()).contains(words);
        assertThatThrownBy(fit::life).isInstanceOf(IllegalStateException.class).hasMessageContaining(status.name());
        assertThatThrownBy(fit::shape).isInstanceOf(IllegalStateException.class);
    }

    @Test
    void hugeAgesAndHeavyCensoringStillConverge() {
        int far = Lifetime.NEVER - 1;
        ParametricFit old = WEIBULL.fit(LifetimeSample.of(
                List.of(Lifetime.exact(0, far), Lifetime.exact(0, far / 3), Lifetime.interval(far / 4, far / 2, far))));
        assertThat(old.converged()).as(old.cause()).isTrue();
        // Three failures among a million and three lives.
        ParametricFit rare = WEIBULL.fit(LifetimeSample.of(List.of(
                Lifetime.exact(0, 200),
                Lifetime.exact(0, 500),
                Lifetime.exact(0, 900),
                new Lifetime(0, 1000, Lifetime.NEVER, 1e6))));
        assertThat(rare.converged()).as(rare.cause()).isTrue();
        assertThat(1 - rare.survival(1000).value()).isCloseTo(3e-6, within(1e-8));
    }

    /** For exact and right-censored lives the shrunk relative hazard is (prior + failures) / (prior + expected). */
    @Test
    void thePriorOnTheScaleIsConjugate() {
        LifetimeSample sample =
                LifetimeSample.of(List.of(Lifetime.exact(100, 900), new Lifetime(0, 1000, Lifetime.NEVER, 30)));
        WeibullLife centre = new WeibullLife(2, 3000, 0, 0, 0);
        double expected =
                centre.cumulativeHazard(900) - centre.cumulativeHazard(100) + 30 * centre.cumulativeHazard(1000);
        double relativeHazard = (5 + 1) / (5 + expected);
        ParametricFit fit =
                WEIBULL.withShape(2, 0).with(new ScalePrior(3000, 5)).fit(sample);
        assertThat(Math.pow(3000 / fit.scale().value(), 2)).isCloseTo(relativeHazard, within(1e-10));
        assertThat(fit.varLogScale()).isCloseTo(1 / 6.0 / 4, within(1e-10));
        // Without a failure the prior alone keeps the scale finite.
        LifetimeSample alive = LifetimeSample.of(List.of(new Lifetime(0, 1000, Lifetime.NEVER, 30)));
        ParametricFit none =
                WEIBULL.withShape(2, 0).with(new ScalePrior(3000, 5)).fit(alive);
        assertThat(Math.pow(3000 / none.scale().value(), 2)).isCloseTo(5 / (5 + 30 / 9.0), within(1e-10));
        assertThatThrownBy(() -> WEIBULL.with(new ScalePrior(3000, 5))).hasMessageContaining("withShape");
    }

    /** Refitting at shapes moved by one standard deviation must move the scale as the covariance says. */
    @Test
    void theVarianceOfAGivenShapeIsCarriedIntoTheScale() {
        LifetimeSample sample = LifetimeSample.of(MIXED);
        double step = 1e-4;
        double up = Math.log(
                WEIBULL.withShape(Math.exp(step), 0).fit(sample).scale().value());
        double down = Math.log(
                WEIBULL.withShape(Math.exp(-step), 0).fit(sample).scale().value());
        double slope = (up - down) / (2 * step);
        ParametricFit fixed = WEIBULL.withShape(1, 0).fit(sample);
        ParametricFit fit = WEIBULL.withShape(1, 0.04).fit(sample);
        assertThat(fit.covLogs()).isCloseTo(slope * 0.04, within(1e-7));
        assertThat(fit.varLogScale()).isCloseTo(fixed.varLogScale() + slope * slope * 0.04, within(1e-7));
        assertThat(fit.varLogShape()).isEqualTo(0.04);
    }

    @Test
    void survivalLimitsHoldTheCurveAndAgreeWithTheLaw() {
        ParametricFit fit = WEIBULL.fit(LifetimeSample.of(MIXED));
        for (double age : new double[] {1, 400, 2000, 9000}) {
            Estimate s = fit.survival(age);
            double[] limits = fit.life().survivalLimits(age);
            assertThat(s.value()).isCloseTo(fit.life().survival(age), within(1e-12));
            assertThat(s.lower()).isLessThan(s.value()).isCloseTo(limits[0], within(1e-9));
            assertThat(s.upper()).isGreaterThan(s.value()).isCloseTo(limits[1], within(1e-9));
        }
        assertThatThrownBy(() -> ParametricFitter.of(Family.LOGNORMAL)
                        .fit(LifetimeSample.of(MIXED))
                        .life())
                .hasMessageContaining("LOGNORMAL");
    }
}
