package sensorrounds.condition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Likeness of set-mates: recovered where planted, not found where there is none, and its factor solved by hand. */
class SetLikenessTest {
    private static SetCells cells(double variance, int vehicles) {
        Random random = new Random(5);
        SetCells cells = new SetCells();
        for (int i = 0; i < vehicles; i++) {
            double expected = 0.1 + 0.8 * random.nextDouble();
            double frailty = variance == 0 ? 1 : gamma(1 / variance, random) * variance;
            cells.add(poisson(frailty * expected, random), expected, 1);
        }
        return cells;
    }

    /** Integer shapes only: a sum of exponentials. */
    private static double gamma(double shape, Random random) {
        double sum = 0;
        for (int i = 0; i < Math.round(shape); i++) {
            sum -= Math.log(1 - random.nextDouble());
        }
        return sum;
    }

    private static int poisson(double mean, Random random) {
        int n = 0;
        for (double p = random.nextDouble(); p > Math.exp(-mean); p *= random.nextDouble()) {
            n++;
        }
        return n;
    }

    /** The standard error of v = .5 with these 4,000 vehicles is about .08 (second differences of the likelihood). */
    @Test
    void plantedVarianceIsRecovered() {
        assertThat(SetLikeness.fit(cells(0.5, 4000)).variance()).isCloseTo(0.5, within(0.25));
        assertThat(SetLikeness.fit(cells(0, 4000)).variance()).isLessThan(0.12);
    }

    /** By hand: v = .5, that is 2 failures where 2 are expected before anything is seen; (2 + 2) / (2 + 0.5). */
    @Test
    void theFactorIsTheGammaPosteriorMean() {
        SetLikeness fit = SetLikeness.fit(cells(0.5, 4000));
        double shape = 1 / fit.variance();
        assertThat(fit.ratio(new SetCells.SetCount(0, 0))).isEqualTo(1);
        double two = fit.ratio(new SetCells.SetCount(2, 0.5));
        assertThat(two).isGreaterThan(1).isCloseTo((shape + 2) / (shape + 0.5), within(0.05));
        assertThat(fit.ratio(new SetCells.SetCount(0, 2))).isLessThan(1);
    }

    @Test
    void tooFewFailuresMeanNoFactor() {
        SetLikeness few = SetLikeness.fit(cells(0.5, 50));
        assertThat(few.variance()).isZero();
        assertThat(few.note()).contains("at least 50");
        assertThat(few.ratio(new SetCells.SetCount(3, 0.1))).isEqualTo(1);
    }
}
