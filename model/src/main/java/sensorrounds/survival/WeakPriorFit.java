package sensorrounds.survival;

import java.util.Arrays;
import java.util.Comparator;
import java.util.function.IntToDoubleFunction;
import sensorrounds.numeric.PositiveDefinite;
import sensorrounds.numeric.StandardNormal;

/**
 * A Weibull law from a declared prior and few failures, with limits of its posterior, and the prior beside the data. Values are
 * posterior medians.
 */
public final class WeakPriorFit {
    /** Normal scores this far from a quantile say where it lies. */
    private static final double NEAR = 0.3;

    private final FitReport report;
    private final WeakPrior prior;
    private final Posterior posterior;
    private final double z;

    /**
     * The posterior on a grid of points.
     *
     * @param mode log scale and log shape where it is highest
     * @param covariance of these by the curvature there
     * @param logScale of each point
     * @param logShape of each point
     * @param weight of each point, adding up to 1
     */
    record Posterior(double[] mode, double[][] covariance, double[] logScale, double[] logShape, double[] weight) {}

    /** @param posterior null where the search for its mode failed */
    WeakPriorFit(FitReport report, WeakPrior prior, Posterior posterior, double z) {
        this.report = report;
        this.prior = prior;
        this.posterior = posterior;
        this.z = z;
    }

    /**
     * What it says of itself: {@link FitStatus#NO_LIVES} and {@link FitStatus#EMPTY_WINDOWS} where the figures are those of
     * the prior alone, {@link FitStatus#NOT_CONVERGED} where there are none and asking for one throws.
     */
    public FitReport report() {
        return report;
    }

    private Posterior found() {
        if (posterior == null) {
            throw new IllegalStateException(
                    "there is no posterior: " + report.status() + ", " + report.cause() + "; ask report() first");
        }
        return posterior;
    }

    /**
     * One quantity before and after the data.
     *
     * @param prior its value by the prior alone, with limits
     * @param posterior with the data
     * @param fromPrior share of what is known of its log that comes from the prior: its variance after over before
     * @param moved how far the data moved it, in the prior's standard deviations; beyond 2 the prior does not fit the fleet
     */
    public record Comparison(Estimate prior, Estimate posterior, double fromPrior, double moved) {}

    public WeakPrior prior() {
        return prior;
    }

    public double failures() {
        return report.failures();
    }

    public double lives() {
        return report.lives();
    }

    /** Scale in days where the posterior is highest. */
    public double modeScale() {
        return Math.exp(found().mode()[0]);
    }

    /** Shape where the posterior is highest. */
    public double modeShape() {
        return Math.exp(found().mode()[1]);
    }

    /** Standard errors of log scale and log shape by the curvature at the mode (Laplace). */
    public double[] modeErrors() {
        double[][] covariance = found().covariance();
        return new double[] {Math.sqrt(covariance[0][0]), Math.sqrt(covariance[1][1])};
    }

    public Estimate shape() {
        return limits(i -> Math.exp(logShape(i)));
    }

    /** In days. */
    public Estimate scale() {
        return limits(i -> Math.exp(logScale(i)));
    }

    /** Age in days by which the share p has failed. */
    public Estimate quantile(double p) {
        if (!(p > 0 && p < 1)) {
            throw new IllegalArgumentException("a quantile needs 0 < p < 1, not " + p);
        }
        double w = Math.log(-Math.log1p(-p));
        return limits(i -> Math.exp(logScale(i) + w * Math.exp(-logShape(i))));
    }

    public Estimate survival(double ageDays) {
        return limits(i -> Math.exp(-hazard(i, ageDays)));
    }

    /** P(fail within the next days | alive at an age). */
    public Estimate failureWithin(double ageDays, double days) {
        return limits(i -> -Math.expm1(hazard(i, ageDays) - hazard(i, ageDays + days)));
    }

    private double logScale(int point) {
        return posterior.logScale()[point];
    }

    private double logShape(int point) {
        return posterior.logShape()[point];
    }

    private double hazard(int i, double age) {
        return age <= 0 ? 0 : Math.exp(Math.exp(logShape(i)) * (Math.log(age) - logScale(i)));
    }

    /** The median life before and after the data. */
    public Comparison medianLife() {
        return comparison(
                prior.centre(),
                prior.spread(),
                quantile(0.5),
                i -> logScale(i) + WeakPrior.MEDIAN * Math.exp(-logShape(i)));
    }

    /** The shape before and after the data. */
    public Comparison shapeAgainstPrior() {
        return comparison(prior.shapeCentre(), prior.shapeSpread(), shape(), i -> logShape(i));
    }

    private Comparison comparison(double centre, double spread, Estimate posterior, IntToDoubleFunction log) {
        double mean = mean(log);
        double variance = mean(i -> Math.pow(log.applyAsDouble(i) - mean, 2));
        return new Comparison(
                new Estimate(Math.exp(centre), Math.exp(centre - z * spread), Math.exp(centre + z * spread)),
                posterior,
                variance / (spread * spread),
                (mean - centre) / spread);
    }

    /**
     * The law for use where a {@link LifeLaw} is asked for: mean and covariance of log scale and log shape under the posterior,
     * taken as normal. Its limits are close to those here, not the same.
     */
    public WeibullLife life() {
        double s = mean(i -> logScale(i));
        double k = mean(i -> logShape(i));
        return new WeibullLife(
                Math.exp(k),
                Math.exp(s),
                mean(i -> (logShape(i) - k) * (logShape(i) - k)),
                mean(i -> (logScale(i) - s) * (logScale(i) - s)),
                mean(i -> (logScale(i) - s) * (logShape(i) - k)));
    }

    private double mean(IntToDoubleFunction value) {
        double[] weight = found().weight();
        double sum = 0;
        for (int i = 0; i < weight.length; i++) {
            sum += weight[i] * value.applyAsDouble(i);
        }
        return sum;
    }

    /**
     * Quantiles of the posterior: near each, the values against the normal score of the weight below them follow a parabola,
     * which levels out that the grid is one of points.
     */
    private Estimate limits(IntToDoubleFunction value) {
        double[] weight = found().weight();
        Integer[] order = new Integer[weight.length];
        double[] values = new double[weight.length];
        for (int i = 0; i < order.length; i++) {
            order[i] = i;
            values[i] = value.applyAsDouble(i);
        }
        Arrays.sort(order, Comparator.comparingDouble(i -> values[i]));
        double[] score = new double[order.length];
        double below = 0;
        for (int i = 0; i < order.length; i++) {
            double at = below + weight[order[i]] / 2;
            below += weight[order[i]];
            score[i] = at > 0 && at < 1 ? StandardNormal.quantile(at) : Double.NaN;
        }
        return new Estimate(
                quantile(order, values, score, 0),
                quantile(order, values, score, -z),
                quantile(order, values, score, z));
    }

    private double quantile(Integer[] order, double[] values, double[] score, double at) {
        double[][] squares = new double[3][3];
        double[] sums = new double[3];
        for (int i = 0; i < score.length; i++) {
            double d = score[i] - at;
            if (Math.abs(d) < NEAR) {
                double w = posterior.weight()[order[i]];
                for (int a = 0; a < 3; a++) {
                    sums[a] += w * Math.pow(d, a) * values[order[i]];
                    for (int b = 0; b < 3; b++) {
                        squares[a][b] += w * Math.pow(d, a + b);
                    }
                }
            }
        }
        return PositiveDefinite.of(squares).orElseThrow().solve(sums)[0];
    }
}
