package sensorrounds.survival;

import java.util.Optional;
import java.util.OptionalDouble;
import sensorrounds.numeric.Maximum;
import sensorrounds.numeric.NewtonMaximizer;
import sensorrounds.numeric.Objective;
import sensorrounds.numeric.PositiveDefinite;
import sensorrounds.numeric.StandardNormal;
import sensorrounds.survival.LifeLikelihood.Derivatives;

/**
 * Maximum likelihood fit of a {@link Family} to lives under any mix of exact, right-, left- and interval-censored
 * failures, with delayed entry and weights, by the likelihood given alive at entry. Newton's method in (log scale, log
 * shape) on analytic derivatives, time scaled inside; covariance from the observed information. A fit that fails says so
 * and gives no law. Source: Meeker and Escobar (1998), Statistical Methods for Reliability Data, ch. 8 and 11.6.
 */
public final class ParametricFitter {
    /** Beyond these the maximum runs away; laws of life of physical things lie far inside. */
    private static final double MAX_LOG_SHAPE = Math.log(1000);

    private static final double MAX_LOG_SCALE = 100;
    /** Information per failure, in standard units, below which a direction counts as not determined by the data. */
    private static final double LEAST_INFORMATION = 1e-6;
    /** Tried in turn: the exponential start serves nearly all, the steep one data with strong wear-out. */
    private static final double[] STARTING_SHAPES = {1, 4, 0.5};

    private final Family family;
    private final double level;
    private final OptionalDouble givenShape;
    private final double varLogShape;
    private final Optional<ScalePrior> prior;

    private ParametricFitter(
            Family family, double level, OptionalDouble givenShape, double varLogShape, Optional<ScalePrior> prior) {
        this.family = family;
        this.level = level;
        this.givenShape = givenShape;
        this.varLogShape = varLogShape;
        this.prior = prior;
    }

    /**
     * Prior on the scale for a given shape, worth some failures' observation: the hazard relative to that of the centre
     * is gamma distributed with mean 1 and shape {@code failures}. It is conjugate for exact and right-censored Weibull
     * lives: the estimate of the relative hazard is (failures + observed) / (failures + expected). Source: Gelman et al.
     * (2013), Bayesian Data Analysis, 2.6, with exposure.
     *
     * @param scale centre, in the sample's unit of time
     * @param failures weight of the prior, in failures
     */
    public record ScalePrior(double scale, double failures) {
        public ScalePrior {
            if (!(scale > 0 && scale < Double.POSITIVE_INFINITY && failures > 0)) {
                throw new IllegalArgumentException(
                        "a prior needs a positive scale and a positive weight, not " + scale + " and " + failures);
            }
        }
    }

    /** Fits this family by likelihood alone, limits at 95 %. */
    public static ParametricFitter of(Family family) {
        OptionalDouble shape = family.shapeIsOne() ? OptionalDouble.of(1) : OptionalDouble.empty();
        return new ParametricFitter(family, 0.95, shape, 0, Optional.empty());
    }

    /** Coverage of the limits, in (0, 1). */
    public ParametricFitter withLevel(double newLevel) {
        if (!(newLevel > 0 && newLevel < 1)) {
            throw new IllegalArgumentException("coverage of limits must lie between 0 and 1, not " + newLevel);
        }
        return new ParametricFitter(family, newLevel, givenShape, varLogShape, prior);
    }

    /**
     * Only the scale is fitted, the shape comes from elsewhere. Its variance is carried into the covariance: moving the
     * shape moves the scale that fits best with it.
     *
     * @param variance variance of log shape where it was learnt; 0 when declared
     */
    public ParametricFitter withShape(double shape, double variance) {
        if (!(shape > 0 && shape < Double.POSITIVE_INFINITY && variance >= 0) || family.shapeIsOne()) {
            throw new IllegalArgumentException(
                    "a given shape must be positive, its variance not negative, and the family"
                            + " must have one; got shape " + shape + ", variance " + variance + ", " + family);
        }
        return new ParametricFitter(family, level, OptionalDouble.of(shape), variance, prior);
    }

