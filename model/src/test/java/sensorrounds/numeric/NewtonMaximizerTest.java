package sensorrounds.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import sensorrounds.numeric.Objective.Evaluation;

class NewtonMaximizerTest {
    /** Minus Rosenbrock (1960), Computer J. 3:175: curved valley, Hessian indefinite on the way, maximum at (1, 1). */
    @Test
    void findsTheEndOfRosenbrocksValley() {
        Objective valley = p -> {
            double x = p[0];
            double y = p[1];
            double bend = y - x * x;
            return new Evaluation(
                    -100 * bend * bend - (1 - x) * (1 - x),
                    new double[] {400 * x * bend + 2 * (1 - x), -200 * bend},
                    new double[][] {{400 * bend - 800 * x * x - 2, 400 * x}, {400 * x, -200}});
        };
        Maximum maximum = NewtonMaximizer.withDefaults().maximize(valley, new double[] {-1.2, 1});
        assertThat(maximum.outcome()).isEqualTo(Maximum.Outcome.CONVERGED);
        assertThat(maximum.point()[0]).isCloseTo(1, within(1e-9));
        assertThat(maximum.point()[1]).isCloseTo(1, within(1e-9));
    }

    @Test
    void saysWhenItRunsOutOfIterations() {
        Objective slope = p -> new Evaluation(p[0], new double[] {1}, new double[][] {{0}});
        Maximum maximum = NewtonMaximizer.withDefaults().withMaxIterations(7).maximize(slope, new double[] {0});
        assertThat(maximum.outcome()).isEqualTo(Maximum.Outcome.OUT_OF_ITERATIONS);
        assertThat(maximum.iterations()).isEqualTo(7);
    }

    @Test
    void stopsAtTheEdgeOfWhatIsAdmissible() {
        Objective edge = p -> new Evaluation(p[0] > 2 ? Double.NaN : p[0], new double[] {1}, new double[][] {{0}});
        Maximum maximum = NewtonMaximizer.withDefaults().maximize(edge, new double[] {0});
        assertThat(maximum.outcome()).isNotEqualTo(Maximum.Outcome.CONVERGED);
        assertThat(maximum.point()[0]).isCloseTo(2, within(1e-6));
    }

    @Test
    void refusesAStartWithoutAValue() {
        Objective nowhere = p -> new Evaluation(Double.NaN, new double[] {0}, new double[][] {{0}});
        assertThat(NewtonMaximizer.withDefaults()
                        .maximize(nowhere, new double[] {0})
                        .outcome())
                .isEqualTo(Maximum.Outcome.BAD_START);
    }

    @Test
    void choleskySolvesAndInverts() {
        // Inverse by hand: the determinant is 1.
        double[][] matrix = {{2, 1}, {1, 1}};
        PositiveDefinite a = PositiveDefinite.of(matrix).orElseThrow();
        assertThat(a.inverse()[0]).containsExactly(new double[] {1, -1}, within(1e-14));
        assertThat(a.inverse()[1]).containsExactly(new double[] {-1, 2}, within(1e-14));
        assertThat(a.solve(new double[] {3, 2})).containsExactly(new double[] {1, 1}, within(1e-14));
        assertThat(PositiveDefinite.oneNorm(matrix)).isEqualTo(3);
        assertThat(PositiveDefinite.of(new double[][] {{1, 2}, {2, 1}})).isEmpty();
        assertThat(PositiveDefinite.of(new double[][] {{Double.NaN}})).isEmpty();
    }
}
