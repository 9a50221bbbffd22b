package sensorrounds.turnbull;

import sensorrounds.survival.LifetimeSample;

/**
 * Nonparametric maximum likelihood estimate of survival from any mix of exact, left-, right- and interval-censored lives
 * with delayed entry and weights. It assumes no shape; it equals Kaplan-Meier where failures are exact.
 *
 * <p>The likelihood is maximised in the increments of the cumulative hazard over the innermost intervals, where it is
 * concave with or without truncation ({@link HazardProblem}), and the result carries a bound on what is still missing
 * from its maximum. Under delayed entry the estimate stands on few lives at early ages and can come out far too low
 * there, or fall to 0 while later entrants live on; the fit names both ({@link InnermostInterval#outlived()},
 * {@link TurnbullFit#collapsedAt()}). A diagnostic beside a law of life, not in its place.
 *
 * <p>Sources: Turnbull (1976), JRSS B 38:290-295; Frydman (1994), JRSS B 56:71-74; existence: Hudgens (2005), JRSS B
 * 67:573-587; optimality: Gentleman and Geyer (1994), Biometrika 81:618-623.
 */
public final class Turnbull {
    private final double tolerance;
    private final int maxIterations;

    private Turnbull(double tolerance, int maxIterations) {
        this.tolerance = tolerance;
        this.maxIterations = maxIterations;
    }

    /** Log-likelihood within 1e-10 per life of its maximum; 500 iterations. */
    public static Turnbull withDefaults() {
        return new Turnbull(1e-10, 500);
    }

    /** How much log-likelihood per life (weight) may be missing at most; positive. */
    public Turnbull withTolerance(double gapPerLife) {
        if (!(gapPerLife > 0)) {
            throw new IllegalArgumentException("the gap allowed per life must be positive, not " + gapPerLife);
        }
        return new Turnbull(gapPerLife, maxIterations);
    }

    public Turnbull withMaxIterations(int iterations) {
        if (iterations < 1) {
            throw new IllegalArgumentException("a fit needs at least one iteration, not " + iterations);
        }
        return new Turnbull(tolerance, iterations);
    }

    /** The estimate, or the reason why there is none: ask {@link TurnbullFit#converged()} first. */
    public TurnbullFit fit(LifetimeSample sample) {
        if (sample.size() == 0) {
            return TurnbullFit.withoutLives();
        }
        PlacedLives lives = new PlacedLives(sample);
        HazardProblem problem = lives.problem();
        HazardMaximizer.Solution solution =
                new HazardMaximizer(problem, tolerance * sample.lives(), maxIterations).maximize(start(problem));
        return lives.result(problem, solution);
    }

    /** Each life's failure spread evenly over its intervals, set against those known to outlive them. */
    private static double[] start(HazardProblem problem) {
        double[] even = new double[problem.groups()];
        for (int g = 0; g < even.length; g++) {
            even[g] = 1.0 / (problem.end(g) - problem.from(g));
        }
        double[] failures = problem.spreadWeighted(even);
        double[] hazard = new double[problem.size()];
        for (int k = 0; k < hazard.length; k++) {
            hazard[k] = Math.log1p(Math.max(0, failures[k]) / problem.outlived(k));
        }
        return hazard;
    }
}
