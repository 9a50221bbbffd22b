package sensorrounds.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import sensorrounds.numeric.WeightedCount;

class KaplanMeierTest {
    private static final LifetimeSample FIVE = LifetimeSample.of(List.of(
            Lifetime.exact(0, 2),
            Lifetime.censored(0, 4),
            Lifetime.exact(0, 6),
            Lifetime.censored(3, 8),
            Lifetime.censored(9, 12)));

    @Test
    void answersOnItsDomainOnly() {
        StepCurve curve = KaplanMeier.withDefaults().fit(FIVE).survival();
        assertThat(curve.at(0)).isEqualTo(1);
        assertThat(curve.at(2)).isEqualTo(2 / 3.0);
        assertThat(curve.at(5.9)).isEqualTo(2 / 3.0);
        assertThat(curve.at(12)).isCloseTo(1 / 3.0, within(1e-15));
        assertThat(curve.covers(12.1)).isFalse();
        assertThatThrownBy(() -> curve.at(12.1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("from age 0.0 to 12.0, not at 12.1");
        assertThatThrownBy(() -> curve.at(Double.NaN)).hasMessageContaining("not at NaN");
    }

    @Test
    void namesTheAgesNobodyWasSeenAt() {
        KaplanMeierFit fit = KaplanMeier.withDefaults().fit(FIVE);
        assertThat(fit.unobserved()).containsExactly(new Span(8, 9));
        assertThat(fit.collapsedAt()).isEmpty();
        LifetimeSample late = LifetimeSample.of(List.of(Lifetime.exact(700, 900), Lifetime.censored(700, 1000)));
        assertThat(KaplanMeier.withDefaults().fit(late).unobserved()).containsExactly(new Span(0, 700));
        assertThat(KaplanMeier.withDefaults().givenAliveAt(800).fit(late).unobserved())
                .isEmpty();
    }

    @Test
    void aWeightIsTheLifeSeenThatOften() {
        KaplanMeierFit weighted = KaplanMeier.withDefaults()
                .fit(LifetimeSample.of(List.of(new Lifetime(0, 5, 5, 2), new Lifetime(1, 7, Lifetime.NEVER, 3))));
        KaplanMeierFit repeated = KaplanMeier.withDefaults()
                .fit(LifetimeSample.of(List.of(
                        Lifetime.exact(0, 5),
                        Lifetime.censored(1, 7),
                        Lifetime.exact(0, 5),
                        Lifetime.censored(1, 7),
                        Lifetime.censored(1, 7))));
        assertThat(weighted.steps()).isEqualTo(repeated.steps()).hasSize(1);
        assertThat(weighted.survival().at(5)).isEqualTo(3 / 5.0);
    }

    @Test
    void refusesIntervalsAndSaysTheWayOut() {
        LifetimeSample intervals = LifetimeSample.of(List.of(Lifetime.interval(0, 10, 20)));
        assertThatThrownBy(() -> KaplanMeier.withDefaults().fit(intervals)).hasMessageContaining("atMidpoints()");
        assertThat(KaplanMeier.withDefaults().fit(intervals.atMidpoints()).steps())
                .extracting(KaplanMeierFit.Step::age)
                .containsExactly(15.0);
    }

    @Test
    void withoutLivesOrFailuresThereIsNoStep() {
        KaplanMeierFit none = KaplanMeier.withDefaults().fit(LifetimeSample.of(List.of()));
        assertThat(none.steps()).isEmpty();
        assertThat(none.survival().covers(1)).isFalse();
        KaplanMeierFit alive = KaplanMeier.withDefaults().fit(LifetimeSample.of(List.of(Lifetime.censored(4, 90))));
        assertThat(alive.survival().at(90)).isEqualTo(1);
        assertThat(alive.median().value()).isNaN();
        // Entered and left on one day: under observation at no age.
        KaplanMeierFit moment = KaplanMeier.withDefaults().fit(LifetimeSample.of(List.of(Lifetime.censored(4, 4))));
        assertThat(moment.riskSet().at(4)).isZero();
    }

    @Test
    void widerCoverageGivesWiderLimits() {
        KaplanMeierFit narrow = KaplanMeier.withDefaults().withLevel(0.5).fit(FIVE);
        KaplanMeierFit wide = KaplanMeier.withDefaults().withLevel(0.99).fit(FIVE);
        assertThat(wide.steps().get(0).lower()).isLessThan(narrow.steps().get(0).lower());
        assertThat(wide.steps().get(0).upper())
                .isGreaterThan(narrow.steps().get(0).upper());
        assertThatThrownBy(() -> KaplanMeier.withDefaults().withLevel(1)).hasMessageContaining("between 0 and 1");
    }

    /** By hand, nobody censored: at 2 the lives 3 and 4 have 1 and 2 still to come, mean 3/2, error sqrt((1/4) / 2). */
    @Test
    void meanResidualLifeIsTheMeanOfWhatIsLeft() {
        KaplanMeierFit fit = KaplanMeier.withDefaults()
                .fit(LifetimeSample.of(List.of(
                        Lifetime.exact(0, 1), Lifetime.exact(0, 2), Lifetime.exact(0, 3), Lifetime.exact(0, 4))));
        assertThat(fit.meanResidualLife(2, 4)).isEqualTo(1.5);
        assertThat(fit.meanResidualLife(2.5, 4)).isEqualTo(1);
        assertThat(fit.meanResidualLife(2, 3.5)).as("cut at 3.5").isEqualTo(1.25);
        assertThat(fit.meanResidualLifeError(2, 4)).isCloseTo(Math.sqrt(1 / 8.0), within(1e-15));
        assertThat(fit.meanResidualLife(4, 4)).isNaN();
        assertThat(fit.meanResidualLifeError(4, 4)).isNaN();
        assertThatThrownBy(() -> fit.meanResidualLife(3, 2)).hasMessageContaining("from 3.0 to 2.0");
        assertThatThrownBy(() -> fit.meanResidualLife(0, 5)).hasMessageContaining("not at 5.0");
    }

    /** From 0 it is the restricted mean; from an age that of the curve given alive there, delayed entry or not. */
    @Test
    void meanResidualLifeIsTheRestrictedMeanGivenAlive() {
        KaplanMeierFit fit = KaplanMeier.withDefaults().fit(FIVE);
        KaplanMeierFit given = KaplanMeier.withDefaults().givenAliveAt(3).fit(FIVE);
        assertThat(fit.meanResidualLife(0, 11)).isEqualTo(fit.restrictedMean(11));
        assertThat(fit.meanResidualLifeError(0, 11)).isEqualTo(fit.restrictedMeanError(11));
        assertThat(fit.meanResidualLife(3, 11)).isCloseTo(given.restrictedMean(11), within(1e-12));
        assertThat(fit.meanResidualLifeError(3, 11)).isCloseTo(given.restrictedMeanError(11), within(1e-12));
    }

    /**
     * None of ten failed, all watched throughout: by mid-P half the chance of none counts, so that S^10 / 2 = .025 and the limit is
     * .05^(1/10) = .7411.
     */
    @Test
    void beforeTheFirstFailureTheLimitIsThatOfNoneFailed() {
        LifetimeSample alive = LifetimeSample.of(List.of(new Lifetime(0, 900, Lifetime.NEVER, 10)));
        KaplanMeierFit none = KaplanMeier.withDefaults().fit(alive);
        assertThat(none.lowerBeforeFailures()).isCloseTo(Math.pow(0.05, 0.1), within(1e-9));
        assertThat(none.lower().at(500)).isEqualTo(none.lowerBeforeFailures());
        assertThat(none.upper().at(500)).isEqualTo(1);
        assertThat(none.cumulativeHazardLimits(900).upper()).isCloseTo(-Math.log(0.05) / 10, within(1e-9));
        assertThat(none.cumulativeHazardLimits(900).lower()).isZero();

        // Nobody was watched when new; from 100 on ten are: nothing is known of ages up to 100.
        LifetimeSample met = LifetimeSample.of(List.of(new Lifetime(100, 900, Lifetime.NEVER, 10)));
        assertThat(KaplanMeier.withDefaults().fit(met).lowerBeforeFailures()).isZero();
        assertThat(KaplanMeier.withDefaults().givenAliveAt(100).fit(met).lowerBeforeFailures())
                .isCloseTo(Math.pow(0.05, 0.1), within(1e-9));

        // What S surely is at the first failure, one of a hundred, it surely is before, though nobody was watched when
        // new.
        LifetimeSample few =
                LifetimeSample.of(List.of(new Lifetime(10, 900, Lifetime.NEVER, 99), Lifetime.exact(10, 50)));
        KaplanMeierFit fit = KaplanMeier.withDefaults().fit(few);
        assertThat(fit.lowerBeforeFailures())
                .isEqualTo(fit.steps().get(0).lower())
                .isGreaterThan(0.9);
    }

    /** Without a failure the mean may be all of the time, and the time lost no more than none of ten failing allows. */
    @Test
    void limitsOfTheMeanWithoutAFailure() {
        LifetimeSample alive = LifetimeSample.of(List.of(new Lifetime(0, 900, Lifetime.NEVER, 10)));
        Estimate mean = KaplanMeier.withDefaults().fit(alive).restrictedMeanLimits(900, 0.95);
        assertThat(mean.value()).isEqualTo(900);
        assertThat(mean.upper()).isEqualTo(900);
        // One more failure, met at random, costs 450 days of 900 on one of ten: 45 in the mean, 90^2 / 3 in the mean
        // square.
        assertThat(mean.lower())
                .isCloseTo(900 - new WeightedCount(0, 0, 45, 2700).limit(0.975), within(1e-9))
                .isBetween(650.0, 850.0);
    }

    /** A curve that ends above one half says where the median does not lie. */
    @Test
    void aQuantileThatIsNotReachedIsOpenAbove() {
        KaplanMeierFit fit = KaplanMeier.withDefaults()
                .fit(LifetimeSample.of(List.of(Lifetime.exact(0, 300), new Lifetime(0, 900, Lifetime.NEVER, 19))));
        assertThat(fit.median().value()).isNaN();
        assertThat(fit.median().lower()).isEqualTo(900);
        assertThat(fit.median().upper()).isInfinite();
        assertThat(fit.quantile(0.04).value()).isEqualTo(300);
        assertThat(fit.quantile(0.04).upper()).isInfinite();
    }

    private static double[] numbers(JsonNode reference, String name) {
        return StreamSupport.stream(reference.get(name).spliterator(), false)
                .mapToDouble(JsonNode::doubleValue)
                .toArray();
    }

    /** Under delayed entry, against count-limits.R beside the reference file. */
    @Test
    void limitsOfCountsAgreeWithR() throws IOException {
        JsonNode expected = new ObjectMapper()
                .readTree(KaplanMeierTest.class.getResourceAsStream("/reference/survival/count-limits.json"));
        double[] exit = numbers(expected, "exit");
        double[] ones = ReferenceCases.filled(exit.length, 1);
        KaplanMeierFit fit = KaplanMeier.withDefaults()
                .fit(ReferenceCases.rightCensored(numbers(expected, "entry"), exit, numbers(expected, "failed"), ones));
        double[] age = numbers(expected, "age");
        assertThat(fit.steps()).hasSize(age.length);
        for (int i = 0; i < age.length; i++) {
            KaplanMeierFit.Step step = fit.steps().get(i);
            Estimate hazard = fit.cumulativeHazardLimits(age[i]);
            assertThat(step.age()).isEqualTo(age[i]);
            assertThat(step.lower()).isCloseTo(numbers(expected, "lower")[i], within(1e-9));
            assertThat(step.upper()).isCloseTo(numbers(expected, "upper")[i], within(1e-9));
            assertThat(hazard.lower()).isCloseTo(numbers(expected, "hazardLower")[i], within(1e-9));
            assertThat(hazard.upper()).isCloseTo(numbers(expected, "hazardUpper")[i], within(1e-9));
        }
        assertThat(fit.lowerBeforeFailures())
                .isCloseTo(expected.get("lowerBeforeFailures").doubleValue(), within(1e-9));
        agrees(fit.restrictedMeanLimits(12, 0.95), numbers(expected, "meanWithin12"));
        agrees(fit.meanResidualLifeLimits(5, 12, 0.95), numbers(expected, "meanFrom5To12"));
    }

    private static void agrees(Estimate ours, double[] expected) {
        assertThat(ours.value()).isCloseTo(expected[0], within(1e-9));
        assertThat(ours.lower()).isCloseTo(expected[1], within(1e-8));
        assertThat(ours.upper()).isCloseTo(expected[2], within(1e-8));
    }
}
