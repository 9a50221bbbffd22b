package sensorrounds.turnbull;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import sensorrounds.survival.KaplanMeier;
import sensorrounds.survival.Lifetime;
import sensorrounds.survival.LifetimeSample;
import sensorrounds.turnbull.TurnbullFit.Status;

/** What delayed entry does to the nonparametric estimate: solved cases, collapse, flat directions, early bias. */
class DelayedEntryTest {
    private static TurnbullFit fit(Lifetime... lives) {
        return Turnbull.withDefaults().fit(LifetimeSample.of(List.of(lives)));
    }

    /**
     * By hand: of two lives from new one fails in (0, 10], one is known good at 10 and, with the two that enter there, one
     * of three fails in (10, 20]. S(10) = 1/2, S(20) = 1/2 x 2/3. Ignoring entry: 3/4 and 3/4 x 2/3.
     */
    @Test
    void solvedByHand() {
        TurnbullFit fit = fit(
                Lifetime.interval(0, 0, 10),
                Lifetime.censored(0, 20),
                Lifetime.interval(10, 10, 20),
                Lifetime.censored(10, 20));
        assertThat(fit.survival().at(10)).isCloseTo(1 / 2.0, within(1e-12));
        assertThat(fit.survival().at(20)).isCloseTo(1 / 3.0, within(1e-12));
        assertThat(fit.logLikelihood())
                .isCloseTo(
                        Math.log(1 / 2.0) + Math.log(2 / 3.0 / 2) + Math.log(1 / 3.0) + Math.log(2 / 3.0),
                        within(1e-12));
        assertThat(fit.uniqueness()).isEqualTo(Uniqueness.UNIQUE);
        assertThat(fit.intervals()).extracting(InnermostInterval::outlived).containsExactly(1.0, 2.0, 0.0);
        TurnbullFit entryIgnored = fit(
                Lifetime.interval(0, 0, 10),
                Lifetime.censored(0, 20),
                Lifetime.interval(0, 10, 20),
                Lifetime.censored(0, 20));
        assertThat(entryIgnored.survival().at(10)).isCloseTo(3 / 4.0, within(1e-12));
    }

    /** The only early life may have failed by 130; fifty that entered at 200 live on: no curve from the start exists. */
    @Test
    void aCollapseIsNamedAndTheCurveGivenALaterAgeIsSound() {
        List<Lifetime> lives = new ArrayList<>(Collections.nCopies(40, Lifetime.censored(200, 900)));
        lives.addAll(Collections.nCopies(10, Lifetime.interval(200, 400, 500)));
        lives.add(Lifetime.interval(50, 100, 130));
        TurnbullFit fit = Turnbull.withDefaults().fit(LifetimeSample.of(lives));
        assertThat(fit.status()).isEqualTo(Status.COLLAPSED);
        assertThat(fit.collapsedAt()).hasValue(130);
        assertThat(fit.cause()).contains("before age 130.0").contains("from 130.0 up");
        assertThatThrownBy(fit::survival).hasMessageContaining("COLLAPSED");
        assertThatThrownBy(() -> fit.survivalGivenAliveAt(50)).hasMessageContaining("COLLAPSED");
        TurnbullCurve given = fit.survivalGivenAliveAt(200);
        assertThat(given.at(500)).isCloseTo(0.8, within(1e-12));
        assertThat(given.at(900)).isCloseTo(0.8, within(1e-12));
    }

    /** The trap of the Kaplan-Meier reference case lt-empty-riskset, which the estimate shares: 0 from age 3 on. */
    @Test
    void collapsesWhereKaplanMeierDoes() {
        List<Lifetime> lives = List.of(
                Lifetime.exact(0, 2),
                Lifetime.exact(0, 3),
                Lifetime.exact(5, 7),
                Lifetime.censored(5, 8),
                Lifetime.exact(6, 9));
        TurnbullFit fit = Turnbull.withDefaults().fit(LifetimeSample.of(lives));
        assertThat(KaplanMeier.withDefaults().fit(LifetimeSample.of(lives)).collapsedAt())
                .hasValue(3);
        assertThat(fit.collapsedAt()).hasValue(3);
        assertThat(fit.survivalGivenAliveAt(3).at(7)).isCloseTo(2 / 3.0, within(1e-12));
        assertThat(fit.survivalGivenAliveAt(3).at(9)).isZero();
    }

