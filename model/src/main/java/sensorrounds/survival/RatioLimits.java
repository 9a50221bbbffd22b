package sensorrounds.survival;

import sensorrounds.numeric.Maximum;
import sensorrounds.numeric.NewtonMaximizer;
import sensorrounds.numeric.Objective;
import sensorrounds.numeric.RatioPath;
import sensorrounds.survival.LifeLikelihood.Derivatives;

/**
 * Likelihood-ratio limits at 95 % of a law with a fitted scale and shape: all values that lose no more than half the chi-square
 * quantile of one degree against the maximum, the other parameter being maximised out. For few failures, where limits that are normal
 * on the log scale hold too seldom (docs/coverage.md). A limit is 0 or infinite where the likelihood never falls that low, and NaN where
 * it cannot be followed. Source: Meeker and Escobar (1998), Statistical Methods for Reliability Data, 8.3 and 8.4.
 */
final class RatioLimits {
    /** Below so many failures these limits are taken: normal ones want 50 to 100 (Jeng and Meeker 2000, Technometrics 42:135). */
    static final double FEW_FAILURES = 50;

    private static final double Z95 = 1.959963984540054;
    private static final double TOLERANCE = 1e-8;
    private static final double FURTHEST_IN_ERRORS = 1e3;
    private static final double MOST_LOG = Math.log(1000);

    private final LifeLikelihood likelihood;
    private final double centre;
    private final double highest;
    private final double logShape;
    private final ParametricFit fit;

    private RatioLimits(LifetimeSample sample, ParametricFit fit) {
        this.fit = fit;
        centre = Math.log(fit.scale().value());
        likelihood = new LifeLikelihood(fit.family().law(), sample, centre);
        logShape = Math.log(fit.shape().value());
        highest = likelihood.at(0, logShape).value;
    }

    /** Of a fit of both parameters, which has converged, to this sample. */
    static RatioLimits of(LifetimeSample sample, ParametricFit fit) {
        return new RatioLimits(sample, fit);
    }

    /** Of the shape. */
    Estimate shape() {
        return limits(
                logShape, 0, Math.sqrt(fit.varLogShape()), (target, scale) -> new double[] {scale, target, 1, 0, 0, 0});
    }

    /** Of the scale, in the sample's unit of time. */
    Estimate scale() {
        return quantile(0);
    }

    /** Of the age by which the share p has failed. */
    Estimate quantileOf(double p) {
        return quantile(fit.family().law().quantile(p));
    }

    /** Of log scale + w / shape: scale = target - w exp(-log shape), with its derivatives by log shape. */
    private Estimate quantile(double w) {
        double per = w * Math.exp(-logShape);
        double variance = fit.varLogScale() + per * per * fit.varLogShape() - 2 * per * fit.covLogs();
        Estimate log = limits(per, logShape, Math.sqrt(Math.max(0, variance)), (target, k) -> {
            double bend = w * Math.exp(-k);
            return new double[] {target - bend, k, bend, 1, -bend, 0};
        });
        double unit = Math.exp(centre);
        return new Estimate(unit * log.value(), unit * log.lower(), unit * log.upper());
    }

    /** Log scale and log shape from a target and the other parameter, then first and second derivatives of each by the other. */
    private interface Path {
        double[] at(double target, double other);
    }

    private Estimate limits(double best, double other, double error, Path path) {
        RatioPath ratio =
                new RatioPath((offset, others) -> rootRatio(best + offset * error, others, path), Z95, TOLERANCE);
        double below = best + error * ratio.limit(new double[] {other}, -Z95 / 2, FURTHEST_IN_ERRORS);
        double above = best + error * ratio.limit(new double[] {other}, Z95 / 2, FURTHEST_IN_ERRORS);
        return new Estimate(Math.exp(best), Math.exp(below), Math.exp(above));
    }

    private double rootRatio(double target, double[] others, Path path) {
        Objective profile = point -> {
            double[] p = path.at(target, point[0]);
            if (!(Math.abs(p[1]) <= MOST_LOG)) {
                return new Objective.Evaluation(Double.NaN, new double[1], new double[1][1]);
            }
            Derivatives d = likelihood.at(p[0], p[1]);
            double slope = d.s * p[2] + d.k * p[3];
            double curvature =
                    d.ss * p[2] * p[2] + 2 * d.sk * p[2] * p[3] + d.kk * p[3] * p[3] + d.s * p[4] + d.k * p[5];
            return new Objective.Evaluation(d.value, new double[] {slope}, new double[][] {{curvature}});
        };
        Maximum maximum = NewtonMaximizer.withDefaults().maximize(profile, others);
        if (maximum.outcome() != Maximum.Outcome.CONVERGED) {
            return Double.NaN;
        }
        others[0] = maximum.point()[0];
        return Math.sqrt(Math.max(0, 2 * (highest - maximum.at().value())));
    }
}
