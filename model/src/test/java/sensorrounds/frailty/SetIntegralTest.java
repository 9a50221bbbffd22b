package sensorrounds.frailty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.MathContext;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import sensorrounds.numeric.GammaFunction;

class SetIntegralTest {
    /** After d exact failures the integral is Gamma(a + d) / Gamma(a) a^a / (a + A)^(a + d). */
    @ParameterizedTest
    @CsvSource({"0.05, 0.4, 1", "0.5, 0, 2", "1, 3, 1", "4, 0.2, 5", "40, 12, 3", "1e4, 2, 4", "1e7, 0.5, 1"})
    void exactAgesHaveAClosedForm(double a, double survived, int exact) {
        SetIntegral integral = new SetIntegral(a, survived, exact, new double[0]);

        double rising = 0;
        for (int i = 0; i < exact; i++) {
            rising += Math.log((a + i) / (a + survived));
        }
        double expected = rising - a * Math.log1p(survived / a);
        assertThat(integral.logIntegral()).isCloseTo(expected, within(2e-13 * Math.max(1, Math.abs(expected))));
        assertThat(mean(integral)).isCloseTo((a + exact) / (a + survived), within(1e-12));
    }

    /** Inclusion and exclusion over the corners of the intervals, (1 + s / a)^-a at each, in 60 digits for whole a. */
    @ParameterizedTest
    @CsvSource({
        "1, 0, 0.7",
        "1, 0, 40",
        "2, 0.3, 2",
        "2, 5, 0.001",
        "1, 0, 1e-6",
        "5, 0.1, 0.5",
        "30, 2, 0.2",
        "400, 1, 0.05"
    })
    void intervalsEqualTheSumOverCorners(int a, double survived, double hazard) {
        for (int count = 1; count <= 5; count++) {
            double[] intervals = new double[count];
            for (int i = 0; i < count; i++) {
                intervals[i] = hazard * (1 + i);
            }

            double actual = Math.exp(new SetIntegral(a, survived, 0, intervals).logIntegral());

            double expected = corners(a, survived, intervals);
            assertThat(actual).as("%d intervals", count).isCloseTo(expected, within(1e-12 * expected));
        }
    }

    private static double corners(int a, double survived, double[] intervals) {
        MathContext digits = new MathContext(60);
        BigDecimal sum = BigDecimal.ZERO;
        for (int corner = 0; corner < 1 << intervals.length; corner++) {
            BigDecimal s = new BigDecimal(survived);
            for (int i = 0; i < intervals.length; i++) {
                s = (corner >> i & 1) == 1 ? s.add(new BigDecimal(intervals[i])) : s;
            }
            BigDecimal base = BigDecimal.ONE.add(s.divide(BigDecimal.valueOf(a), digits));
            BigDecimal term = BigDecimal.ONE.divide(base.pow(a, digits), digits);
            sum = Integer.bitCount(corner) % 2 == 0 ? sum.add(term) : sum.subtract(term);
        }
        return sum.doubleValue();
    }

    /** Where every vehicle has frailty 1 there is nothing to integrate. */
    @Test
    void withoutVarianceTheIntegrandItself() {
        double expected = -1.5 + Math.log(-Math.expm1(-0.4));

        assertThat(new SetIntegral(Double.POSITIVE_INFINITY, 1.5, 0, new double[] {0.4}).logIntegral())
                .isCloseTo(expected, within(1e-15));
        assertThat(new SetIntegral(1e9, 1.5, 0, new double[] {0.4}).logIntegral())
                .isCloseTo(expected, within(1e-8));
    }

    /** Abramowitz and Stegun (1964): digamma(1) = -Euler's constant, trigamma(1) = pi^2 / 6 (6.3.2, 6.4.2); halves too. */
    @Test
    void shapeFunctionsAtKnownPoints() {
        double euler = 0.57721566490153286;
        assertThat(GammaShape.logExcess(1)).isCloseTo(euler, within(1e-15));
        assertThat(GammaShape.logExcess(0.5)).isCloseTo(0.5 * (Math.log(0.5) + euler + 2 * Math.log(2)), within(1e-15));
        assertThat(GammaShape.trigammaExcess(1)).isCloseTo(Math.PI * Math.PI / 6 - 1, within(1e-15));
        assertThat(GammaShape.trigammaExcess(0.5)).isCloseTo(Math.PI * Math.PI / 8 - 0.5, within(1e-15));
        assertThat(GammaShape.logExcess(1e12)).isCloseTo(0.5, within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.3, 2, 9, 14.9, 15.1, 200})
    void shapeFunctionsAreDerivativesOfLogGamma(double a) {
        double h = 1e-3 * a;
        double slope = (GammaFunction.logGamma(a - 2 * h)
                        - 8 * GammaFunction.logGamma(a - h)
                        + 8 * GammaFunction.logGamma(a + h)
                        - GammaFunction.logGamma(a + 2 * h))
                / (12 * h);
        assertThat(GammaShape.logExcess(a)).isCloseTo(a * (Math.log(a) - slope), within(1e-9 * a));
        double byRecurrence = GammaShape.trigammaExcess(a + 1);
        double trigamma = (GammaShape.trigammaExcess(a) + a) / (a * a);
        assertThat((trigamma - 1 / (a * a)) * (a + 1) * (a + 1) - (a + 1)).isCloseTo(byRecurrence, within(1e-12 * a));
    }

    private static double mean(SetIntegral integral) {
        double sum = 0;
        for (int q = 0; q < integral.size(); q++) {
            sum += integral.weight(q) * Math.exp(integral.y(q));
        }
        return sum;
    }
}
