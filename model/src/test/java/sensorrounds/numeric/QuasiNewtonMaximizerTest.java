package sensorrounds.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class QuasiNewtonMaximizerTest {
    /** Rosenbrock (1960), Computer J. 3:175, upside down: maximum 0 at (1, 1) at the end of a bent valley. */
    private static SlopeObjective.Evaluation valley(double[] x) {
        double a = 1 - x[0];
        double b = x[1] - x[0] * x[0];
        return new SlopeObjective.Evaluation(
                -a * a - 100 * b * b, new double[] {2 * a + 400 * x[0] * b, -200 * b}, null);
    }

    @Test
    void findsTheEndOfTheValley() {
        QuasiNewtonMaximizer.Ascent ascent = QuasiNewtonMaximizer.withDefaults()
                .withDecrement(1e-18)
                .maximize(QuasiNewtonMaximizerTest::valley, new double[] {-1.2, 1});
        assertThat(ascent.outcome()).isEqualTo(Maximum.Outcome.CONVERGED);
        assertThat(ascent.point()).containsExactly(new double[] {1, 1}, within(1e-8));
        // Second derivatives at (1, 1): -802, 400, -200.
        double[][] hessian = DifferencedHessian.of(QuasiNewtonMaximizerTest::valley, ascent.point());
        assertThat(hessian[0]).containsExactly(new double[] {-802, 400}, within(1e-6));
        assertThat(hessian[1]).containsExactly(new double[] {400, -200}, within(1e-6));
    }

    /** With the true curvature given, a quadratic takes one step. */
    @Test
    void usesTheCurvatureItIsGiven() {
        double[][] h = {{4, 1}, {1, 3}};
        SlopeObjective bowl = x -> new SlopeObjective.Evaluation(
                -2 * x[0] * x[0] - x[0] * x[1] - 1.5 * x[1] * x[1],
                new double[] {-4 * x[0] - x[1], -x[0] - 3 * x[1]},
                h);
        QuasiNewtonMaximizer.Ascent ascent = QuasiNewtonMaximizer.withDefaults().maximize(bowl, new double[] {.5, -.7});
        assertThat(ascent.evaluations()).isEqualTo(2);
        assertThat(ascent.point()).containsExactly(new double[] {0, 0}, within(1e-14));
    }

    @Test
    void saysWhenItDidNotArrive() {
        QuasiNewtonMaximizer search = QuasiNewtonMaximizer.withDefaults();
        assertThat(search.withMaxIterations(3)
                        .maximize(QuasiNewtonMaximizerTest::valley, new double[] {-1.2, 1})
                        .outcome())
                .isEqualTo(Maximum.Outcome.OUT_OF_ITERATIONS);
        assertThat(search.maximize(
                                x -> new SlopeObjective.Evaluation(Double.NaN, new double[] {0}, null),
                                new double[] {0})
                        .outcome())
                .isEqualTo(Maximum.Outcome.BAD_START);
        // A slope of the wrong sign: no step gains anything.
        assertThat(search.maximize(
                                x -> new SlopeObjective.Evaluation(-x[0] * x[0], new double[] {2 * x[0]}, null),
                                new double[] {1})
                        .outcome())
                .isEqualTo(Maximum.Outcome.NO_PROGRESS);
        assertThatThrownBy(() -> search.withDecrement(Double.NaN)).hasMessageContaining("positive");
    }

    /** Any order and any split give the same bits, where adding doubles does not. */
    @Test
    void exactSumKnowsNoOrder() {
        Random random = new Random(11);
        double[] terms = new double[10_000];
        for (int i = 0; i < terms.length; i++) {
            terms[i] = random.nextGaussian() * Math.pow(10, random.nextInt(8) - 4);
        }
        ExactSums forward = new ExactSums(1);
        ExactSums left = new ExactSums(1);
        ExactSums right = new ExactSums(1);
        double plain = 0;
        double plainBack = 0;
        for (int i = 0; i < terms.length; i++) {
            forward.add(0, terms[i]);
            (random.nextBoolean() ? left : right).add(0, terms[terms.length - 1 - i]);
            plain += terms[i];
            plainBack += terms[terms.length - 1 - i];
        }
        right.merge(left);
        assertThat(right.value(0)).isEqualTo(forward.value(0)).isCloseTo(plain, within(1e-7));
        assertThat(plainBack).as("plain addition depends on the order").isNotEqualTo(plain);

        ExactSums tiny = new ExactSums(1);
        tiny.add(0, 1e9);
        tiny.add(0, 1e-15);
        tiny.add(0, -1e9);
        assertThat(tiny.value(0)).isCloseTo(1e-15, within(1e-18));
        assertThatThrownBy(() -> tiny.add(0, Double.NaN)).hasMessageContaining("NaN");
        assertThatThrownBy(() -> tiny.add(0, 1e13)).hasMessageContaining("finite");
    }
}
