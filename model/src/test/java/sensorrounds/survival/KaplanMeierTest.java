package sensorrounds.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

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
}
