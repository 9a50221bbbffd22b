package sensorrounds.markov;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import sensorrounds.markov.MarkovFit.Status;
import sensorrounds.numeric.DifferencedHessian;
import sensorrounds.numeric.Maximum;
import sensorrounds.numeric.PositiveDefinite;
import sensorrounds.numeric.QuasiNewtonMaximizer;
import sensorrounds.numeric.SlopeObjective;

/**
 * Maximum likelihood fit of a {@link MarkovModel}, whose values are the start. A quasi-Newton search on analytic
 * derivatives, then Newton steps with the Hessian by differences of the gradient; the Newton decrement there must be
 * small and the Hessian negative definite, else the fit says that it failed. Covariance from the observed information.
 * Sources: Kalbfleisch and Lawless (1985), JASA 80:863; Jackson (2011), J. Stat. Software 38(8).
 */
public final class MarkovFitter {
    /** Newton decrement g'(-H)^-1 g of an accepted fit: within 1e-6 standard errors of the maximum. */
    private static final double DECREMENT = 1e-12;
    /** The search goes on for longer, since a step of it costs far less than a Hessian. */
    private static final double SEARCH_DECREMENT = 1e-20;
    /** Information on a log scale below which a parameter counts as not determined by the data. */
    private static final double LEAST_INFORMATION = 1e-4;
    /** Logs of intensities and of odds beyond this have run away to 0 or infinity. */
    private static final double RUN_AWAY = 15;

    private static final int POLISHING_STEPS = 4;

    private final MarkovModel start;
    private final QuasiNewtonMaximizer search;

    private MarkovFitter(MarkovModel start, QuasiNewtonMaximizer search) {
        this.start = start;
        this.search = search;
    }

    /** Fits from the values of this model. */
    public static MarkovFitter of(MarkovModel start) {
        return new MarkovFitter(start, QuasiNewtonMaximizer.withDefaults().withDecrement(SEARCH_DECREMENT));
    }

    public MarkovFitter withMaxIterations(int iterations) {
        return new MarkovFitter(start, search.withMaxIterations(iterations));
    }

    /** The fit; ask {@link MarkovFit#converged} before its values. */
    public MarkovFit fit(List<Path> paths) {
        long sightings = paths.stream()
                .mapToLong(p -> p.sightings().size() - 1L)
                .filter(s -> s > 0)
                .sum();
        if (sightings == 0) {
            return MarkovFit.failed(Status.NO_DATA, "no subject is seen twice", 0, Double.NaN, Double.NaN);
        }
        MarkovLikelihood likelihood = new MarkovLikelihood(start, paths);
        double[] from = start.point();
        QuasiNewtonMaximizer.Ascent ascent = search.maximize(likelihood, from);
        if (ascent.outcome() == Maximum.Outcome.BAD_START) {
            String why = likelihood.impossible(from);
            return MarkovFit.failed(
                    Status.IMPOSSIBLE_DATA,
                    why == null ? "the log-likelihood of the start is not finite" : why + "; allow the move or mend it",
                    0,
                    Double.NaN,
                    Double.NaN);
        }
        double[] point = ascent.point();
        SlopeObjective.Evaluation here = ascent.at();
        double decrement = Double.NaN;
        Optional<PositiveDefinite> information = Optional.empty();
        double[][] negated = null;
        for (int i = 0; i < POLISHING_STEPS; i++) {
            negated = negated(DifferencedHessian.of(likelihood, point));
            information = PositiveDefinite.of(negated);
            if (information.isEmpty()) {
                break;
            }
            double before = Double.POSITIVE_INFINITY;
            // With the information held fixed each step still multiplies the distance by a small factor.
            for (int k = 0; k < POLISHING_STEPS; k++) {
                double[] step = information.get().solve(here.gradient());
                decrement = dot(step, here.gradient());
                if (!(decrement > 0 && decrement < before && decrement < 1)) {
                    break;
                }
                double[] next = point.clone();
                for (int j = 0; j < next.length; j++) {
                    next[j] += step[j];
                }
                SlopeObjective.Evaluation there = likelihood.at(next);
                if (!(there.value() >= here.value() - 1e-12 * Math.abs(here.value()))) {
                    break;
                }
                before = decrement;
                point = next;
                here = there;
            }
            if (decrement <= DECREMENT) {
                break;
            }
        }
        return judged(point, here, ascent, negated, information, decrement);
    }

    private MarkovFit judged(
            double[] point,
            SlopeObjective.Evaluation here,
            QuasiNewtonMaximizer.Ascent ascent,
            double[][] negated,
            Optional<PositiveDefinite> information,
            double decrement) {
        double gradient = 0;
        for (double g : here.gradient()) {
            gradient = Math.max(gradient, Math.abs(g));
        }
        String runAway = runAway(point, negated);
        double condition = information
                .map(v -> PositiveDefinite.oneNorm(negated) * PositiveDefinite.oneNorm(v.inverse()))
                .orElse(Double.POSITIVE_INFINITY);
        if (runAway != null || information.isEmpty()) {
            String cause = runAway != null
                    ? runAway + " is not determined by the data: its likelihood is flat or grows without end"
                    : "the log-likelihood is not concave where the search ended with " + ascent.outcome()
                            + "; some parameters can be traded for others, or the start lies too far off";
            return MarkovFit.failed(Status.FLAT_LIKELIHOOD, cause, ascent.iterations(), gradient, condition);
        }
        if (!(decrement <= DECREMENT)) {
            String cause = String.format(
                    Locale.ROOT,
                    "the search ended with %s after %d steps, largest derivative %.3g, %.3g standard errors away",
                    ascent.outcome(),
                    ascent.iterations(),
                    gradient,
                    Math.sqrt(decrement));
            return MarkovFit.failed(Status.NOT_CONVERGED, cause, ascent.iterations(), gradient, condition);
        }
        return new MarkovFit(
                Status.CONVERGED,
                "",
                ascent.iterations(),
                gradient,
                condition,
                start.at(point),
                here.value(),
                information.get().inverse());
    }

    /** The first parameter that has run away, in words; null when none has. */
    private String runAway(double[] point, double[][] information) {
        for (int i = 0; i < point.length; i++) {
            boolean effect = i >= start.moves().size() && i < start.errorsFrom();
            boolean far = !effect && Math.abs(point[i]) > RUN_AWAY;
            if (far || information[i][i] < LEAST_INFORMATION) {
                return name(i);
            }
        }
        return null;
    }

    private String name(int i) {
        int m = start.moves().size();
        if (i >= start.errorsFrom()) {
            MarkovModel.Pair e = start.errors().get(i - start.errorsFrom());
            return "the chance of seeing state " + e.from() + " as " + e.to();
        }
        MarkovModel.Pair move = start.moves().get(i % m);
        String intensity = "the intensity from state " + move.from() + " to " + move.to();
        return i < m ? intensity : "the effect of covariate " + (i / m - 1) + " on " + intensity;
    }

    private static double[][] negated(double[][] hessian) {
        for (double[] row : hessian) {
            for (int j = 0; j < row.length; j++) {
                row[j] = -row[j];
            }
        }
        return hessian;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
