package sensorrounds.recurrence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DiceTest {
    private static final int DRAWS = 40_000;

    /** Mean and variance of a gamma law are its shape; P(X <= shape) by the incomplete gamma function. */
    @ParameterizedTest
    @CsvSource({"0.05", "0.7", "1", "3.5", "400"})
    void gamma(double shape) {
        Dice dice = new Dice(1);
        double sum = 0;
        double squares = 0;
        double under = 0;
        for (int i = 0; i < DRAWS; i++) {
            double x = dice.gamma(shape);
            sum += x;
            squares += (x - shape) * (x - shape);
            under += x <= shape ? 1 : 0;
        }
        double error = Math.sqrt(shape / DRAWS);
        assertThat(sum / DRAWS).isCloseTo(shape, within(4 * error));
        assertThat(squares / DRAWS).isCloseTo(shape, within(4 * shape * Math.sqrt((2 + 6 / shape) / DRAWS)));
        assertThat(under / DRAWS)
                .isCloseTo(new GammaDistribution(shape, 1).cdf(shape), within(4 * 0.5 / Math.sqrt(DRAWS)));
    }

    /** Mean n p, variance n p (1 - p), and the chance of 0, for few and many trials. */
    @ParameterizedTest
    @CsvSource({"1, 0.3", "12, 0.9", "60, 0.5", "5000, 0.001", "5000, 0.4", "200000, 0.97"})
    void binomial(long n, double p) {
        Dice dice = new Dice(2);
        double sum = 0;
        double squares = 0;
        double none = 0;
        for (int i = 0; i < DRAWS; i++) {
            long k = dice.binomial(n, p);
            assertThat(k).isBetween(0L, n);
            sum += k;
            squares += Math.pow(k - n * p, 2);
            none += k == 0 ? 1 : 0;
        }
        double variance = n * p * (1 - p);
        assertThat(sum / DRAWS).isCloseTo(n * p, within(4 * Math.sqrt(variance / DRAWS)));
        assertThat(squares / DRAWS).isCloseTo(variance, within(4 * variance * Math.sqrt((2 + 1 / variance) / DRAWS)));
        assertThat(none / DRAWS).isCloseTo(Math.pow(1 - p, n), within(4 * 0.5 / Math.sqrt(DRAWS)));
    }
}
