package sensorrounds.regression;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sensorrounds.numeric.Maximum;
import sensorrounds.numeric.NewtonMaximizer;
import sensorrounds.numeric.Objective;
import sensorrounds.numeric.PositiveDefinite;

/**
 * Accelerated failure time regression: log T = b'x + W / shape, log shape = g'u, by maximum likelihood given alive at
 * entry, under any mix of exact, right-, left- and interval-censored lives with weights. Immutable settings; a fit that
 * fails says so, names the column where it can, and gives no coefficients.
 *
 * <p>Newton's method on analytic first and second derivatives (the parameter of a gamma law by differences), covariates
 * standardised and time scaled inside. Sources: Kalbfleisch and Prentice (2002), The Statistical Analysis of Failure Time
 * Data, 3.6; Meeker and Escobar (1998), Statistical Methods for Reliability Data, ch. 17; left truncation 11.6.
 */
public final class LifeRegression {
    private static final double MAX_LOG_SHAPE = Math.log(1000);
    private static final double MAX_LOG_SCALE = 100;
    /** Information per failure, in standard units, below which a direction counts as not determined by the data. */
    private static final double LEAST_INFORMATION = 1e-6;

    private final LifeFamily family;
    private final double level;
    private final Errors errors;
    private final List<String> shapeColumns;

    /** Where standard errors come from. */
    public enum Errors {
        /** The observed information; lives are independent. */
        INFORMATION,
        /**
         * The jackknife that leaves out one cluster after the other ({@link ClusterSteps}), with limits by Student's t of one degree
         * less than there are clusters: right also where lives of one cluster are alike.
         */
        BY_CLUSTER
    }

    private LifeRegression(LifeFamily family, double level, Errors errors, List<String> shapeColumns) {
        this.family = family;
        this.level = level;
        this.errors = errors;
        this.shapeColumns = shapeColumns;
    }

    /** All covariates on log scale, none on shape; errors from the information, limits at 95 %. */
    public static LifeRegression of(LifeFamily family) {
        return new LifeRegression(family, 0.95, Errors.INFORMATION, List.of());
    }

    /** Coverage of the limits, in (0, 1). */
    public LifeRegression withLevel(double newLevel) {
        if (!(newLevel > 0 && newLevel < 1)) {
            throw new IllegalArgumentException("coverage of limits must lie between 0 and 1, not " + newLevel);
        }
        return new LifeRegression(family, newLevel, errors, shapeColumns);
    }

    public LifeRegression with(Errors newErrors) {
        return new LifeRegression(family, level, newErrors, shapeColumns);
    }

    /** These covariates act on log shape as well. */
    public LifeRegression withShapeOn(String... columns) {
        if (!family.hasShape() && columns.length > 0) {
            throw new IllegalArgumentException("the " + family + " family has no shape for " + List.of(columns)
                    + " to act on; choose another family or leave them out");
        }
        return new LifeRegression(family, level, errors, List.of(columns));
    }

    /**
     * The fit; ask {@link RegressionFit#converged} before its coefficients.
     *
     * @throws IllegalArgumentException if a shape column is unknown, or errors by cluster are asked for lives that know
     *     none
     */
    public RegressionFit fit(LifeSource lives) {
        int[] onShape = shapeColumns.stream()
                .mapToInt(name -> {
                    int column = lives.names().indexOf(name);
                    if (column < 0) {
                        throw new IllegalArgumentException(
                                "no covariate '" + name + "' to act on shape; there are " + lives.names());
                    }
                    return column;
                })
                .toArray();
        if (errors == Errors.BY_CLUSTER && !lives.clustered()) {
            throw new IllegalArgumentException("errors by cluster need lives that know their cluster;"
                    + " call withClusters, or take errors from the information");
        }
        LifeSummary summary = lives.summary();
        Verdict verdict = new Verdict(family, lives.names(), summary);
        Optional<RegressionFit> refusal = verdict.beforeTheFit(onShape.length);
        if (refusal.isPresent()) {
            return refusal.get();
        }
        Design design = new Design(family, lives.names(), onShape, summary);
        RegressionFit best = null;
        for (double[] start : starts(lives, design, summary)) {
            RegressionFit fit = from(start, lives, design, summary, verdict);
            if (best == null || fit.converged() && !(best.converged() && best.logLikelihood() >= fit.logLikelihood())) {
                best = fit;
            }
            if (fit.converged() && !family.hasOwnParameter()) {
                break;
            }
        }
        return best;
    }

