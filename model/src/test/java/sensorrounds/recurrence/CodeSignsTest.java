package sensorrounds.recurrence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sensorrounds.condition.Histories.place;
import static sensorrounds.condition.Histories.visit;

import java.util.List;
import org.junit.jupiter.api.Test;
import sensorrounds.visit.FaultCode;
import sensorrounds.visit.Warning;

class CodeSignsTest {
    private static final SuspectFigures FIGURES = SuspectFigures.declared(RecurrenceSettings.defaults());

    /**
     * Two codes name 1R under two hidden levels each; by hand: naming for sure or never, misnaming one in ten, two wheels.
     */
    @Test
    void codesByHand() {
        double[] naming = {0.5, 0, 0, 0, 0.5};
        double[] misnaming = {0, 0, 0, 1, 0, 0};
        SuspectFigures figures = new SuspectFigures(
                SuspectFigures.Basis.FLAGGED_VEHICLES,
                40,
                "",
                FIGURES.wake(),
                FIGURES.silence(),
                FIGURES.low(),
                FIGURES.apart(),
                naming,
                misnaming,
                FIGURES.lead(),
                FIGURES.age(),
                FIGURES.missed(),
                FIGURES.coldLow());
        FaultCode named = new FaultCode("C1A56", FaultCode.State.CURRENT, place("1R"));
        CodeSigns signs = CodeSigns.of(
                List.of(
                        visit("2026-02-10", Warning.SYSTEM_FAULT, named),
                        visit(
                                "2026-04-14",
                                Warning.SYSTEM_FAULT,
                                new FaultCode("C1A56", FaultCode.State.CURRENT, null)),
                        visit("2026-06-20", Warning.SYSTEM_FAULT, named)),
                2);
        double often = Math.pow(0.9 + 0.1 * 0.1 / 2, 2) * 0.1 * 0.9;
        double seldom = Math.pow(0.01 + 0.99 * 0.1 / 2, 2) * 0.99 * 0.9;
        double outside = 0.1 * 0.1 * (0.5 / 2 + 0.5 / 4) * 0.9;
        assertThat(signs.ratio(figures, new boolean[] {true, true}))
                .isCloseTo((often + seldom) / 2 / outside, within(1e-9));
    }
}