    /** One early life that could have failed early or late: whether it collapses is ours to choose, and we do not. */
    @Test
    void noCollapseWhereTheDataDoNotForceOne() {
        TurnbullFit fit = fit(Lifetime.interval(0, 0, 10), Lifetime.interval(6, 6, 10));
        assertThat(fit.converged()).as(fit.cause()).isTrue();
        assertThat(fit.survival().at(6)).isEqualTo(1);
        assertThat(fit.survival().at(10)).isZero();
        assertThat(fit.logLikelihood()).isZero();
        assertThat(fit.uniqueness()).isEqualTo(Uniqueness.NOT_UNIQUE);
    }

    /** (0, 4] and (6, 10] can share the mass of (0, 10] in any way, since as many are known to outlive each. */
    @Test
    void aFlatDirectionIsReported() {
        TurnbullFit flat = fit(Lifetime.interval(0, 0, 10), Lifetime.censored(4, 6), Lifetime.censored(0, 20));
        assertThat(flat.survival().at(10)).isCloseTo(0.5, within(1e-9));
        assertThat(flat.uniqueness()).isEqualTo(Uniqueness.NOT_UNIQUE);
        // One more life that tells the two stretches apart.
        TurnbullFit told = fit(
                Lifetime.interval(0, 0, 10),
                Lifetime.interval(0, 0, 4),
                Lifetime.interval(4, 6, 10),
                Lifetime.censored(4, 6),
                Lifetime.censored(0, 20));
        assertThat(told.uniqueness()).isEqualTo(Uniqueness.UNIQUE);
    }

    /**
     * Nine lives of which two were there early: half of those fail, so half of all are written off early. The truth of
     * the later ones is untouched by it.
     */
    @Test
    void earlyAgesStandOnFewLivesAndTheFitSaysHowFew() {
        List<Lifetime> lives = new ArrayList<>(Collections.nCopies(30, Lifetime.censored(1000, 2000)));
        lives.add(Lifetime.interval(100, 200, 300));
        lives.add(Lifetime.censored(100, 2000));
        TurnbullFit fit = Turnbull.withDefaults().fit(LifetimeSample.of(lives));
        assertThat(fit.survival().at(300)).isCloseTo(0.5, within(1e-12));
        assertThat(fit.firstSupportedAge()).isEqualTo(200);
        assertThat(fit.survival().from()).isEqualTo(100);
        assertThat(fit.intervals().get(0).outlived()).isEqualTo(1);
        assertThat(fit.survivalGivenAliveAt(1000).at(2000)).isEqualTo(1);
    }

    /**
     * The acceptance case of the survival estimates, given alive at one year: Weibull shape 2.5, scale 7 years, entry
     * uniform on 0-6 years, 3 years' follow-up. S(5) / S(1) = .650 / .992. Ignoring entry or taking the detection for
     * the failure is far off.
     */
    @Test
    void rightHandlingFindsTheTruthAndWrongHandlingDoesNot() {
        List<Lifetime> lives = Rounds.simulate(20260101, 30_000, 7, 7, 6, 3);
        double truth = Math.exp(-Math.pow(5 / 7.0, 2.5) + Math.pow(1 / 7.0, 2.5));
        assertThat(survivalFromOneToFive(lives)).isCloseTo(truth, within(0.02));
        List<Lifetime> entryIgnored = lives.stream()
                .map(life -> new Lifetime(0, life.lower(), life.upper(), 1))
                .toList();
        assertThat(survivalFromOneToFive(entryIgnored) - truth).isGreaterThan(0.1);
        List<Lifetime> atDetection = lives.stream()
                .map(life -> life.failed() ? Lifetime.exact(life.entry(), life.upper()) : life)
                .toList();
        assertThat(survivalFromOneToFive(atDetection) - truth).isGreaterThan(0.04);
    }

    /** Steps straddle ages; the middle of the bounds will do here. */
    private static double survivalFromOneToFive(List<Lifetime> lives) {
        TurnbullFit fit = Turnbull.withDefaults().fit(LifetimeSample.of(lives));
        assertThat(fit.converged()).as(fit.cause()).isTrue();
        return middle(fit.survival(), 5 * Rounds.YEAR) / middle(fit.survival(), Rounds.YEAR);
    }

    private static double middle(TurnbullCurve curve, double age) {
        return (curve.lower(age) + curve.upper(age)) / 2;
    }
}
