package sensorrounds.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/**
 * Tables and closed forms from Abramowitz and Stegun (1964), Handbook of Mathematical Functions; table digits and formula
 * numbers are from memory, the closed forms stand by themselves.
 */
class SpecialFunctionsTest {
    @Test
    void gammaAtIntegersAndHalves() {
        double factorial = 1;
        for (int n = 1; n <= 20; n++) {
            assertThat(GammaFunction.logGamma(n)).isCloseTo(Math.log(factorial), within(1e-13 * (1 + n * n)));
            factorial *= n;
        }
        // 6.1.8 and 6.1.17 (reflection).
        assertThat(GammaFunction.logGamma(0.5)).isCloseTo(0.5 * Math.log(Math.PI), within(1e-14));
        assertThat(GammaFunction.logGamma(0.25) + GammaFunction.logGamma(0.75))
                .isCloseTo(Math.log(Math.PI * Math.sqrt(2)), within(1e-14));
        assertThatThrownBy(() -> GammaFunction.logGamma(Double.NaN)).hasMessageContaining("NaN");
    }

    /** Q(1, x) = exp(-x), Q(2, x) = (1 + x) exp(-x) (6.5.13), on both sides of where the algorithm switches. */
    @Test
    void incompleteGammaAgainstClosedForms() {
        for (double x : new double[] {1e-9, 0.1, 1.9, 2.1, 3.1, 50, 900}) {
            assertThat(GammaFunction.logRegularizedUpper(1, x)).isCloseTo(-x, within(1e-13 * (1 + x)));
            assertThat(GammaFunction.logRegularizedUpper(2, x)).isCloseTo(Math.log1p(x) - x, within(1e-13 * (1 + x)));
        }
        assertThat(GammaFunction.regularizedLower(1, 1e-12)).isCloseTo(1e-12, within(1e-24));
    }

    /** Table 26.1: Q(1) = .15865 52539 31457, Q(2) = .02275 01319 48179, Q(5) = 2.86651 57188e-7. */
    @Test
    void normalTails() {
        assertThat(Math.exp(StandardNormal.logSurvival(0))).isCloseTo(0.5, within(1e-15));
        assertThat(Math.exp(StandardNormal.logSurvival(1))).isCloseTo(0.158655253931457, within(1e-14));
        assertThat(Math.exp(StandardNormal.logSurvival(2))).isCloseTo(0.02275013194817921, within(1e-15));
        assertThat(Math.exp(StandardNormal.logSurvival(5))).isCloseTo(2.866515719e-7, within(1e-15));
        assertThat(Math.exp(StandardNormal.logSurvival(-1))).isCloseTo(0.841344746068543, within(1e-14));
        // 26.2.12, the asymptotic series, far beyond where the probability underflows.
        double z = 60;
        double series = 1 - 1 / (z * z) + 3 / Math.pow(z, 4) - 15 / Math.pow(z, 6);
        assertThat(StandardNormal.logSurvival(z))
                .isCloseTo(StandardNormal.logDensity(z) - Math.log(z) + Math.log(series), within(1e-9));
    }

    /** Table 26.5: x = 1.95996 for Q = .025, 2.32635 for .01, 3.09023 for .001. */
    @Test
    void normalQuantiles() {
        assertThat(StandardNormal.quantile(0.975)).isCloseTo(1.959963984540054, within(1e-13));
        assertThat(StandardNormal.quantile(0.99)).isCloseTo(2.32635, within(5e-6));
        assertThat(StandardNormal.quantile(0.001)).isCloseTo(-3.09023, within(5e-6));
        assertThat(StandardNormal.quantile(0.5)).isZero();
        assertThat(Math.exp(StandardNormal.logSurvival(-StandardNormal.quantile(1e-12))))
                .isCloseTo(1e-12, within(1e-24));
        assertThatThrownBy(() -> StandardNormal.quantile(1)).hasMessageContaining("0 < p < 1");
    }

    @Test
    void logSpaceNeitherUnderflowsNorCancels() {
        assertThat(LogSpace.log1mExp(-1e-20)).isCloseTo(Math.log(1e-20), within(1e-12));
        assertThat(LogSpace.log1mExp(-50)).isCloseTo(-Math.exp(-50), within(1e-36));
        assertThat(LogSpace.log1mExp(0.1)).isNaN();
        assertThat(LogSpace.logDifference(-2000, -2000 - Math.log(2))).isCloseTo(-2000 - Math.log(2), within(1e-12));
        assertThat(LogSpace.logDifference(-3, Double.NEGATIVE_INFINITY)).isEqualTo(-3);
        assertThat(LogSpace.softplus(800)).isEqualTo(800);
        assertThat(LogSpace.softplus(-40)).isCloseTo(Math.exp(-40), within(1e-32));
    }
}
