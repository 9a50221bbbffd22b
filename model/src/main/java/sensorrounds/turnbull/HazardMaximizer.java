package sensorrounds.turnbull;

/**
 * Maximises a {@link HazardProblem} over h >= 0. A few multiplicative steps, each interval's odds of failing times pull
 * over r, find the shape; then damped, projected Newton steps find the intervals without mass, which become exact zeros,
 * and converge fast on the others. Every step is kept only if the likelihood rises. The end is decided by the certified
 * gap alone, never by small steps.
 *
 * <p>Sources: two-metric projection: Bertsekas (1982), SIAM J. Control Optim. 20:221-246; damping as Levenberg and
 * Marquardt, inexact solution by conjugate gradients: Nocedal and Wright (2006), Numerical Optimization, 4.1, 7.1 and
 * 10.3; acceptance by slopes where rounding hides the gain: Hager and Zhang (2005), SIAM J. Optim. 16:170-192, eq. 4.1.
 * The multiplicative step is exact for an interval that stands alone and starts uphill always, each factor having the
 * sign of its gradient.
 */
final class HazardMaximizer {
    private static final int WARM_UP = 10;
    private static final double ARMIJO = 1e-4;
    /** Relative loss of value that may be rounding: sums over very unequal weights cancel. */
    private static final double ROUNDING = 1e-10;

    private static final int MAX_TRIES = 40;
    private static final double FIRST_DAMPING = 1e-4;
    private static final double LEAST_DAMPING = 1e-13;
    private static final double DAMPING_FACTOR = 10;
    private static final int MAX_SOLVER_STEPS = 60;
    /** Steps that a search may take after the gap is small enough, as long as each makes it smaller. */
    private static final int POLISH = 3;

    private final HazardProblem problem;
    private final double tolerance;
    private final int maxIterations;

    HazardMaximizer(HazardProblem problem, double tolerance, int maxIterations) {
        this.problem = problem;
        this.tolerance = tolerance;
        this.maxIterations = maxIterations;
    }

    /** Where the search ended, and how far below the maximum that can be at most. */
    record Solution(double[] hazard, double gap, int iterations, boolean certified) {}

    /** @param damping for the next Newton step from here */
    private record Point(double[] hazard, double[] reach, double value, double damping) {}

    Solution maximize(double[] start) {
        Point here = at(start, FIRST_DAMPING);
        Solution best = null;
        int polished = 0;
        for (int iteration = 0; here != null && iteration <= maxIterations; iteration++) {
            double[] pull = problem.pull(here.reach);
            double gap = Math.max(0, problem.gap(here.hazard, here.reach, pull));
            if (best == null || gap < best.gap) {
                best = new Solution(here.hazard, gap, iteration, gap <= tolerance);
            } else if (best.certified) {
                return best;
            }
            if (best.certified && polished++ == POLISH) {
                return best;
            }
            here = step(here, pull, gap, iteration < WARM_UP);
        }
        return best;
    }

    private Point step(Point here, double[] pull, double gap, boolean warmUp) {
        Point next = warmUp ? multiplied(here, pull) : newton(here, pull, gap);
        if (next == null) {
            next = warmUp ? newton(here, pull, gap) : multiplied(here, pull);
        }
        return next;
    }

    private Point at(double[] hazard, double damping) {
        double[] reach = problem.reach(hazard);
        return new Point(hazard, reach, problem.value(hazard, reach), damping);
    }

    /** Null when no step however short gains anything. */
    private Point multiplied(Point here, double[] pull) {
        double power = 1;
        for (int attempt = 0; attempt < MAX_TRIES; attempt++, power /= 2) {
            double[] hazard = new double[problem.size()];
            for (int k = 0; k < hazard.length; k++) {
                double factor = Math.pow(Math.max(0, pull[k]) / problem.outlived(k), power);
                hazard[k] = here.hazard[k] > 0 ? Math.log1p(Math.expm1(here.hazard[k]) * factor) : 0;
            }
            Point next = at(hazard, here.damping);
            if (next.value > here.value) {
                return next;
            }
        }
        return null;
    }

    /** Null when no damping however strong makes the value rise. */
    private Point newton(Point here, double[] pull, double gap) {
        int m = problem.size();
        double[] curvature = problem.curvature(here.reach);
        double[] diagonal = problem.diagonal(curvature);
        double[] gradient = new double[m];
        for (int k = 0; k < m; k++) {
            gradient[k] = pull[k] - problem.outlived(k);
        }
        double residual = Math.min(0.1, Math.sqrt(gap / (1 + Math.abs(here.value))));
        double damping = here.damping;
        for (int attempt = 0; attempt < MAX_TRIES; attempt++, damping *= DAMPING_FACTOR) {
            boolean[] free = new boolean[m];
            for (int k = 0; k < m; k++) {
                double alone = here.hazard[k] + gradient[k] / (diagonal[k] * (1 + damping));
                free[k] = diagonal[k] > 0 && (gradient[k] >= 0 || alone > 0);
            }
            double[] step = new InformationSolver(problem, curvature, diagonal, free, damping)
                    .solve(gradient, residual, MAX_SOLVER_STEPS);
            double[] hazard = new double[m];
            double expected = 0;
            for (int k = 0; k < m; k++) {
                hazard[k] = free[k] ? Math.max(0, here.hazard[k] + step[k]) : 0;
                expected += gradient[k] * (hazard[k] - here.hazard[k]);
            }
            double eased = attempt == 0 ? Math.max(LEAST_DAMPING, damping / DAMPING_FACTOR) : damping;
            Point next = at(hazard, eased);
            if (rises(here, next, expected)) {
                return next;
            }
        }
        return null;
    }

    private boolean rises(Point here, Point next, double expected) {
        double gain = next.value - here.value;
        if (!(gain >= -ROUNDING * Math.abs(here.value))) {
            return false;
        }
        if (gain >= ARMIJO * expected) {
            return true;
        }
        double[] pull = problem.pull(next.reach);
        double slope = 0;
        for (int k = 0; k < pull.length - 1; k++) {
            slope += (pull[k] - problem.outlived(k)) * (next.hazard[k] - here.hazard[k]);
        }
        return slope >= -(1 - 2 * ARMIJO) * expected;
    }
}
