package sensorrounds.numeric;

import java.util.Optional;
import sensorrounds.numeric.Maximum.Outcome;

/**
 * The method of Broyden, Fletcher, Goldfarb and Shanno in its damped form, which keeps the model of the curvature
 * positive definite under a line search that only asks for a gain (Nocedal and Wright 2006, Numerical Optimization, 6.1
 * and procedure 18.2). It starts from the objective's own guess at the curvature where it has one. It stops when the
 * gain still to be expected by that model, g'B^-1 g / 2, is small; since B is a model, a caller that needs certainty
 * looks at the true Hessian there.
 */
public final class QuasiNewtonMaximizer {
    private static final double LEAST_GAIN = 1e-4;
    private static final double DAMPING = 0.2;
    private static final int MAX_HALVINGS = 40;

    private final int maxIterations;
    private final double longestStep;
    private final double decrementTolerance;

    private QuasiNewtonMaximizer(int maxIterations, double longestStep, double decrementTolerance) {
        this.maxIterations = maxIterations;
        this.longestStep = longestStep;
        this.decrementTolerance = decrementTolerance;
    }

    /** 500 iterations, steps up to 1 per coordinate, decrement 1e-12 (1e-6 standard errors for a log-likelihood). */
    public static QuasiNewtonMaximizer withDefaults() {
        return new QuasiNewtonMaximizer(500, 1, 1e-12);
    }

    public QuasiNewtonMaximizer withMaxIterations(int iterations) {
        return new QuasiNewtonMaximizer(iterations, longestStep, decrementTolerance);
    }

    /** Stops when g'B^-1 g is this small: the square of the distance from the maximum in standard errors. */
    public QuasiNewtonMaximizer withDecrement(double tolerance) {
        if (!(tolerance > 0)) {
            throw new IllegalArgumentException("the decrement to stop at must be positive, not " + tolerance);
        }
        return new QuasiNewtonMaximizer(maxIterations, longestStep, tolerance);
    }

    /**
     * Where the search ended.
     *
     * @param evaluations times the objective was asked
     * @param decrement g'B^-1 g at the point
     */
    public record Ascent(
            Outcome outcome,
            double[] point,
            SlopeObjective.Evaluation at,
            int iterations,
            int evaluations,
            double decrement) {}

    public Ascent maximize(SlopeObjective objective, double[] start) {
        double[] point = start.clone();
        SlopeObjective.Evaluation here = objective.at(point);
        int evaluations = 1;
        if (!Double.isFinite(here.value())) {
            return new Ascent(Outcome.BAD_START, point, here, 0, evaluations, Double.NaN);
        }
        double[][] curvature = startingCurvature(here);
        boolean fresh = true;
        double decrement = Double.NaN;
        for (int iteration = 1; iteration <= maxIterations; iteration++) {
            Optional<PositiveDefinite> model = PositiveDefinite.of(curvature);
            if (model.isEmpty()) {
                curvature = startingCurvature(here);
                model = PositiveDefinite.of(curvature);
                fresh = true;
                if (model.isEmpty()) {
                    return new Ascent(Outcome.NO_PROGRESS, point, here, iteration, evaluations, Double.NaN);
                }
            }
            double[] step = model.get().solve(here.gradient());
            decrement = dot(step, here.gradient());
            if (decrement <= decrementTolerance) {
                return new Ascent(Outcome.CONVERGED, point, here, iteration, evaluations, decrement);
            }
            double shortened = shorten(step);
            SlopeObjective.Evaluation there = null;
            double[] moved = null;
            for (int halving = 0; halving < MAX_HALVINGS; halving++) {
                moved = plus(point, step);
                there = objective.at(moved);
                evaluations++;
                double asked = LEAST_GAIN * dot(step, here.gradient()) - 1e-14 * Math.abs(here.value());
                if (there.value() - here.value() >= asked) {
                    break;
                }
                there = null;
                halve(step);
            }
            if (there == null) {
                if (fresh) {
                    return new Ascent(Outcome.NO_PROGRESS, point, here, iteration, evaluations, decrement);
                }
                curvature = startingCurvature(here);
                fresh = true;
                continue;
            }
            if (fresh && here.information() == null && shortened == 1) {
                scale(curvature, step, here.gradient(), there.gradient());
            }
            update(curvature, step, here.gradient(), there.gradient());
            fresh = false;
            point = moved;
            here = there;
        }
        return new Ascent(Outcome.OUT_OF_ITERATIONS, point, here, maxIterations, evaluations, decrement);
    }

    /** The objective's own guess, or a multiple of one that makes the first step one of length 1 per coordinate. */
    private static double[][] startingCurvature(SlopeObjective.Evaluation at) {
        if (at.information() != null && PositiveDefinite.of(at.information()).isPresent()) {
            return copy(at.information());
        }
        double largest = 0;
        for (double g : at.gradient()) {
            largest = Math.max(largest, Math.abs(g));
        }
        double[][] one = new double[at.gradient().length][at.gradient().length];
        for (int i = 0; i < one.length; i++) {
            one[i][i] = largest > 0 ? largest : 1;
        }
        return one;
    }

    /** Nocedal and Wright (2006), eq. 6.20: the first step tells the size of the curvature. */
    private static void scale(double[][] b, double[] s, double[] before, double[] after) {
        double sy = 0;
        double yy = 0;
        for (int i = 0; i < s.length; i++) {
            double y = before[i] - after[i];
            sy += s[i] * y;
            yy += y * y;
        }
        if (sy > 0) {
            for (int i = 0; i < b.length; i++) {
                b[i][i] = yy / sy;
            }
        }
    }

    private static void update(double[][] b, double[] s, double[] before, double[] after) {
        int n = s.length;
        double[] bs = new double[n];
        for (int i = 0; i < n; i++) {
            bs[i] = dot(b[i], s);
        }
        double sbs = dot(s, bs);
        double sy = 0;
        for (int i = 0; i < n; i++) {
            sy += s[i] * (before[i] - after[i]);
        }
        if (!(sbs > 0)) {
            return;
        }
        double theta = sy >= DAMPING * sbs ? 1 : (1 - DAMPING) * sbs / (sbs - sy);
        double[] r = new double[n];
        double sr = 0;
        for (int i = 0; i < n; i++) {
            r[i] = theta * (before[i] - after[i]) + (1 - theta) * bs[i];
            sr += s[i] * r[i];
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                b[i][j] += r[i] * r[j] / sr - bs[i] * bs[j] / sbs;
            }
        }
    }

    private double shorten(double[] step) {
        double longest = 0;
        for (double s : step) {
            longest = Math.max(longest, Math.abs(s));
        }
        double factor = longest > longestStep ? longestStep / longest : 1;
        for (int i = 0; i < step.length; i++) {
            step[i] *= factor;
        }
        return factor;
    }

    private static void halve(double[] step) {
        for (int i = 0; i < step.length; i++) {
            step[i] /= 2;
        }
    }

    private static double[] plus(double[] point, double[] step) {
        double[] next = point.clone();
        for (int i = 0; i < next.length; i++) {
            next[i] += step[i];
        }
        return next;
    }

    private static double[][] copy(double[][] a) {
        double[][] b = new double[a.length][];
        for (int i = 0; i < a.length; i++) {
            b[i] = a[i].clone();
        }
        return b;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
