package sensorrounds.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class WeibullLifeMeansTest {
    private static WeibullLife law(double shape, double scale) {
        return new WeibullLife(shape, scale, 0.01, 0.02, 0.001);
    }

    /** Shape 1: mean scale, memoryless. Shape 2 (Rayleigh): mean scale sqrt(pi)/2. Meeker and Escobar (1998), 4.8. */
    @Test
    void closedForms() {
        assertThat(law(1, 500).mean()).isCloseTo(500, within(1e-10));
        assertThat(law(1, 500).meanResidual(1e4)).isCloseTo(500, within(1e-8));
        assertThat(law(1, 500).meanWithin(200)).isCloseTo(500 * -Math.expm1(-0.4), within(1e-10));
        assertThat(law(2, 500).mean()).isCloseTo(500 * Math.sqrt(Math.PI) / 2, within(1e-10));
    }

    /** The integral of S by Simpson's rule on a fine grid. */
    @Test
    void integralsAgreeWithSimpsonsRule() {
        WeibullLife life = law(2.5, 2556.75);
        int n = 20_000;
        double to = 4000;
        double sum = 1 + life.survival(to);
        for (int i = 1; i < n; i++) {
            sum += (i % 2 == 1 ? 4 : 2) * life.survival(to * i / n);
        }
        assertThat(life.meanWithin(to)).isCloseTo(sum * to / n / 3, within(1e-7));
        assertThat(life.meanWithin(to) + life.survival(to) * life.meanResidual(to))
                .isCloseTo(life.mean(), within(1e-9));
        // Far out, where S underflows, the mean still to live is about 1 / hazard.
        double hazard = 2.5 / 2556.75 * Math.pow(40_000 / 2556.75, 1.5);
        assertThat(life.meanResidual(40_000)).isCloseTo(1 / hazard, within(0.01 / hazard));
    }

    @Test
    void refusesWhatIsNoLaw() {
        assertThatThrownBy(() -> law(Double.NaN, 1)).hasMessageContaining("NaN");
        assertThatThrownBy(() -> law(2, 0)).hasMessageContaining("positive");
    }
}
