package sensorrounds.survival;

import java.util.Optional;
import sensorrounds.numeric.Maximum;
import sensorrounds.numeric.NewtonMaximizer;
import sensorrounds.numeric.Objective;
import sensorrounds.numeric.PositiveDefinite;
import sensorrounds.numeric.ScaledCurvature;

/**
 * Maximum likelihood fit of {@link EarlyWearLife} by the entry-conditional interval likelihood, Newton's method on the logs
 * of its parameters. The boundaries are named, not handed out: where the likelihood rises towards no early hazard at all,
 * or the two hazards become one, there is no such law and the plain Weibull says as much.
 */
public final class EarlyWearFitter {
    /** Beyond these, in units of the typical age at failure, a hazard is no longer there. */
    private static final double MOST_LOG_SCALE = 9;

    private static final double MOST_LOG_SHAPE = Math.log(60);
    private static final double LEAST_LOG_SHAPE = Math.log(0.05);
    /** Log parameters known no better than to a factor of e^8 are not known. */
    private static final double MOST_VARIANCE = 64;
    /** Wear shapes to start from, each with an early hazard that takes about a tenth by the typical age. */
    private static final double[] STARTING_SHAPES = {4, 8};

    private static final double STARTING_EARLY = Math.log(10);
    /** An early hazard next to none is next to level, however curved wear-out is. */
    private static final double LEAST_RIDGE = 1e-6;

    /** Whether the early hazard is constant. */
    public enum Early {
        CONSTANT,
        FREE_SHAPE
    }

    private final Early early;
    /** Null without one. */
    private final TwoHazardPrior prior;

    private EarlyWearFitter(Early early, TwoHazardPrior prior) {
        this.early = early;
        this.prior = prior;
    }

    public static EarlyWearFitter of(Early early) {
        return new EarlyWearFitter(early, null);
    }

    /**
     * With a declared prior for few failures: the fit is then the mode of the posterior, and there is one wherever the early
     * hazard is constant. The log-likelihood of the result is without the prior's share.
     */
    public EarlyWearFitter with(TwoHazardPrior newPrior) {
        return new EarlyWearFitter(early, newPrior);
    }

    /**
     * @param plain the Weibull fit of the same lives: where the search starts and what tells the parts apart; where there is no
     *     such law, there is none of two hazards either, for the same reason
     */
    public EarlyWearFit fit(LifetimeSample sample, ParametricFit plain) {
        int free = early == Early.CONSTANT ? 3 : 4;
        if (!plain.converged()) {
            return refused(sample, free, plain.status(), "there is no Weibull fit to start from: " + plain.cause());
        }
        if (prior == null && sample.failures() <= free) {
            return refused(
                    sample,
                    free,
                    FitStatus.TOO_FEW_FAILURES,
                    Counted.failures(sample.failures()) + " cannot tell " + free + " parameters of two hazards");
        }
        double centre = Math.log(plain.scale().value());
        EarlyWearLikelihood likelihood = new EarlyWearLikelihood(sample, centre);
        EarlyWearFit best = null;
        for (double shape : STARTING_SHAPES) {
            double[] start = {STARTING_EARLY, 0, 0, Math.log(shape)};
            Maximum maximum = NewtonMaximizer.withDefaults()
                    .withLeastRidge(LEAST_RIDGE)
                    .maximize(p -> objective(likelihood, full(p), centre), reduced(start));
            EarlyWearFit fit = judged(sample, centre, maximum, free, likelihood);
            if (best == null || fit.aic() < best.aic()) {
                best = fit;
            }
        }
        return best;
    }

    private double[] full(double[] p) {
        return early == Early.CONSTANT ? new double[] {p[0], 0, p[1], p[2]} : p;
    }

    private double[] reduced(double[] p) {
        return early == Early.CONSTANT ? new double[] {p[0], p[2], p[3]} : p;
    }

    private Objective.Evaluation objective(EarlyWearLikelihood likelihood, double[] p, double centre) {
        if (outside(p)) {
            int n = reduced(p).length;
            return new Objective.Evaluation(Double.NaN, new double[n], new double[n][n]);
        }
        Objective.Evaluation all = withPrior(likelihood.at(p), p, centre);
        if (early == Early.FREE_SHAPE) {
            return all;
        }
        int[] kept = {0, 2, 3};
        double[] gradient = new double[3];
        double[][] hessian = new double[3][3];
        for (int i = 0; i < 3; i++) {
            gradient[i] = all.gradient()[kept[i]];
            for (int j = 0; j < 3; j++) {
                hessian[i][j] = all.hessian()[kept[i]][kept[j]];
            }
        }
        return new Objective.Evaluation(all.value(), gradient, hessian);
    }