    /** Shrinks the scale towards a centre; only with a given shape, since the prior speaks of hazards in proportion. */
    public ParametricFitter with(ScalePrior newPrior) {
        if (givenShape.isEmpty() || family.law() != StandardLaw.SMALLEST_EXTREME_VALUE) {
            throw new IllegalArgumentException("a prior on the scale needs a Weibull with a given shape, not " + family
                    + "; call withShape first");
        }
        return new ParametricFitter(family, level, givenShape, varLogShape, Optional.of(newPrior));
    }

    /** The fit; ask {@link ParametricFit#converged} before its law. */
    public ParametricFit fit(LifetimeSample sample) {
        if (!(sample.lives() > 0)) {
            return failed(sample, FitStatus.NO_LIVES, "there are no lives");
        }
        if (prior.isEmpty() && !(sample.exposure() > 0)) {
            return failed(sample, FitStatus.EMPTY_WINDOWS, Counted.emptyWindows(sample.lives()));
        }
        if (prior.isEmpty() && !(sample.failures() > 0)) {
            return failed(sample, FitStatus.NO_FAILURES, Counted.noFailures(sample.lives()));
        }
        if (givenShape.isEmpty() && sample.failures() <= 1) {
            return failed(sample, FitStatus.ONE_FAILURE, "a single failure cannot tell both a scale and a shape");
        }
        double centre = centre(sample);
        LifeLikelihood likelihood = new LifeLikelihood(family.law(), sample, centre);
        double failures = sample.failures() + prior.map(ScalePrior::failures).orElse(0.0);
        double start = Math.log(Math.max(sample.exposure(), Double.MIN_NORMAL) / Math.max(failures, 1)) - centre;
        start = Math.max(-20, Math.min(20, start));
        ParametricFit best = null;
        for (double shape : givenShape.isPresent() ? new double[] {givenShape.getAsDouble()} : STARTING_SHAPES) {
            double[] point = givenShape.isPresent() ? new double[] {start} : new double[] {start, Math.log(shape)};
            Maximum maximum = NewtonMaximizer.withDefaults().maximize(objective(likelihood, centre), point);
            ParametricFit fit = judged(likelihood, sample, centre, maximum, failures);
            if (best == null || fit.converged()) {
                best = fit;
            }
            if (fit.converged()) {
                break;
            }
        }
        return best;
    }

    /** Mean log age at exit, of failures where there are any: brings log times near 0. */
    private double centre(LifetimeSample sample) {
        double sum = 0;
        double weight = 0;
        boolean anyFailure = sample.failures() > 0;
        for (int i = 0; i < sample.size(); i++) {
            if (sample.exit(i) > 0 && (sample.failed(i) || !anyFailure)) {
                sum += sample.weight(i) * Math.log(sample.exit(i));
                weight += sample.weight(i);
            }
        }
        return weight > 0 ? sum / weight : prior.map(p -> Math.log(p.scale())).orElse(0.0);
    }

    private double logShape(double[] point) {
        return givenShape.isPresent() ? Math.log(givenShape.getAsDouble()) : point[1];
    }

    private Objective objective(LifeLikelihood likelihood, double centre) {
        return point -> {
            double logShape = logShape(point);
            if (!(Math.abs(logShape) <= MAX_LOG_SHAPE && Math.abs(point[0]) <= MAX_LOG_SCALE)) {
                return new Objective.Evaluation(
                        Double.NaN, new double[point.length], new double[point.length][point.length]);
            }
            Derivatives d = penalised(likelihood, centre, point[0], logShape);
            return givenShape.isPresent()
                    ? new Objective.Evaluation(d.value, new double[] {d.s}, new double[][] {{d.ss}})
                    : new Objective.Evaluation(
                            d.value, new double[] {d.s, d.k}, new double[][] {{d.ss, d.sk}, {d.sk, d.kk}});
        };
    }

    /** Adds the log density of the log relative hazard r = shape (centre of prior - log scale): n (r - exp(r)). */
    private Derivatives penalised(LifeLikelihood likelihood, double centre, double logScale, double logShape) {
        Derivatives d = likelihood.at(logScale, logShape);
        prior.ifPresent(p -> {
            double shape = Math.exp(logShape);
            double r = shape * (Math.log(p.scale()) - centre - logScale);
            double slope = p.failures() * -Math.expm1(r);
            double curvature = p.failures() * -Math.exp(r);
            d.value += p.failures() * (r - Math.exp(r));
            d.s += slope * -shape;
            d.k += slope * r;
            d.ss += curvature * shape * shape;
            d.sk += curvature * -shape * r - slope * shape;
            d.kk += curvature * r * r + slope * r;
        });
        return d;
    }

