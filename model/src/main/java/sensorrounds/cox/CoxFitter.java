package sensorrounds.cox;

import java.util.Arrays;
import java.util.Optional;
import sensorrounds.cox.CoxFit.Status;
import sensorrounds.numeric.Maximum;
import sensorrounds.numeric.NewtonMaximizer;
import sensorrounds.numeric.Objective.Evaluation;
import sensorrounds.numeric.PositiveDefinite;

/**
 * Proportional hazards regression by maximum partial likelihood, with delayed entry, covariates that change with age,
 * strata and weights; Newton's method on analytic derivatives. A fit that fails says so, names the column, and gives no
 * coefficients. Source: Therneau and Grambsch (2000), Modeling Survival Data, ch. 3.
 */
public final class CoxFitter {
    /** Share of a column's information not explained by the columns before it, below which it says nothing of its own. */
    private static final double LEAST_OWN_INFORMATION = 1e-10;
    /** A variance grown this much between no effect and the maximum asks for a look at separation. */
    private static final double SUSPECT_GROWTH = 1e3;
    /** And one grown this much is no answer, whatever the reason. */
    private static final double HOPELESS_GROWTH = 1e8;
    /** A sound fit needs four to eight steps. */
    private static final int SUSPECT_ITERATIONS = 15;

    private final Ties ties;
    private final double level;

    private CoxFitter(Ties ties, double level) {
        this.ties = ties;
        this.level = level;
    }

    /** Efron's rule for ties, limits at 95 %. */
    public static CoxFitter withDefaults() {
        return new CoxFitter(Ties.EFRON, 0.95);
    }

    public CoxFitter with(Ties newTies) {
        return new CoxFitter(newTies, level);
    }

    /** Coverage of the limits, in (0, 1). */
    public CoxFitter withLevel(double newLevel) {
        if (!(newLevel > 0 && newLevel < 1)) {
            throw new IllegalArgumentException("coverage of limits must lie between 0 and 1, not " + newLevel);
        }
        return new CoxFitter(ties, newLevel);
    }

    /** The fit; ask {@link CoxFit#converged} before its coefficients. */
    public CoxFit fit(CoxSample sample) {
        RiskSweep sweep = new RiskSweep(sample);
        if (sample.size() == 0) {
            return failed(sweep, Status.NO_ROWS, "", "there are no rows");
        }
        if (sample.failures() == 0) {
            return failed(
                    sweep,
                    Status.NO_FAILURES,
                    "",
                    "none of " + sample.size() + " rows ends in a failure, so" + " there is nothing to compare");
        }
        int p = sweep.columns();
        PartialLikelihood likelihood = new PartialLikelihood(sweep, ties);
        Evaluation atZero = likelihood.at(new double[p]);
        double[][] informationAtZero = negated(atZero.hessian());
        for (int j = 0; j < p; j++) {
            if (!(informationAtZero[j][j] > 1e-12 * sample.failures())) {
                return failed(
                        sweep,
                        Status.CONSTANT_COLUMN,
                        sample.columns().get(j),
                        "it does not vary among the rows at risk at any failure; leave it out");
            }
        }
        int collinear = collinear(informationAtZero);
        if (collinear >= 0) {
            return failed(
                    sweep,
                    Status.COLLINEAR,
                    sample.columns().get(collinear),
                    "it is a combination of " + sample.columns().subList(0, collinear) + "; leave one of them out");
        }
        Maximum maximum = NewtonMaximizer.withDefaults().maximize(likelihood, new double[p]);
        return judged(sweep, atZero, informationAtZero, maximum);
    }

    private CoxFit judged(RiskSweep sweep, Evaluation atZero, double[][] informationAtZero, Maximum maximum) {
        CoxSample sample = sweep.sample();
        double[][] information = negated(maximum.at().hessian());
        Optional<PositiveDefinite> factored = PositiveDefinite.of(information);
        double[][] varianceAtZero =
                PositiveDefinite.of(informationAtZero).orElseThrow().inverse();
        double[][] variance = factored.map(PositiveDefinite::inverse).orElse(null);
        int worst = 0;
        double growth = 0;
        for (int j = 0; j < sweep.columns(); j++) {
            double here = variance == null ? Double.POSITIVE_INFINITY : variance[j][j] / varianceAtZero[j][j];
            // With no variance at all, the column furthest out is the one that ran away.
            boolean further = Math.abs(maximum.point()[j]) > Math.abs(maximum.point()[worst]);
            if (here > growth || (here == growth && further)) {
                growth = here;
                worst = j;
            }
        }
        boolean converged = maximum.outcome() == Maximum.Outcome.CONVERGED;
        double gradientNorm = 0;
        for (double g : maximum.at().gradient()) {
            gradientNorm = Math.max(gradientNorm, Math.abs(g) / sample.failures());
        }
        double condition = variance == null
                ? Double.POSITIVE_INFINITY
                : PositiveDefinite.oneNorm(information) * PositiveDefinite.oneNorm(variance);
        CoxFit.Search search = new CoxFit.Search(maximum.iterations(), gradientNorm, condition);
        if (!converged || growth > SUSPECT_GROWTH || maximum.iterations() > SUSPECT_ITERATIONS) {
            Optional<Separation> separation = Separation.find(sample, sweep, maximum.point());
            if (separation.isPresent()) {
                return failed(
                        sweep,
                        Status.SEPARATION,
                        separation.get().column(),
                        separation.get().cause(),
                        search);
            }
        }
        if (growth > HOPELESS_GROWTH) {
            return failed(
                    sweep,
                    Status.FLAT_LIKELIHOOD,
                    sample.columns().get(worst),
                    "the data leave its coefficient all but undetermined; together with other columns it may tell every"
                            + " failure apart",
                    search);
        }
        if (!converged) {
            return failed(
                    sweep,
                    Status.NOT_CONVERGED,
                    sample.columns().get(worst),
                    "the search ended " + maximum.outcome() + " after " + maximum.iterations() + " steps",
                    search);
        }
        return new CoxFit(
                sweep,
                ties,
                level,
                new CoxFit.Outcome(Status.CONVERGED, "", ""),
                search,
                new CoxFit.Solution(maximum.point(), maximum.at(), atZero, variance));
    }

    private CoxFit failed(RiskSweep sweep, Status status, String column, String cause) {
        return failed(sweep, status, column, cause, new CoxFit.Search(0, Double.NaN, Double.NaN));
    }

    private CoxFit failed(RiskSweep sweep, Status status, String column, String cause, CoxFit.Search search) {
        return new CoxFit(sweep, ties, level, new CoxFit.Outcome(status, column, cause), search, null);
    }

    /** First column that those before it explain, or -1: what is left of its information after regressing on them. */
    private static int collinear(double[][] information) {
        for (int j = 1; j < information.length; j++) {
            double[][] before = new double[j][];
            double[] with = new double[j];
            for (int i = 0; i < j; i++) {
                before[i] = Arrays.copyOf(information[i], j);
                with[i] = information[i][j];
            }
            double[] weights = PositiveDefinite.of(before).orElseThrow().solve(with);
            double own = information[j][j];
            for (int i = 0; i < j; i++) {
                own -= weights[i] * with[i];
            }
            if (!(own > LEAST_OWN_INFORMATION * information[j][j])) {
                return j;
            }
        }
        return -1;
    }

    private static double[][] negated(double[][] matrix) {
        double[][] result = new double[matrix.length][matrix.length];
        for (int i = 0; i < matrix.length; i++) {
            for (int j = 0; j < matrix.length; j++) {
                result[i][j] = -matrix[i][j];
            }
        }
        return result;
    }
}
