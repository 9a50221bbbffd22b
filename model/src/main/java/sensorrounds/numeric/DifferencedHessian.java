package sensorrounds.numeric;

/**
 * Second derivatives by central differences of the gradient at two step lengths, extrapolated: error of order h^4.
 * Source: Abramowitz and Stegun (1964), 25.3.24 applied to the gradient.
 */
public final class DifferencedHessian {
    /** Fit for parameters of size about 1 (logs): truncation and rounding both stay below 1e-11 of the curvature. */
    private static final double STEP = 1e-3;

    private DifferencedHessian() {}

    /** The Hessian, symmetric; entries are NaN where the objective is not admissible nearby. */
    public static double[][] of(SlopeObjective objective, double[] point) {
        int n = point.length;
        double[][] slopes = new double[n][];
        for (int i = 0; i < n; i++) {
            double[] near = difference(objective, point, i, STEP);
            double[] far = difference(objective, point, i, 2 * STEP);
            for (int j = 0; j < n; j++) {
                near[j] = (4 * near[j] - far[j]) / 3;
            }
            slopes[i] = near;
        }
        double[][] hessian = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                hessian[i][j] = 0.5 * (slopes[i][j] + slopes[j][i]);
            }
        }
        return hessian;
    }

    private static double[] difference(SlopeObjective objective, double[] point, int i, double step) {
        double[] moved = point.clone();
        moved[i] = point[i] + step;
        SlopeObjective.Evaluation above = objective.at(moved);
        moved[i] = point[i] - step;
        SlopeObjective.Evaluation below = objective.at(moved);
        double[] slope = new double[point.length];
        for (int j = 0; j < slope.length; j++) {
            slope[j] = Double.isFinite(above.value()) && Double.isFinite(below.value())
                    ? (above.gradient()[j] - below.gradient()[j]) / (2 * step)
                    : Double.NaN;
        }
        return slope;
    }
}
