package sensorrounds.causes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sensorrounds.causes.CauseHazardFit.Status;
import sensorrounds.survival.Estimate;
import sensorrounds.survival.Family;
import sensorrounds.survival.ParametricFit;
import sensorrounds.survival.ParametricFitter;
import sensorrounds.survival.PiecewiseExponentialFit;
import sensorrounds.survival.PiecewiseExponentialFitter;
import sensorrounds.survival.WeibullLife;

/** Hand-solved cases, identities, limits, recovery and refusals of hazards by cause with causes unknown. */
class CauseHazardFitterTest {
    private static final Set<String> ANY = Set.copyOf(MaskedLives.CAUSES);

    private static <C> MaskedLife<C> failed(double age, Set<C> candidates) {
        return new MaskedLife<>(0, age, age, candidates, 1);
    }

    private static <C> MaskedLife<C> alive(double age) {
        return new MaskedLife<>(0, age, Double.POSITIVE_INFINITY, Set.of(), 1);
    }

    /**
     * On paper: constant hazards, 100 years at risk, 3 failures by a, 1 by b, 2 of unknown cause. The likelihood is a^3 b (a + b)^2
     * exp(-100 (a + b)): the sum is 6 / 100, shared 3 : 1, so a = .045 and b = .015 (Miyakawa 1984, IEEE Trans. Reliability 33:293,
     * from memory).
     */
    @Test
    void unknownFailuresAreSharedAsTheKnownOnes() {
        List<MaskedLife<String>> lives = List.of(
                failed(4, Set.of("a")),
                failed(11, Set.of("a")),
                failed(15, Set.of("a")),
                failed(10, Set.of("b")),
                failed(20, Set.of("a", "b")),
                failed(15, Set.of("a", "b")),
                alive(25));
        CauseHazardFit<String> fit = CauseHazardFitter.withBands().fit(MaskedSample.of(List.of("a", "b"), lives));

        assertThat(fit.hazard("a", 3).value()).isCloseTo(0.045, within(1e-14));
        assertThat(fit.hazard("b", 30).value()).isCloseTo(0.015, within(1e-14));
        assertThat(fit.failures("a")).isCloseTo(4.5, within(1e-12));
        assertThat(fit.maskedShare()).isCloseTo(1 / 3.0, within(1e-15));
        assertThat(fit.incidence("b", 10).value()).isCloseTo(0.25 * -Math.expm1(-0.6), within(1e-14));
        assertThat(fit.causeOf(5, 9, Set.of("a", "b")).get("a")).isCloseTo(0.75, within(1e-14));
        // Information of log a: 3 known, and 2 (a / (a + b)) (b / (a + b)) less from sharing; by inverting the 2 x 2
        // matrix.
        double i11 = 4.5 - 2 * 0.75 * 0.25;
        double i22 = 1.5 - 2 * 0.75 * 0.25;
        double i12 = 2 * 0.75 * 0.25;
        double variance = i22 / (i11 * i22 - i12 * i12);
        assertThat(Math.log(fit.hazard("a", 3).upper() / 0.045) / 1.959963984540054)
                .isCloseTo(Math.sqrt(variance), within(1e-10));
    }

    /** On paper: no cause is ever known, but each failure has one ruled out; sums of two rates are counts over half the time. */
    @Test
    void pairsAloneTellThreeCauses() {
        List<MaskedLife<String>> lives = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            lives.add(failed(10, Set.of("a", "b")));
        }
        for (int i = 0; i < 4; i++) {
            lives.add(failed(10, Set.of("a", "c")));
        }
        for (int i = 0; i < 3; i++) {
            lives.add(failed(10, Set.of("b", "c")));
        }
        lives.add(alive(80));
        CauseHazardFit<String> fit = CauseHazardFitter.withBands().fit(MaskedSample.of(List.of("a", "b", "c"), lives));

