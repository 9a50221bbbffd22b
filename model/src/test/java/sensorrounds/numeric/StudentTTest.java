package sensorrounds.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StudentTTest {
    /** NIST/SEMATECH e-Handbook, 1.3.6.7.2, critical values of t (columns .95, .975, .99; from memory). */
    @ParameterizedTest
    @CsvSource({
        "1, 6.314, 12.706, 31.821",
        "2, 2.920, 4.303, 6.965",
        "5, 2.015, 2.571, 3.365",
        "10, 1.812, 2.228, 2.764",
        "19, 1.729, 2.093, 2.539",
        "49, 1.677, 2.010, 2.405",
        "100, 1.660, 1.984, 2.364"
    })
    void tableOfTheHandbook(int degrees, double p95, double p975, double p99) {
        assertThat(StudentT.quantile(0.95, degrees)).isCloseTo(p95, within(0.0006));
        assertThat(StudentT.quantile(0.975, degrees)).isCloseTo(p975, within(0.0008));
        assertThat(StudentT.quantile(0.99, degrees)).isCloseTo(p99, within(0.003));
        assertThat(StudentT.quantile(0.025, degrees)).isCloseTo(-p975, within(0.0008));
    }

    /** SciPy 1.17.1, stats.t.ppf. */
    @ParameterizedTest
    @CsvSource({
        "1.3, 4.333339183467029, 7.500529325562029",
        "2.5, 2.5582186141359355, 3.5746548420036817",
        "3, 2.3533634348018233, 3.1824463052837078",
        "4.7, 2.043811093013787, 2.62072607535317",
        "9.9, 1.814320625434876, 2.2311933388707637"
    })
    void fewDegreesNeedNotBeWhole(double degrees, double p95, double p975) {
        assertThat(StudentT.quantile(0.95, degrees)).isCloseTo(p95, withinPercentage(1e-5));
        assertThat(StudentT.quantile(0.975, degrees)).isCloseTo(p975, withinPercentage(1e-5));
        assertThat(StudentT.quantile(0.025, degrees)).isCloseTo(-p975, withinPercentage(1e-5));
    }

    @Test
    void theExpansionTakesOverWhereItIsExactAndIsNormalInTheEnd() {
        assertThat(StudentT.quantile(0.975, 10)).isCloseTo(2.228138851986274, withinPercentage(0.01));
        assertThat(StudentT.quantile(0.995, 10)).isCloseTo(3.16927267261695, withinPercentage(0.01));
        assertThat(StudentT.quantile(0.975, 1e9)).isCloseTo(1.959963984540054, within(1e-8));
        assertThatThrownBy(() -> StudentT.quantile(0.5, 0)).hasMessageContaining("1 or more degrees of freedom");
    }
}