    private ParametricFit judged(
            LifeLikelihood likelihood, LifetimeSample sample, double centre, Maximum maximum, double failures) {
        double logShape = logShape(maximum.point());
        double logScale = maximum.point()[0];
        double shape = Math.exp(logShape);
        Derivatives d = penalised(likelihood, centre, logScale, logShape);
        boolean free = givenShape.isEmpty();
        // In units of z both parameters are of one size, so that the condition says something.
        double[][] information = free
                ? new double[][] {{-d.ss / (shape * shape), -d.sk / shape}, {-d.sk / shape, -d.kk}}
                : new double[][] {{-d.ss / (shape * shape)}};
        double gradient = Math.max(Math.abs(d.s) / shape, free ? Math.abs(d.k) : 0) / failures;
        Optional<double[][]> inverse = PositiveDefinite.of(information).map(PositiveDefinite::inverse);
        double condition = inverse.map(v -> PositiveDefinite.oneNorm(information) * PositiveDefinite.oneNorm(v))
                .orElse(Double.POSITIVE_INFINITY);
        boolean flat = inverse.map(v -> 1 / PositiveDefinite.oneNorm(v) < LEAST_INFORMATION * failures)
                .orElse(true);
        if (flat || Math.abs(logShape) > MAX_LOG_SHAPE - 2 || Math.abs(logScale) > MAX_LOG_SCALE - 2) {
            return failed(
                    sample, FitStatus.FLAT_LIKELIHOOD, maximum.iterations(), gradient, condition, flatCause(sample));
        }
        if (maximum.outcome() != Maximum.Outcome.CONVERGED) {
            return failed(
                    sample,
                    FitStatus.NOT_CONVERGED,
                    maximum.iterations(),
                    gradient,
                    condition,
                    "the search ended with " + maximum.outcome() + " after " + maximum.iterations()
                            + " steps, scaled gradient " + gradient);
        }
        double[][] v = inverse.orElseThrow();
        double varScale = v[0][0] / (shape * shape);
        double varShape = free ? v[1][1] : varLogShape;
        // Given the shape, the best scale moves with it by -H_sk / H_ss (implicit function theorem).
        double slope = free ? 0 : -d.sk / d.ss;
        return new ParametricFit(
                family,
                FitReport.of(sample, FitStatus.CONVERGED, "", maximum.iterations(), gradient, condition),
                likelihood.at(logScale, logShape).value - centre * exactWeight(sample),
                logScale + centre,
                logShape,
                free ? varScale : varScale + slope * slope * varShape,
                varShape,
                free ? v[0][1] / shape : slope * varShape,
                StandardNormal.quantile((1 + level) / 2));
    }

    /** Densities are per unit of time, so scaling time shifts the log-likelihood of exact failures. */
    private static double exactWeight(LifetimeSample sample) {
        double sum = 0;
        for (int i = 0; i < sample.size(); i++) {
            sum += sample.exact(i) ? sample.weight(i) : 0;
        }
        return sum;
    }

    private String flatCause(LifetimeSample sample) {
        return "the likelihood of " + Counted.failures(sample.failures()) + " among " + Counted.lives(sample.lives())
                + " has no finite maximum, or does not determine "
                + (givenShape.isEmpty() ? "scale and shape together" : "the scale")
                + ": failure ages that (nearly) coincide or all fall into one interval are the usual cause";
    }

    private ParametricFit failed(LifetimeSample sample, FitStatus status, String cause) {
        return failed(sample, status, 0, Double.NaN, Double.NaN, cause);
    }

    private ParametricFit failed(
            LifetimeSample sample, FitStatus status, int iterations, double gradient, double condition, String cause) {
        double none = Double.NaN;
        FitReport report = FitReport.of(sample, status, cause, iterations, gradient, condition);
        return new ParametricFit(family, report, none, none, none, none, none, none, none);
    }
}