        assertThat(fit.hazard("a", 1).value()).isCloseTo((5 + 4 - 3) / 200.0, within(1e-12));
        assertThat(fit.hazard("b", 1).value()).isCloseTo((5 + 3 - 4) / 200.0, within(1e-12));
        assertThat(fit.hazard("c", 1).value()).isCloseTo((4 + 3 - 5) / 200.0, within(1e-12));
    }

    @Test
    void noneUnknownIsEachCauseByItselfWithTheOthersCensored() {
        MaskedSample<String> sample = MaskedLives.of(1, 400, 0, 0, true);
        CauseHazardFit<String> fit = CauseHazardFitter.weibulls().fit(sample);

        for (String cause : MaskedLives.CAUSES) {
            ParametricFit alone =
                    ParametricFitter.of(Family.WEIBULL).fit(ended(sample).failing(cause::equals));
            WeibullLife law = fit.weibull(cause);
            assertThat(law.shape()).isCloseTo(alone.shape().value(), within(1e-9));
            assertThat(law.scaleDays() / alone.scale().value()).isCloseTo(1, within(1e-9));
            assertThat(law.varLogShape() / alone.varLogShape()).isCloseTo(1, within(1e-7));
            assertThat(law.covLogs() / alone.covLogs()).isCloseTo(1, within(1e-7));
        }
    }

    private static CauseSample<String> ended(MaskedSample<String> sample) {
        return CauseSample.of(
                MaskedLives.CAUSES,
                sample.lives().stream()
                        .map(life -> new EndedLife<>(
                                life.entry(),
                                life.lower(),
                                life.candidates().stream().findFirst().orElse(null),
                                life.weight()))
                        .toList());
    }

    /** With one cause nothing competes: the laws without causes, intervals and entry included. */
    @Test
    void oneCauseIsTheLawWithoutCauses() {
        MaskedSample<String> three = MaskedLives.of(2, 300, 0, 0, false);
        MaskedSample<String> one = MaskedSample.of(
                List.of("any"),
                three.lives().stream()
                        .map(life -> new MaskedLife<>(
                                life.entry(),
                                life.lower(),
                                life.upper(),
                                life.candidates().isEmpty() ? Set.<String>of() : Set.of("any"),
                                life.weight()))
                        .toList());

        CauseHazardFit<String> weibull = CauseHazardFitter.weibulls().fit(one);
        ParametricFit plain = ParametricFitter.of(Family.WEIBULL).fit(three.allCauses());
        assertThat(weibull.logLikelihood()).isCloseTo(plain.logLikelihood(), within(1e-9));
        assertThat(weibull.weibull("any").shape()).isCloseTo(plain.shape().value(), within(1e-8));
        assertThat(weibull.survival(1500).lower())
                .isCloseTo(plain.survival(1500).lower(), within(1e-8));

        CauseHazardFit<String> bands = CauseHazardFitter.withBands(700, 1400).fit(one);
        PiecewiseExponentialFit rates =
                PiecewiseExponentialFitter.withBands(700, 1400).fit(three.allCauses());
        assertThat(bands.logLikelihood()).isCloseTo(rates.logLikelihood(), within(1e-9));
        assertThat(bands.hazard("any", 1000).upper()
                        / rates.bands().get(1).rate().upper())
                .isCloseTo(1, within(1e-7));
    }

    @Test
    void hazardsOfCausesAddToThatOfAllCauses() {
        MaskedSample<String> sample = MaskedLives.of(3, 500, 0.3, 0.2, true);
        CauseHazardFit<String> fit =
                CauseHazardFitter.withBands(500, 1000, 1500).fit(sample);
        PiecewiseExponentialFit all =
                PiecewiseExponentialFitter.withBands(500, 1000, 1500).fit(sample.allCauses());

        for (int band = 0; band < 4; band++) {
            double age = 250 + 500 * band;
            double sum = MaskedLives.CAUSES.stream()
                    .mapToDouble(cause -> fit.hazard(cause, age).value())
                    .sum();
            assertThat(sum / all.bands().get(band).rate().value()).isCloseTo(1, within(1e-9));
            assertThat(fit.hazard(age)).isCloseTo(sum, within(1e-15));
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void incidencesAndSurvivalAddToOne(boolean weibull) {
        MaskedSample<String> sample = MaskedLives.of(4, 400, 0.3, 0.2, false);
        CauseHazardFit<String> fit =
                (weibull ? CauseHazardFitter.weibulls() : CauseHazardFitter.withBands(800, 1600)).fit(sample);

        for (double age : new double[] {1, 90, 1000, 2500}) {
            double sum = fit.survival(age).value()
                    + MaskedLives.CAUSES.stream()
                            .mapToDouble(cause -> fit.incidence(cause, age).value())
                            .sum();
            assertThat(sum).isCloseTo(1, within(1e-12));
        }
        double hazards = MaskedLives.CAUSES.stream()
                .mapToDouble(cause -> fit.cumulativeHazard(cause, 1000))
                .sum();
        assertThat(fit.survival(1000).value()).isCloseTo(Math.exp(-hazards), within(1e-14));
        assertThat(MaskedLives.CAUSES.stream().mapToDouble(fit::failures).sum())
                .isCloseTo(sample.failures(), within(1e-8));
        assertThat(fit.causeOf(900, 1000, ANY).values().stream()
                        .mapToDouble(share -> share)
                        .sum())
                .isCloseTo(1, within(1e-14));
    }

    @Test
    void manyLivesGiveTheTruthAndLeavingUnknownOnesOutDoesNot() {
        MaskedSample<String> sample = MaskedLives.of(5, 6000, 0.3, 0.15, false);
        CauseHazardFit<String> fit = CauseHazardFitter.weibulls().fit(sample);

        for (int k = 0; k < 3; k++) {
            WeibullLife law = fit.weibull(MaskedLives.CAUSES.get(k));
            assertThat(Math.log(law.shape() / MaskedLives.SHAPE[k]) / Math.sqrt(law.varLogShape()))
                    .isBetween(-3.0, 3.0);
            assertThat(Math.log(law.scaleDays() / MaskedLives.SCALE[k]) / Math.sqrt(law.varLogScale()))
                    .isBetween(-3.0, 3.0);
        }
        // Unknown causes taken as no failure: the life of a battery comes out far too long.
        MaskedSample<String> wrong = MaskedSample.of(
                MaskedLives.CAUSES,
                sample.lives().stream()
                        .map(life -> life.candidates().size() > 1
                                ? new MaskedLife<String>(
                                        life.entry(), life.lower(), Double.POSITIVE_INFINITY, Set.of(), life.weight())
                                : life)
                        .toList());
        WeibullLife battery = CauseHazardFitter.weibulls().fit(wrong).weibull("battery");
        assertThat(Math.log(battery.scaleDays() / 2500) / Math.sqrt(battery.varLogScale()))
                .isGreaterThan(5);
    }

    /** The EM algorithm by itself, run until nothing moves, ends where Newton's method does. */
    @Test
    void stepsOfTheEmAlgorithmEndAtTheSamePoint() {
        MaskedSample<String> sample = MaskedLives.of(6, 300, 0.3, 0.2, true);
        CauseHazardFit<String> fit = CauseHazardFitter.weibulls().fit(sample);
        CauseModel model = new CauseModel(
                List.of(new CauseHazard.Weibull(7), new CauseHazard.Weibull(7), new CauseHazard.Weibull(7)),
                new double[0]);
        double[] point = new WeibullSteps(model, new CauseLikelihood(model, sample), sample, 7).start(400);

        for (int k = 0; k < 3; k++) {
            WeibullLife law = fit.weibull(MaskedLives.CAUSES.get(k));
            assertThat(point[2 * k] + 7).isCloseTo(Math.log(law.scaleDays()), within(1e-6));
            assertThat(point[2 * k + 1]).isCloseTo(Math.log(law.shape()), within(1e-6));
        }
    }

    @Test
    void weightsAreRepetitionAndTheUnitOfTimeDoesNotMatter() {
        MaskedSample<String> sample = MaskedLives.of(7, 150, 0.3, 0.2, false);
        CauseHazardFit<String> fit = CauseHazardFitter.weibulls().fit(sample);
        List<MaskedLife<String>> twice = new ArrayList<>(sample.lives());
        twice.addAll(sample.lives());
        CauseHazardFit<String> doubled = CauseHazardFitter.weibulls().fit(MaskedSample.of(MaskedLives.CAUSES, twice));
        CauseHazardFit<String> years = CauseHazardFitter.weibulls()
                .fit(MaskedSample.of(
                        MaskedLives.CAUSES,
                        sample.lives().stream()
                                .map(l -> new MaskedLife<>(
                                        l.entry() / 365, l.lower() / 365, l.upper() / 365, l.candidates(), l.weight()))
                                .toList()));

        assertThat(doubled.logLikelihood()).isCloseTo(2 * fit.logLikelihood(), within(1e-8));
        Estimate once = fit.incidence("battery", 1500);
        assertThat(doubled.incidence("battery", 1500).value()).isCloseTo(once.value(), within(1e-9));
        assertThat(years.incidence("battery", 1500 / 365.0).upper()).isCloseTo(once.upper(), within(1e-8));
    }

    @Test
    void narrowIntervalsAreExactAges() {
        MaskedSample<String> exact = MaskedLives.of(8, 200, 0.3, 0.2, true);
        MaskedSample<String> narrow = MaskedSample.of(
                MaskedLives.CAUSES,
                exact.lives().stream()
                        .map(life -> life.candidates().isEmpty()
                                ? life
                                : new MaskedLife<>(
                                        life.entry(), life.lower() - 1e-4, life.upper() + 1e-4, life.candidates(), 1))
                        .collect(Collectors.toList()));

        double a =
                CauseHazardFitter.weibulls().fit(exact).incidence("stem", 1400).value();
        double b =
                CauseHazardFitter.weibulls().fit(narrow).incidence("stem", 1400).value();
        assertThat(b).isCloseTo(a, within(1e-7));
    }

    /** What could be worst and best for a cause, were causes not unknown by chance, lies around what the fit says. */
    @Test
    void givingMaskedFailuresToACauseBoundsIt() {
        MaskedSample<String> sample = MaskedLives.of(9, 400, 0.3, 0, false);
        double worst = incidence(sample.givingMaskedTo("battery"));
        double best = incidence(sample.givingMaskedTo("stem"));

        assertThat(incidence(sample)).isBetween(best, worst);
        assertThat(worst - best).isGreaterThan(0.05);
    }

    private static double incidence(MaskedSample<String> sample) {
        return CauseHazardFitter.weibulls()
                .fit(sample)
                .incidence("battery", 1800)
                .value();
    }

    @Test
    void refusalsNameTheirReason() {
        List<String> two = List.of("a", "b");
        CauseHazardFitter weibulls = CauseHazardFitter.weibulls();
        assertThat(weibulls.fit(MaskedSample.of(two, List.<MaskedLife<String>>of()))
                        .status())
                .isEqualTo(Status.NO_LIVES);
        assertThat(weibulls.fit(MaskedSample.of(two, List.of(survivor()))).status())
                .isEqualTo(Status.NO_FAILURES);

        CauseHazardFit<String> unknown = weibulls.fit(MaskedSample.of(
                two, List.of(failed(3, Set.of("a", "b")), failed(4, Set.of("a", "b")), survivor())));
        assertThat(unknown.status()).isEqualTo(Status.ALL_UNKNOWN);
        assertThat(unknown.reason()).contains("fit it without causes");
        assertThatThrownBy(() -> unknown.hazard("a", 3)).hasMessageContaining("ALL_UNKNOWN");

        CauseHazardFit<String> few = weibulls.fit(MaskedSample.of(
                two,
                List.of(
                        failed(3, Set.of("a")),
                        failed(4, Set.of("a")),
                        failed(5, Set.of("b")),
                        failed(6, Set.of("a", "b")),
                        survivor())));
        assertThat(few.status()).isEqualTo(Status.TOO_FEW_KNOWN);
        assertThat(few.reason()).contains("known to be by b").contains("take it together");

        // b and c only ever occur together: their sum is known, not which.
        CauseHazardFit<String> apart = CauseHazardFitter.withBands()
                .fit(MaskedSample.of(
                        List.of("a", "b", "c"),
                        List.of(failed(3, Set.of("a")), failed(4, Set.of("b", "c")), failed(5, Set.of("b", "c")))));
        assertThat(apart.status()).isEqualTo(Status.FLAT_LIKELIHOOD);
        assertThat(apart.reason()).contains("only occur together");

        assertThatThrownBy(() -> MaskedSample.of(two, List.of(failed(3, Set.of("c")))))
                .hasMessageContaining("declare them");
        assertThatThrownBy(() -> new MaskedLife<>(0, 3, 4, Set.of(), 1)).hasMessageContaining("possible causes");
        assertThatThrownBy(() -> CauseHazardFitter.withBands(3, 2)).hasMessageContaining("ascending");
    }

    private static MaskedLife<String> survivor() {
        return alive(30);
    }

    /** A declared cause that no failure could be of has no hazard and no limits, and disturbs nothing. */
    @Test
    void aCauseWithoutFailuresIsZero() {
        List<MaskedLife<String>> lives = List.of(
                failed(4, Set.of("a")),
                failed(6, Set.of("a")),
                failed(9, Set.of("b")),
                failed(11, Set.of("b")),
                alive(20));
        CauseHazardFit<String> with =
                CauseHazardFitter.weibulls().fit(MaskedSample.of(List.of("none", "a", "b"), lives));
        CauseHazardFit<String> without = CauseHazardFitter.weibulls().fit(MaskedSample.of(List.of("a", "b"), lives));

        assertThat(with.incidence("none", 10).value()).isZero();
        assertThat(with.hazard("none", 10).upper()).isNaN();
        assertThat(with.logLikelihood()).isCloseTo(without.logLikelihood(), within(1e-12));
        assertThat(with.weibull("b").shape()).isCloseTo(without.weibull("b").shape(), within(1e-10));
        assertThatThrownBy(() -> with.weibull("none")).hasMessageContaining("no failure could be of this cause");
    }
}
