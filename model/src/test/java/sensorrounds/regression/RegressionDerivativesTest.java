package sensorrounds.regression;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import sensorrounds.numeric.Objective;

/** Gradients and Hessians against central differences, for every family, with a covariate on shape where there is one. */
class RegressionDerivativesTest {
    private static final CovariateLives LIVES = SimulatedFleet.everyKind();

    @ParameterizedTest
    @EnumSource(LifeFamily.class)
    void agreeWithDifferences(LifeFamily family) {
        Design design =
                new Design(family, LIVES.names(), family.hasShape() ? new int[] {1} : new int[0], LIVES.summary());
        Objective objective = LifeRegression.objective(LIVES, design);
        for (double[] start : List.of(
                new double[] {0.1, -0.2, 0.3, 0.4, -0.1, 0.7}, new double[] {0.6, 0.5, -0.4, -0.6, 0.3, -0.4})) {
            double[] point = java.util.Arrays.copyOf(start, design.parameters());
            if (family.hasOwnParameter()) {
                point[design.slopes()] = start[5];
            }
            Objective.Evaluation at = objective.at(point);
            double h = 1e-5;
            for (int i = 0; i < point.length; i++) {
                Objective.Evaluation right = objective.at(moved(point, i, h));
                Objective.Evaluation left = objective.at(moved(point, i, -h));
                close(at.gradient()[i], (right.value() - left.value()) / (2 * h));
                for (int j = 0; j < point.length; j++) {
                    close(at.hessian()[j][i], (right.gradient()[j] - left.gradient()[j]) / (2 * h));
                }
            }
        }
    }

    private static double[] moved(double[] point, int place, double by) {
        double[] moved = point.clone();
        moved[place] += by;
        return moved;
    }

    private static void close(double analytic, double numeric) {
        assertThat(analytic).isCloseTo(numeric, within(2e-6 * (1 + Math.abs(numeric))));
    }

    /** The quick Weibull kernel against the one for any law (which far out in the tail has lost the digits to compare). */
    @ParameterizedTest
    @ValueSource(doubles = {-2, -1, -0.3, 0, 0.4, 1.2, 2.5})
    void theQuickKernelIsTheGeneralOne(double m) {
        LifeKernel quick = LifeFamily.WEIBULL.kernel(Double.NaN);
        LifeKernel general = new LawKernel(LifeFamily.WEIBULL.law(Double.NaN));
        double none = Double.NEGATIVE_INFINITY;
        double never = Double.POSITIVE_INFINITY;
        double[][] lives = {
            {none, none, 0.3},
            {none, 0.2, 0.2},
            {-0.5, 0.2, 0.2},
            {none, -0.4, 0.6},
            {-0.4, -0.4, 0.6},
            {-1, -0.4, 0.1},
            {none, 0.3, never},
            {-1, 0.3, never},
            {0.3, 0.3, never},
            {none, none, never}
        };
        double[] a = new double[LifeKernel.SIZE];
        double[] b = new double[LifeKernel.SIZE];
        for (double[] life : lives) {
            for (double k : new double[] {-1.2, 0, 0.9}) {
                quick.at(life[0], life[1], life[2], m, k, a);
                general.at(life[0], life[1], life[2], m, k, b);
                for (int i = 0; i < a.length; i++) {
                    assertThat(a[i]).isCloseTo(b[i], within(1e-9 * (1 + Math.abs(b[i]))));
                }
            }
        }
    }

    /** In the limit an interval is an exact age, but for the log of its width. */
    @Test
    void aNarrowIntervalIsAnExactAge() {
        LifeKernel kernel = LifeFamily.WEIBULL.kernel(Double.NaN);
        double[] narrow = new double[LifeKernel.SIZE];
        double[] exact = new double[LifeKernel.SIZE];
        double half = 1e-7;
        for (double k : new double[] {-1, 0, 1.5}) {
            kernel.at(-1, Math.log(1.3 - half), Math.log(1.3 + half), 0.2, k, narrow);
            kernel.at(-1, Math.log(1.3), Math.log(1.3), 0.2, k, exact);
            exact[LifeKernel.VALUE] += Math.log(2 * half);
            for (int i = 0; i < narrow.length; i++) {
                assertThat(narrow[i]).isCloseTo(exact[i], within(1e-6));
            }
        }
    }
}
