package sensorrounds.turnbull;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sensorrounds.survival.KaplanMeier;
import sensorrounds.survival.KaplanMeierFit;
import sensorrounds.survival.Lifetime;
import sensorrounds.survival.LifetimeSample;
import sensorrounds.survival.Span;
import sensorrounds.turnbull.TurnbullFit.Status;

/** Identities and limits, the curve's own rules, and inputs that break maximisers. */
class TurnbullTest {
    private static TurnbullFit fit(Lifetime... lives) {
        return Turnbull.withDefaults().fit(LifetimeSample.of(List.of(lives)));
    }

    /** Exact and right-censored lives; with entry, a few early entrants keep the risk set from emptying. */
    private static List<Lifetime> exactLives(long seed, int n, boolean delayed) {
        Random random = new Random(seed);
        List<Lifetime> lives = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            int entry = delayed && i >= n / 3 ? random.nextInt(60) : 0;
            int exit = entry + 1 + random.nextInt(100);
            lives.add(random.nextInt(3) == 0 ? Lifetime.censored(entry, exit) : Lifetime.exact(entry, exit));
        }
        lives.add(Lifetime.censored(0, 200));
        return lives;
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void isKaplanMeierWhereFailuresAreExact(boolean delayed) {
        LifetimeSample sample = LifetimeSample.of(exactLives(3, 200, delayed));
        TurnbullFit turnbull = Turnbull.withDefaults().fit(sample);
        KaplanMeierFit kaplanMeier = KaplanMeier.withDefaults().fit(sample);
        assertThat(kaplanMeier.steps()).hasSizeGreaterThan(50);
        for (KaplanMeierFit.Step step : kaplanMeier.steps()) {
            assertThat(turnbull.survival().at(step.age())).isCloseTo(step.survival(), within(1e-9));
        }
        assertThat(turnbull.uniqueness()).isEqualTo(Uniqueness.UNIQUE);
    }

    @Test
    void ignoringEntryOrTakingDetectionForFailureWouldDiffer() {
        List<Lifetime> lives = exactLives(3, 200, true);
        List<Lifetime> fromNew = lives.stream()
                .map(life -> new Lifetime(0, life.lower(), life.upper(), 1))
                .toList();
        double right =
                Turnbull.withDefaults().fit(LifetimeSample.of(lives)).survival().at(60);
        double wrong = Turnbull.withDefaults()
                .fit(LifetimeSample.of(fromNew))
                .survival()
                .at(60);
        assertThat(wrong - right).isGreaterThan(0.1);
    }

    @Test
    void weightsAreRepetitionsAndOrderDoesNotMatter() {
        List<Lifetime> lives = Rounds.simulate(5, 60, 30, 7, 0, 12);
        List<Lifetime> repeated = new ArrayList<>();
        List<Lifetime> weighted = new ArrayList<>();
        for (int i = 0; i < lives.size(); i++) {
            int times = 1 + i % 3;
            repeated.addAll(Collections.nCopies(times, lives.get(i)));
            Lifetime life = lives.get(i);
            weighted.add(new Lifetime(life.entry(), life.lower(), life.upper(), times));
        }
        Collections.shuffle(repeated, new Random(1));
        TurnbullFit first = Turnbull.withDefaults().fit(LifetimeSample.of(repeated));
        TurnbullFit second = Turnbull.withDefaults().fit(LifetimeSample.of(weighted));
        assertThat(second.intervals()).isEqualTo(first.intervals());
        TurnbullFit plain = Turnbull.withDefaults().fit(LifetimeSample.of(lives));
        assertThat(plain.logLikelihood()).isNotCloseTo(first.logLikelihood(), within(1.0));
    }

    @Test
    void anEntryBeforeEveryFailureIsNoTruncation() {
        LifetimeSample fromNew = Rounds.sample(7, 80, 30, 0, 12);
        double[] entry = new double[fromNew.size()];
        double[] lower = new double[fromNew.size()];
        double[] upper = new double[fromNew.size()];
        double[] weight = new double[fromNew.size()];
        for (int i = 0; i < entry.length; i++) {
            entry[i] = 10;
            lower[i] = Math.max(10, fromNew.lower(i));
            upper[i] = fromNew.upper(i);
            weight[i] = fromNew.weight(i);
        }
        TurnbullFit all = Turnbull.withDefaults().fit(fromNew);
        TurnbullFit later = Turnbull.withDefaults().fit(LifetimeSample.of(entry, lower, upper, weight));
        assertThat(later.logLikelihood()).isCloseTo(all.logLikelihood(), within(1e-8));
        assertThat(later.survival().from()).isEqualTo(10);
        assertThat(all.survival().from()).isZero();
        assertThatThrownBy(() -> later.survival().at(5)).hasMessageContaining("known from age 10.0");
    }

