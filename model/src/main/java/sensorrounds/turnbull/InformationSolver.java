package sensorrounds.turnbull;

/**
 * Solves (I + damping diag I) x = b with the information matrix restricted to some intervals, by conjugate gradients
 * with the diagonal as preconditioner (Nocedal and Wright 2006, Numerical Optimization, algorithm 5.3). The matrix is
 * never formed: a product takes O(groups + intervals).
 */
final class InformationSolver {
    private final HazardProblem problem;
    private final double[] curvature;
    private final double[] diagonal;
    private final boolean[] free;
    private final double damping;

    /** @param free intervals the system is restricted to; the others keep x = 0 */
    InformationSolver(HazardProblem problem, double[] curvature, double[] diagonal, boolean[] free, double damping) {
        this.problem = problem;
        this.curvature = curvature;
        this.diagonal = diagonal;
        this.free = free;
        this.damping = damping;
    }

    /** x, or as near to it as the steps go; where a direction has no curvature the search stops. */
    double[] solve(double[] b, double relativeResidual, int maxSteps) {
        int m = problem.size();
        double[] x = new double[m];
        double[] residual = new double[m];
        double[] direction = new double[m];
        double before = 0;
        for (int k = 0; k < m; k++) {
            residual[k] = free[k] ? b[k] : 0;
            direction[k] = free[k] ? residual[k] / diagonal[k] : 0;
            before += residual[k] * direction[k];
        }
        double goal = before * relativeResidual * relativeResidual;
        for (int step = 0; step < maxSteps && before > goal; step++) {
            double[] image = problem.times(curvature, direction);
            double bend = 0;
            for (int k = 0; k < m; k++) {
                if (free[k]) {
                    image[k] += damping * diagonal[k] * direction[k];
                    bend += direction[k] * image[k];
                }
            }
            if (!(bend > 0)) {
                return x;
            }
            double length = before / bend;
            double after = 0;
            for (int k = 0; k < m; k++) {
                if (free[k]) {
                    x[k] += length * direction[k];
                    residual[k] -= length * image[k];
                    after += residual[k] * residual[k] / diagonal[k];
                }
            }
            for (int k = 0; k < m; k++) {
                direction[k] = free[k] ? residual[k] / diagonal[k] + after / before * direction[k] : 0;
            }
            before = after;
        }
        return x;
    }

    /** All intervals with a positive hazard. */
    static boolean[] positive(double[] hazard) {
        boolean[] free = new boolean[hazard.length];
        for (int k = 0; k < hazard.length; k++) {
            free[k] = hazard[k] > 0;
        }
        return free;
    }
}
