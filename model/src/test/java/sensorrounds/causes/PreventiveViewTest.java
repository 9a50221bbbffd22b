package sensorrounds.causes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sensorrounds.causes.Lives.Cause;

class PreventiveViewTest {
    private static final List<Cause> CAUSES = List.of(Cause.BATTERY, Cause.PREVENTIVE);

    /** A share of the units is replaced up to .7 years before it would have failed: crews see it coming. */
    private static CauseSample<Cause> wellChosen(double share) {
        Random random = new Random(20261125);
        List<EndedLife<Cause>> lives = new ArrayList<>();
        while (lives.size() < 100_000) {
            double life = Lives.weibull(random);
            boolean replaced = random.nextDouble() < share;
            double early = 0.7 * random.nextDouble();
            double entry = 6 * random.nextDouble();
            double end = replaced ? life - early : life;
            double last = entry + 3;
            if (end > entry) {
                lives.add(
                        end > last
                                ? EndedLife.censored(entry, last)
                                : EndedLife.by(replaced ? Cause.PREVENTIVE : Cause.BATTERY, entry, end));
            }
        }
        return CauseSample.of(CAUSES, lives);
    }

    /**
     * Truth S(5) = .650. The other figures are from an earlier simulation of ours, written apart from this code, one seed,
     * read to .01.
     */
    @ParameterizedTest
    @CsvSource({"0.25, 0.720, 0.637", "0.50, 0.802, 0.625", "0.75, 0.894, 0.612"})
    void theTruthLiesBetweenTheTwoLines(double share, double independent, double pessimistic) {
        PreventiveView.Result<Cause> view = PreventiveView.withDefaults().of(wellChosen(share), Cause.PREVENTIVE);
        assertThat(view.independent().survival().at(5)).isCloseTo(independent, within(0.01));
        assertThat(view.pessimistic().survival().at(5)).isCloseTo(pessimistic, within(0.01));
        assertThat(0.650)
                .isBetween(
                        view.pessimistic().survival().at(5),
                        view.independent().survival().at(5));
        assertThat(view.preventiveShare()).isCloseTo(share, within(0.05));
        assertThat(view.warning()).isPresent();
        assertThat(view.warning().get()).contains("preventive", "pessimistic bound");
        // Event-free is the pessimistic line; failures and replacements make up the rest.
        assertThat(view.incidence().eventFree().at(5))
                .isCloseTo(view.pessimistic().survival().at(5), within(1e-12));
        assertThat(view.incidence().of(Cause.PREVENTIVE).at(5)).isGreaterThan(0);
    }

    @Test
    void replacementAtRandomLeavesTheFirstLineRight() {
        Random random = new Random(5);
        List<EndedLife<Cause>> lives = new ArrayList<>();
        for (int i = 0; i < 50_000; i++) {
            double life = Lives.weibull(random);
            double replaced = 20 * random.nextDouble();
            lives.add(
                    life <= replaced
                            ? EndedLife.by(Cause.BATTERY, 0, life)
                            : EndedLife.by(Cause.PREVENTIVE, 0, replaced));
        }
        PreventiveView.Result<Cause> view =
                PreventiveView.withDefaults().of(CauseSample.of(CAUSES, lives), Cause.PREVENTIVE);
        assertThat(view.independent().survival().at(5)).isCloseTo(0.650, within(0.008));
        assertThat(view.pessimistic().survival().at(5)).isLessThan(0.55);
    }

    @Test
    void theWarningComesPastTheShareAndNotBefore() {
        List<EndedLife<Cause>> lives = List.of(
                EndedLife.by(Cause.BATTERY, 0, 1),
                EndedLife.by(Cause.BATTERY, 0, 2),
                EndedLife.by(Cause.BATTERY, 0, 3),
                EndedLife.by(Cause.BATTERY, 0, 4),
                EndedLife.by(Cause.PREVENTIVE, 0, 5),
                EndedLife.censored(0, 6));
        CauseSample<Cause> fifth = CauseSample.of(CAUSES, lives);
        assertThat(PreventiveView.withDefaults().of(fifth, Cause.PREVENTIVE).preventiveShare())
                .isEqualTo(0.2);
        assertThat(PreventiveView.withDefaults().of(fifth, Cause.PREVENTIVE).warning())
                .isEmpty();
        assertThat(PreventiveView.withDefaults()
                        .withWarningShare(0.19)
                        .of(fifth, Cause.PREVENTIVE)
                        .warning())
                .get()
                .asString()
                .startsWith("20 % of all ends are preventive replacements (warned above 19 %)");
    }

    @Test
    void withoutEndsThereIsNoShareAndNoWarning() {
        PreventiveView.Result<Cause> view = PreventiveView.withDefaults()
                .of(CauseSample.of(CAUSES, List.of(EndedLife.<Cause>censored(0, 6))), Cause.PREVENTIVE);
        assertThat(view.preventiveShare()).isNaN();
        assertThat(view.warning()).isEmpty();
        assertThatThrownBy(() -> PreventiveView.withDefaults()
                        .of(CauseSample.of(List.of(Cause.BATTERY), List.of()), Cause.PREVENTIVE))
                .hasMessageContaining("PREVENTIVE is not among the causes");
    }
}
