package sensorrounds.numeric;

import java.util.Optional;

/**
 * How level and how curved an objective is where a search ended, in units in which its parameters are of one size, so that
 * one figure for all of them says something. Condition: Golub and Van Loan (1996), Matrix Computations, 2.7.2, in the one-norm.
 */
public final class ScaledCurvature {
    private final double largestSlope;
    private final double condition;

    private ScaledCurvature(double largestSlope, double condition) {
        this.largestSlope = largestSlope;
        this.condition = condition;
    }

    /** @param unit of each parameter: its slopes count by so many parts, its curvatures by the square */
    public static ScaledCurvature of(Objective.Evaluation at, double... unit) {
        double slope = 0;
        double[][] information = new double[unit.length][unit.length];
        for (int i = 0; i < unit.length; i++) {
            slope = Math.max(slope, Math.abs(at.gradient()[i]) / unit[i]);
            for (int j = 0; j < unit.length; j++) {
                information[i][j] = -at.hessian()[i][j] / (unit[i] * unit[j]);
            }
        }
        Optional<double[][]> inverse = PositiveDefinite.of(information).map(PositiveDefinite::inverse);
        return new ScaledCurvature(
                slope,
                inverse.map(v -> PositiveDefinite.oneNorm(information) * PositiveDefinite.oneNorm(v))
                        .orElse(Double.POSITIVE_INFINITY));
    }

    /** Largest first derivative, without its sign. */
    public double largestSlope() {
        return largestSlope;
    }

    /** Of the negated second derivatives; infinite where they are not positive definite. */
    public double condition() {
        return condition;
    }
}