    /** Where the maximum among a part of the lives lies, if that is known; else from a flat start, steep ones after it. */
    private List<double[]> starts(LifeSource lives, Design design, LifeSummary summary) {
        List<double[]> starts = new ArrayList<>();
        double log = Math.log(Math.max(summary.exposure(), Double.MIN_NORMAL) / Math.max(summary.failures(), 1));
        double constant = Math.max(-20, Math.min(20, log - design.centre()));
        double[] shapes = family.hasShape() ? new double[] {0, Math.log(4), Math.log(0.5)} : new double[] {0};
        double[] own =
                family == LifeFamily.GENERALISED_GAMMA ? new double[] {1, 0, -0.5} : new double[] {family.start()};
        for (double q : own) {
            for (double shape : shapes) {
                double[] start = new double[design.parameters()];
                start[0] = constant;
                if (family.hasShape()) {
                    start[design.scales()] = shape;
                }
                if (family.hasOwnParameter()) {
                    start[design.slopes()] = q;
                }
                starts.add(start);
            }
        }
        Optional<LifeSource> part = lives.part();
        if (part.isPresent()) {
            List<double[]> better = new ArrayList<>();
            double highest = Double.NEGATIVE_INFINITY;
            for (double[] start : starts) {
                Maximum maximum = NewtonMaximizer.withDefaults().maximize(objective(part.get(), design), start);
                if (maximum.outcome() == Maximum.Outcome.CONVERGED
                        && maximum.at().value() > highest) {
                    highest = maximum.at().value();
                    better.add(0, maximum.point());
                }
                if (!better.isEmpty() && !family.hasOwnParameter()) {
                    break;
                }
            }
            if (family.hasOwnParameter() && !better.isEmpty()) {
                return better.subList(0, 1);
            }
            starts.addAll(0, better);
        }
        return starts;
    }

    /** The log-likelihood within the bounds beyond which a search has run away. */
    static Objective objective(LifeSource lives, Design design) {
        return point -> {
            boolean within = Math.abs(point[0]) <= MAX_LOG_SCALE;
            if (design.shapes() > 0) {
                within &= Math.abs(point[design.scales()]) <= MAX_LOG_SHAPE;
            }
            if (design.family().hasOwnParameter()) {
                within &= Math.abs(point[design.slopes()]) <= design.family().largest();
            }
            return within
                    ? FivePoints.at(lives, design, point)
                    : new Objective.Evaluation(
                            Double.NaN, new double[point.length], new double[point.length][point.length]);
        };
    }

    private RegressionFit from(double[] start, LifeSource lives, Design design, LifeSummary summary, Verdict verdict) {
        Maximum maximum = NewtonMaximizer.withDefaults().maximize(objective(lives, design), start);
        double[] point = maximum.point();
        boolean ranAway = Math.abs(point[0]) > MAX_LOG_SCALE - 2
                || design.shapes() > 0 && Math.abs(point[design.scales()]) > MAX_LOG_SHAPE - 2
                || family.hasOwnParameter() && Math.abs(point[design.slopes()]) > 0.9 * family.largest();
        // In units of z all parameters are of one size, so that condition and gradient say something.
        double shape = design.shapes() > 0 ? Math.exp(point[design.scales()]) : 1;
        int n = point.length;
        double[][] information = new double[n][n];
        double gradient = 0;
        for (int i = 0; i < n; i++) {
            double unit = i < design.scales() ? shape : 1;
            gradient = Math.max(gradient, Math.abs(maximum.at().gradient()[i]) / unit / summary.failures());
            for (int j = 0; j < n; j++) {
                information[i][j] = -maximum.at().hessian()[i][j] / unit / (j < design.scales() ? shape : 1);
            }
        }
        Optional<double[][]> inverse = PositiveDefinite.of(information).map(PositiveDefinite::inverse);
        double condition = inverse.map(v -> PositiveDefinite.oneNorm(information) * PositiveDefinite.oneNorm(v))
                .orElse(Double.POSITIVE_INFINITY);
        boolean flat = inverse.map(v -> 1 / PositiveDefinite.oneNorm(v) < LEAST_INFORMATION * summary.failures())
                .orElse(true);
        Verdict.Search search = new Verdict.Search(maximum.iterations(), gradient, condition);
        if (flat || ranAway) {
            return verdict.flat(search, design, inverse, point);
        }
        if (maximum.outcome() != Maximum.Outcome.CONVERGED) {
            return verdict.notConverged(search, maximum.outcome());
        }
        double[][] covariance = inverse.get();
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                covariance[i][j] /= (i < design.scales() ? shape : 1) * (j < design.scales() ? shape : 1);
            }
        }
        double degrees = Double.POSITIVE_INFINITY;
        if (errors == Errors.BY_CLUSTER) {
            ClusterSteps steps = lives.clusterSteps(
                    design, point, ClusterSteps.negative(maximum.at().hessian()));
            steps.settle(lives, design, point);
            if (steps.loose().isPresent()) {
                return verdict.onOneCluster(search, design, steps.loose().get());
            }
            covariance = steps.covariance();
            degrees = steps.clusters() - 1;
        }
        return verdict.converged(search, design, point, maximum.at().value(), covariance, level, degrees);
    }
}
