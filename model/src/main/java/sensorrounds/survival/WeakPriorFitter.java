package sensorrounds.survival;

import sensorrounds.numeric.Maximum;
import sensorrounds.numeric.NewtonMaximizer;
import sensorrounds.numeric.Objective;
import sensorrounds.numeric.PositiveDefinite;
import sensorrounds.numeric.ScaledCurvature;
import sensorrounds.numeric.StandardNormal;
import sensorrounds.survival.LifeLikelihood.Derivatives;

/**
 * A Weibull law from few or no failures and a declared {@link WeakPrior}. The posterior is the likelihood given alive at entry,
 * for any mix of exact, interval- and right-censored lives, times the prior; it is found around its mode on a grid of 0.2 standard
 * deviations (trapezoid rule, which for such smooth, fast-falling functions is exact to many digits), so that limits are those of
 * the posterior itself, not of a normal law near it. Cost: some 10,000 likelihoods; meant for few lives. Source: Li and Meeker
 * (2014), J. Quality Technology 46:249-269; Gelman et al. (2013), Bayesian Data Analysis, 10.1 (both from memory).
 */
public final class WeakPriorFitter {
    private static final double STEP = 0.2;
    private static final int STEPS = 50;
    /** The grid is turned by the golden slope: along no axis do points fall together, so that quantiles can be read off them. */
    private static final double SINE = 1 / Math.sqrt(1 + 1.618033988749895 * 1.618033988749895);

    private static final double COSINE = 1.618033988749895 * SINE;

    private final WeakPrior prior;
    private final double level;

    private WeakPriorFitter(WeakPrior prior, double level) {
        this.prior = prior;
        this.level = level;
    }

    /** Limits at 95 %. */
    public static WeakPriorFitter of(WeakPrior prior) {
        return new WeakPriorFitter(prior, 0.95);
    }

    /** Probability that the limits hold, in (0, 1). */
    public WeakPriorFitter withLevel(double newLevel) {
        if (!(newLevel > 0 && newLevel < 1)) {
            throw new IllegalArgumentException("the probability of limits must lie between 0 and 1, not " + newLevel);
        }
        return new WeakPriorFitter(prior, newLevel);
    }

    /**
     * The posterior; without lives the prior itself, as its report says.
     *
     * @param sample lives in days
     */
    public WeakPriorFit fit(LifetimeSample sample) {
        double centre = prior.centre();
        LifeLikelihood likelihood = new LifeLikelihood(Family.WEIBULL.law(), sample, centre);
        Objective posterior = point -> posterior(likelihood, point);
        double shape = Math.exp(prior.shapeCentre());
        double[] start = {-WeakPrior.MEDIAN / shape, prior.shapeCentre()};
        Maximum mode = NewtonMaximizer.withDefaults().maximize(posterior, start);
        ScaledCurvature end = ScaledCurvature.of(mode.at(), Math.exp(mode.point()[1]), 1);
        double z = StandardNormal.quantile((1 + level) / 2);
        if (mode.outcome() != Maximum.Outcome.CONVERGED) {
            String cause = "no mode of the posterior of " + Counted.failures(sample.failures()) + " among "
                    + Counted.lives(sample.lives()) + " was found: " + mode.outcome();
            return new WeakPriorFit(report(sample, FitStatus.NOT_CONVERGED, cause, mode, end), prior, null, z);
        }
        double[][] curvature = mode.at().hessian();
        double[][] information = {
            {-curvature[0][0], -curvature[0][1]},
            {-curvature[1][0], -curvature[1][1]}
        };
        double[][] covariance = PositiveDefinite.of(information).orElseThrow().inverse();
        // Columns of the Cholesky factor of the covariance: axes along which the posterior is near standard.
        double a = Math.sqrt(covariance[0][0]);
        double b = covariance[1][0] / a;
        double c = Math.sqrt(covariance[1][1] - b * b);
        int side = 2 * STEPS + 1;
        double[] logScale = new double[side * side];
        double[] logShape = new double[side * side];
        double[] weight = new double[side * side];
        double all = 0;
        for (int i = 0; i < side * side; i++) {
            double x = STEP * (i / side - STEPS);
            double y = STEP * (i % side - STEPS);
            double u = COSINE * x - SINE * y;
            double v = SINE * x + COSINE * y;
            logScale[i] = mode.point()[0] + a * u;
            logShape[i] = mode.point()[1] + b * u + c * v;
            double at = posterior(likelihood, new double[] {logScale[i], logShape[i]})
                    .value();
            weight[i] = Double.isNaN(at) ? 0 : Math.exp(at - mode.at().value());
            all += weight[i];
            logScale[i] += centre;
        }
        for (int i = 0; i < weight.length; i++) {
            weight[i] /= all;
        }
        return new WeakPriorFit(
                answered(sample, mode, end),
                prior,
                new WeakPriorFit.Posterior(
                        new double[] {mode.point()[0] + centre, mode.point()[1]},
                        covariance,
                        logScale,
                        logShape,
                        weight),
                z);
    }

    private static FitReport answered(LifetimeSample sample, Maximum mode, ScaledCurvature end) {
        String left = "; the answer is the declared prior";
        if (!(sample.lives() > 0)) {
            return report(sample, FitStatus.NO_LIVES, "there are no lives" + left, mode, end);
        }
        return sample.exposure() > 0
                ? report(sample, FitStatus.CONVERGED, "", mode, end)
                : report(sample, FitStatus.EMPTY_WINDOWS, Counted.emptyWindows(sample.lives()) + left, mode, end);
    }

    /** With a prior there may be no failure. */
    private static FitReport report(
            LifetimeSample sample, FitStatus status, String cause, Maximum mode, ScaledCurvature end) {
        return FitReport.of(
                sample,
                status,
                cause,
                mode.iterations(),
                end.largestSlope() / Math.max(1, sample.failures()),
                end.condition());
    }

    /** In (log scale less the prior's centre, log shape); the map from (log median, log shape) keeps areas. */
    private Objective.Evaluation posterior(LifeLikelihood likelihood, double[] point) {
        Derivatives d = likelihood.at(point[0], point[1]);
        double lag = WeakPrior.MEDIAN * Math.exp(-point[1]);
        double q = 1 / (prior.spread() * prior.spread());
        double r = 1 / (prior.shapeSpread() * prior.shapeSpread());
        double median = point[0] + lag;
        double shape = point[1] - prior.shapeCentre();
        return new Objective.Evaluation(
                d.value - q * median * median / 2 - r * shape * shape / 2,
                new double[] {d.s - q * median, d.k + q * median * lag - r * shape},
                new double[][] {
                    {d.ss - q, d.sk + q * lag},
                    {d.sk + q * lag, d.kk - q * (lag * lag + median * lag) - r}
                });
    }
}