    /** Adds the log of the prior, up to a constant, with derivatives; independent normal laws of two of the logs. */
    private Objective.Evaluation withPrior(Objective.Evaluation likelihood, double[] p, double centre) {
        if (prior == null) {
            return likelihood;
        }
        double q = 1 / (prior.earlySpread() * prior.earlySpread());
        double r = 1 / (prior.wearShapeSpread() * prior.wearShapeSpread());
        double scale = p[0] + centre - prior.logEarlyScale();
        double shape = p[3] - prior.logWearShape();
        double[] gradient = likelihood.gradient().clone();
        gradient[0] -= q * scale;
        gradient[3] -= r * shape;
        double[][] hessian = likelihood.hessian();
        hessian[0][0] -= q;
        hessian[3][3] -= r;
        return new Objective.Evaluation(
                likelihood.value() - q * scale * scale / 2 - r * shape * shape / 2, gradient, hessian);
    }

    private static boolean outside(double[] p) {
        return Math.abs(p[0]) > MOST_LOG_SCALE
                || Math.abs(p[2]) > MOST_LOG_SCALE
                || p[1] > MOST_LOG_SHAPE
                || p[3] > MOST_LOG_SHAPE
                || p[1] < LEAST_LOG_SHAPE
                || p[3] < LEAST_LOG_SHAPE;
    }

    private EarlyWearFit judged(
            LifetimeSample sample, double centre, Maximum maximum, int free, EarlyWearLikelihood likelihood) {
        double[] p = full(maximum.point());
        double[] unit = reduced(new double[] {Math.exp(p[1]), 1, Math.exp(p[3]), 1});
        Search search = new Search(sample, maximum.iterations(), ScaledCurvature.of(maximum.at(), unit));
        if (maximum.outcome() != Maximum.Outcome.CONVERGED) {
            boolean none = Math.abs(p[0]) > MOST_LOG_SCALE - 2;
            return EarlyWearFit.failed(
                    free,
                    none
                            ? search.report(FitStatus.FLAT_LIKELIHOOD, "the likelihood rises towards no early hazard")
                            : search.report(
                                    FitStatus.NOT_CONVERGED,
                                    "the search for two hazards ended with " + maximum.outcome()));
        }
        Optional<double[][]> inverse =
                PositiveDefinite.of(negated(maximum.at().hessian())).map(PositiveDefinite::inverse);
        if (inverse.isEmpty() || PositiveDefinite.oneNorm(inverse.get()) > MOST_VARIANCE) {
            return EarlyWearFit.failed(
                    free, search.report(FitStatus.FLAT_LIKELIHOOD, "the data do not tell two hazards apart"));
        }
        double logLikelihood =
                prior == null ? maximum.at().value() : likelihood.at(p).value();
        return new EarlyWearFit(
                Optional.of(law(p, centre, inverse.get())),
                free,
                logLikelihood - centre * exactWeight(sample),
                search.report(FitStatus.CONVERGED, ""));
    }

    private static EarlyWearFit refused(LifetimeSample sample, int free, FitStatus status, String cause) {
        return EarlyWearFit.failed(free, FitReport.of(sample, status, cause, 0, Double.NaN, Double.NaN));
    }

    /** Where a search over a sample ended. */
    private record Search(LifetimeSample sample, int iterations, ScaledCurvature end) {
        /** With a prior there may be no failure. */
        FitReport report(FitStatus status, String cause) {
            return FitReport.of(
                    sample,
                    status,
                    cause,
                    iterations,
                    end.largestSlope() / Math.max(1, sample.failures()),
                    end.condition());
        }
    }

    /** The hazard of the smaller shape is the early one. */
    private EarlyWearLife law(double[] p, double centre, double[][] inverse) {
        int[] kept = early == Early.CONSTANT ? new int[] {0, 2, 3} : new int[] {0, 1, 2, 3};
        int turn = p[1] > p[3] ? 2 : 0;
        double[][] covariance = new double[4][4];
        for (int i = 0; i < kept.length; i++) {
            for (int j = 0; j < kept.length; j++) {
                covariance[(kept[i] + turn) % 4][(kept[j] + turn) % 4] = inverse[i][j];
            }
        }
        return new EarlyWearLife(
                Math.exp(p[1 + turn]),
                Math.exp(p[turn] + centre),
                Math.exp(p[(3 + turn) % 4]),
                Math.exp(p[(2 + turn) % 4] + centre),
                covariance);
    }

    private static double[][] negated(double[][] hessian) {
        double[][] result = new double[hessian.length][hessian.length];
        for (int i = 0; i < result.length; i++) {
            for (int j = 0; j < result.length; j++) {
                result[i][j] = -hessian[i][j];
            }
        }
        return result;
    }

    /** Densities are per unit of time, so scaling time shifts the log-likelihood of exact failures. */
    private static double exactWeight(LifetimeSample sample) {
        double sum = 0;
        for (int i = 0; i < sample.size(); i++) {
            sum += sample.exact(i) ? sample.weight(i) : 0;
        }
        return sum;
    }
}
