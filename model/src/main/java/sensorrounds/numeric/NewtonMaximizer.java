package sensorrounds.numeric;

import java.util.Optional;
import sensorrounds.numeric.Maximum.Outcome;

/**
 * Newton's method with step-halving. Where the Hessian is not negative definite a ridge is added until it is, which
 * turns the step towards the gradient; steps are cut to {@code longestStep} per coordinate. It stops on the Newton
 * decrement g'(-H)^-1 g, twice the gain still to be expected, which does not depend on the scale of the parameters.
 * Sources: Nocedal and Wright (2006), Numerical Optimization, 3.4; Boyd and Vandenberghe (2004), Convex Optimization,
 * 9.5.1.
 */
public final class NewtonMaximizer {
    /** For a log-likelihood: parameters within 1e-8 standard errors of the maximum, then one step more. */
    private static final double DECREMENT_TOLERANCE = 1e-16;

    private static final int MAX_HALVINGS = 60;

    private final int maxIterations;
    private final double longestStep;
    private final double leastRidge;

    private NewtonMaximizer(int maxIterations, double longestStep, double leastRidge) {
        this.maxIterations = maxIterations;
        this.longestStep = longestStep;
        this.leastRidge = leastRidge;
    }

    /** 200 iterations, steps up to 1 per coordinate (fit for parameters on a log scale), ridges from a thousandth up. */
    public static NewtonMaximizer withDefaults() {
        return new NewtonMaximizer(200, 1, 1e-3);
    }

    public NewtonMaximizer withMaxIterations(int iterations) {
        return new NewtonMaximizer(iterations, longestStep, leastRidge);
    }

    /**
     * Where some directions are far more curved than others, a ridge that suits the first stops all movement along the second.
     *
     * @param ridge first one tried, as a share of the norm of the Hessian
     */
    public NewtonMaximizer withLeastRidge(double ridge) {
        return new NewtonMaximizer(maxIterations, longestStep, ridge);
    }

    /** The maximum reached from the start; {@link Maximum#outcome} says whether it is one. */
    public Maximum maximize(Objective objective, double[] start) {
        double[] point = start.clone();
        Objective.Evaluation here = objective.at(point);
        if (!Double.isFinite(here.value())) {
            return new Maximum(Outcome.BAD_START, point, here, 0);
        }
        for (int iteration = 1; iteration <= maxIterations; iteration++) {
            Optional<PositiveDefinite> information = PositiveDefinite.of(negatedWithRidge(here.hessian(), 0));
            PositiveDefinite model = information.orElse(null);
            if (model == null) {
                model = withRidge(here.hessian());
            }
            double[] step = model == null ? here.gradient().clone() : model.solve(here.gradient());
            boolean atMaximum = information.isPresent() && dot(step, here.gradient()) <= DECREMENT_TOLERANCE;
            shorten(step);
            double length = 1;
            double[] next = null;
            Objective.Evaluation there = null;
            for (int halving = 0; halving < MAX_HALVINGS; halving++, length /= 2) {
                next = moved(point, step, length);
                there = objective.at(next);
                // Equal is accepted up to rounding of a long sum, or the last steps to the maximum would be refused.
                if (there.value() >= here.value() - 1e-13 * Math.abs(here.value())) {
                    break;
                }
                there = null;
            }
            if (atMaximum) {
                boolean polished = there != null
                        && PositiveDefinite.of(negatedWithRidge(there.hessian(), 0))
                                .isPresent();
                return new Maximum(Outcome.CONVERGED, polished ? next : point, polished ? there : here, iteration);
            }
            if (there == null) {
                return new Maximum(Outcome.NO_PROGRESS, point, here, iteration);
            }
            point = next;
            here = there;
        }
        return new Maximum(Outcome.OUT_OF_ITERATIONS, point, here, maxIterations);
    }

    /** The negated Hessian with the smallest ridge of a doubling ladder that makes it positive definite, or null. */
    private PositiveDefinite withRidge(double[][] hessian) {
        double ridge = leastRidge * Math.max(PositiveDefinite.oneNorm(hessian), 1e-300);
        for (int i = 0; i < 60; i++, ridge *= 2) {
            Optional<PositiveDefinite> shifted = PositiveDefinite.of(negatedWithRidge(hessian, ridge));
            if (shifted.isPresent()) {
                return shifted.get();
            }
        }
        return null;
    }

    private static double[][] negatedWithRidge(double[][] hessian, double ridge) {
        int n = hessian.length;
        double[][] result = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                result[i][j] = -hessian[i][j] + (i == j ? ridge : 0);
            }
        }
        return result;
    }

    private void shorten(double[] step) {
        double longest = 0;
        for (double s : step) {
            longest = Math.max(longest, Math.abs(s));
        }
        if (longest > longestStep) {
            for (int i = 0; i < step.length; i++) {
                step[i] *= longestStep / longest;
            }
        }
    }

    private static double[] moved(double[] point, double[] step, double length) {
        double[] next = point.clone();
        for (int i = 0; i < next.length; i++) {
            next[i] += length * step[i];
        }
        return next;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