    /** A narrow interval around an exact age; stretching time. */
    @Test
    void narrowIntervalsTendToExactAgesAndTheUnitOfTimeDoesNotMatter() {
        List<Lifetime> lives = exactLives(9, 100, true);
        int n = lives.size();
        double[] entry = new double[n];
        double[] lower = new double[n];
        double[] upper = new double[n];
        double[] weight = new double[n];
        for (int i = 0; i < n; i++) {
            entry[i] = lives.get(i).entry() * 7.0;
            lower[i] = lives.get(i).lower() * 7.0 - (lives.get(i).failed() ? 1e-3 : 0);
            upper[i] = lives.get(i).failed() ? lives.get(i).upper() * 7.0 : Double.POSITIVE_INFINITY;
            weight[i] = 1;
        }
        TurnbullCurve exact =
                Turnbull.withDefaults().fit(LifetimeSample.of(lives)).survival();
        TurnbullCurve narrow = Turnbull.withDefaults()
                .fit(LifetimeSample.of(entry, lower, upper, weight))
                .survival();
        for (int age = 5; age <= 100; age += 5) {
            assertThat(narrow.at(age * 7.0)).isCloseTo(exact.at(age), within(1e-9));
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void agreesWithThePlainAlgorithmUnderTruncation(long seed) {
        LifetimeSample sample = Rounds.sample(seed, 40, 60, seed % 2 == 0 ? 2 : 0, 8);
        TurnbullFit fit = Turnbull.withDefaults().fit(sample);
        assertThat(fit.converged()).as(fit.cause()).isTrue();
        double[] lower =
                fit.intervals().stream().mapToDouble(InnermostInterval::lower).toArray();
        double[] upper =
                fit.intervals().stream().mapToDouble(InnermostInterval::upper).toArray();
        PlainEm em = new PlainEm(sample, lower, upper);
        em.iterate(200);
        double early = em.logLikelihood();
        em.iterate(40_000);
        assertThat(fit.logLikelihood()).isGreaterThanOrEqualTo(em.logLikelihood() - 1e-9);
        assertThat(em.logLikelihood()).isCloseTo(fit.logLikelihood(), within(1e-5));
        assertThat(early).as("the plain algorithm stops short early on").isLessThan(fit.logLikelihood() - 1e-7);
        if (fit.uniqueness() == Uniqueness.UNIQUE) {
            for (int j = 0; j < lower.length; j++) {
                assertThat(em.survival()[j]).isCloseTo(fit.intervals().get(j).survivalAfter(), within(5e-3));
            }
        }
    }

    /** The gap is a bound: a search cut short says how much it is missing, and is refused. */
    @Test
    void aSearchCutShortKnowsWhatItIsMissing() {
        LifetimeSample sample = Rounds.sample(11, 500, 7, 2, 8);
        double best = Turnbull.withDefaults().fit(sample).logLikelihood();
        for (int iterations : new int[] {1, 3, 10, 14}) {
            TurnbullFit cut =
                    Turnbull.withDefaults().withMaxIterations(iterations).fit(sample);
            assertThat(cut.status()).isEqualTo(Status.NOT_CONVERGED);
            assertThat(cut.cause()).contains("below its maximum");
            assertThatThrownBy(cut::logLikelihood).hasMessageContaining("NOT_CONVERGED");
            assertThatThrownBy(cut::survival).isInstanceOf(IllegalStateException.class);
            TurnbullFit loose = Turnbull.withDefaults()
                    .withMaxIterations(iterations)
                    .withTolerance(1e6)
                    .fit(sample);
            assertThat(best - loose.logLikelihood()).isBetween(0.0, loose.gap());
        }
    }

    @Test
    void theCurveKnowsItsDomainAndWhatItDoesNotKnowWithin() {
        TurnbullFit fit = fit(
                Lifetime.interval(0, 10, 20),
                Lifetime.interval(0, 10, 20),
                Lifetime.exact(0, 30),
                Lifetime.censored(0, 40));
        TurnbullCurve curve = fit.survival();
        assertThat(curve.at(10)).isEqualTo(1);
        assertThat(curve.at(20)).isCloseTo(0.5, within(1e-12));
        assertThat(curve.lower(15)).isCloseTo(0.5, within(1e-12));
        assertThat(curve.upper(15)).isEqualTo(1);
        assertThat(curve.determinedAt(15)).isFalse();
        assertThat(curve.determinedAt(25)).isTrue();
        assertThatThrownBy(() -> curve.at(15))
                .hasMessageContaining("between 10.0 and 20.0")
                .hasMessageContaining("lower and upper");
        assertThat(curve.at(30)).isCloseTo(0.25, within(1e-12));
        assertThat(curve.upper(29.9)).isCloseTo(0.5, within(1e-12));
        assertThat(curve.to()).isEqualTo(40);
        assertThatThrownBy(() -> curve.upper(41)).hasMessageContaining("from age 0.0 to 40.0, not at 41.0");
        assertThat(curve.quantile(0.5)).contains(new Span(10, 20));
        assertThat(curve.quantile(0.6)).contains(new Span(30, 30));
        assertThat(curve.quantile(0.9)).isEmpty();
        assertThatThrownBy(() -> curve.quantile(1)).hasMessageContaining("0 < p < 1");
        assertThat(fit.firstSupportedAge()).isEqualTo(10);
        assertThat(fit.survivalGivenAliveAt(20).at(30)).isCloseTo(0.5, within(1e-12));
        assertThatThrownBy(() -> fit.survivalGivenAliveAt(15)).hasMessageContaining("inside a step");
        assertThatThrownBy(() -> fit.survivalGivenAliveAt(40)).hasMessageContaining("below 40.0");
    }

    @Test
    void inputsThatBreakMaximisers() {
        assertThat(fit().status()).isEqualTo(Status.NO_LIVES);
        assertThatThrownBy(() -> fit().intervals()).hasMessageContaining("empty");
        assertThat(fit().gap()).isNaN();

        TurnbullFit nobodyFailed = fit(Lifetime.censored(0, 50), Lifetime.censored(10, 80));
        assertThat(nobodyFailed.converged()).isTrue();
        assertThat(nobodyFailed.survival().at(80)).isEqualTo(1);
        assertThat(nobodyFailed.survival().to()).isEqualTo(80);
        assertThat(nobodyFailed.logLikelihood()).isZero();

        TurnbullFit allFailed = fit(Lifetime.exact(0, 50));
        assertThat(allFailed.survival().at(50)).isZero();
        assertThat(allFailed.standardErrorAfter(0)).isNaN();

        TurnbullFit allBeforeTheFirstLook = fit(Lifetime.interval(0, 0, 5), Lifetime.interval(0, 0, 9));
        assertThat(allBeforeTheFirstLook.survival().at(5)).isZero();

        // Weights nine orders of magnitude apart.
        TurnbullFit uneven = fit(
                new Lifetime(0, 5, 15, 1e9),
                new Lifetime(0, 10, 20, 1),
                new Lifetime(0, 20, Lifetime.NEVER, 1e9),
                new Lifetime(0, 0, 12, 1e-3));
        assertThat(uneven.converged()).as(uneven.cause()).isTrue();
        assertThat(uneven.survival().at(20)).isCloseTo(0.5, within(1e-6));

        assertThatThrownBy(() -> Turnbull.withDefaults().withTolerance(Double.NaN))
                .hasMessageContaining("positive");
        assertThatThrownBy(() -> Turnbull.withDefaults().withMaxIterations(0)).hasMessageContaining("not 0");
    }

    /** Small random samples of every kind of life: each is certified, or named as collapsed. */
    @Test
    void randomSamplesOfEveryKindAreCertified() {
        int collapsed = 0;
        for (int seed = 0; seed < 3000; seed++) {
            Random random = new Random(seed);
            List<Lifetime> lives = new ArrayList<>();
            int n = 1 + random.nextInt(30);
            int scale = seed % 2 == 0 ? 12 : 1000;
            for (int i = 0; i < n; i++) {
                int entry = random.nextInt(3) == 0 ? 0 : random.nextInt(scale);
                int lower = entry + random.nextInt(scale);
                switch (random.nextInt(4)) {
                    case 0 -> lives.add(Lifetime.censored(entry, lower));
                    case 1 -> lives.add(Lifetime.exact(entry, lower + 1));
                    case 2 -> lives.add(Lifetime.interval(entry, entry, lower + 1));
                    default -> lives.add(Lifetime.interval(entry, lower, lower + 1 + random.nextInt(scale)));
                }
            }
            TurnbullFit fit = Turnbull.withDefaults().fit(LifetimeSample.of(lives));
            assertThat(fit.status()).as("seed %s: %s", seed, fit.cause()).isNotEqualTo(Status.NOT_CONVERGED);
            assertThat(fit.intervals().stream()
                            .mapToDouble(InnermostInterval::mass)
                            .sum())
                    .isCloseTo(1, within(1e-9));
            assertThat(fit.collapsedAt().isPresent()).isEqualTo(fit.status() == Status.COLLAPSED);
            collapsed += fit.status() == Status.COLLAPSED ? 1 : 0;
        }
        assertThat(collapsed).isBetween(300, 2000);
    }
}
