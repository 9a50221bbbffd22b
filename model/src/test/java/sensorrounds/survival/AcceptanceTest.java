package sensorrounds.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * The project's acceptance case: Weibull life of shape 2.5 and scale 7 years, entry uniform on 0-6 years, visits every
 * 0.75 years or so, 3 years' follow-up. Truth is S(t) = exp(-(t/7)^2.5): S(3), S(5), S(7) = .887, .650, .368. The right
 * handling must come close, and each wrong one must be as wrong as it is known to be, or the case would prove nothing.
 * The figures for the wrong ways come from an earlier simulation of ours, written apart from this code:
 * 167,620 lives, 8 seeds agreeing to .005.
 */
class AcceptanceTest {
    private static final double YEAR = 365.25;
    private static final List<Lifetime> LIVES = SimulatedRounds.simulate(20261125, 120_000, 2.5, 7, 6, 3);

    private static LifetimeSample ignoringEntry() {
        return LifetimeSample.of(LIVES.stream()
                .map(life -> new Lifetime(0, life.lower(), life.upper(), life.weight()))
                .toList());
    }

    private static LifetimeSample failedAtDetection(List<Lifetime> lives) {
        return LifetimeSample.of(lives.stream()
                .map(life -> life.failed() ? Lifetime.exact(life.entry(), life.upper()) : life)
                .toList());
    }

    private static double weibull(LifetimeSample sample, double years) {
        return ParametricFitter.of(Family.WEIBULL).fit(sample).life().survival(years * YEAR);
    }

    private static double kaplanMeier(LifetimeSample sample, double years) {
        return KaplanMeier.withDefaults().fit(sample).survival().at(years * YEAR);
    }

    @Test
    void theEntryConditionalIntervalLikelihoodIsRight() {
        ParametricFit fit = ParametricFitter.of(Family.WEIBULL).fit(LifetimeSample.of(LIVES));
        assertThat(fit.life().survival(3 * YEAR)).isCloseTo(0.887, within(0.008));
        assertThat(fit.life().survival(5 * YEAR)).isCloseTo(0.650, within(0.008));
        assertThat(fit.life().survival(7 * YEAR)).isCloseTo(0.368, within(0.008));
        assertThat(fit.shape().lower()).isLessThan(2.5);
        assertThat(fit.shape().upper()).isGreaterThan(2.5);
        assertThat(fit.scale().lower()).isLessThan(7 * YEAR);
        assertThat(fit.scale().upper()).isGreaterThan(7 * YEAR);
    }

    @Test
    void midpointsWithDelayedEntryAreAUsableCrossCheck() {
        assertThat(kaplanMeier(LifetimeSample.of(LIVES).atMidpoints(), 5)).isCloseTo(0.648, within(0.015));
    }

    @Test
    void ignoringEntryIsWrongByThirteenPointsOrMore() {
        assertThat(weibull(ignoringEntry(), 5)).isCloseTo(0.778, within(0.01));
        List<Lifetime> naive = LIVES.stream()
                .map(life -> new Lifetime(0, life.lower(), life.upper(), life.weight()))
                .toList();
        assertThat(kaplanMeier(failedAtDetection(naive), 5)).isCloseTo(0.817, within(0.01));
    }

    @Test
    void takingTheDayOfDetectionForTheDayOfFailureIsWrongBySixPoints() {
        assertThat(kaplanMeier(failedAtDetection(LIVES), 5)).isCloseTo(0.713, within(0.015));
    }
}
