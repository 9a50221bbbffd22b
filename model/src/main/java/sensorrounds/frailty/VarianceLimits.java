package sensorrounds.frailty;

import java.util.Arrays;
import sensorrounds.numeric.Maximum;
import sensorrounds.numeric.NewtonMaximizer;
import sensorrounds.numeric.Objective;
import sensorrounds.numeric.RatioPath;
import sensorrounds.survival.Estimate;

/**
 * Likelihood-ratio limits of the frailty variance, the law of life being maximised out at each: all variances, 0 included,
 * that lose no more than half the squared normal quantile. Wald limits of a variance near 0 mean nothing. Where the
 * variance is on its bound the limits cover more than stated (Self and Liang 1987, JASA 82:605-610). Source: Meeker and
 * Escobar (1998), Statistical Methods for Reliability Data, 8.3.
 */
final class VarianceLimits {
    private static final double TOLERANCE = 1e-5;
    private static final double SMALL = 1e-3;

    private final FrailtyLikelihood likelihood;
    private final double z;
    private final double atNone;

    /** @param atNone highest log-likelihood without frailty */
    VarianceLimits(FrailtyLikelihood likelihood, double z, double atNone) {
        this.likelihood = likelihood;
        this.z = z;
        this.atNone = atNone;
    }

    /** Limits around a maximum. */
    Estimate of(Maximum maximum, double errorOfLog) {
        int last = maximum.point().length - 1;
        double log = maximum.point()[last];
        double highest = maximum.at().value();
        double[] law = Arrays.copyOf(maximum.point(), last);
        double step = Math.min(1, errorOfLog);
        boolean noneIsIn = !(Math.sqrt(Math.max(0, 2 * (highest - atNone))) > z);
        double lower = noneIsIn ? 0 : limit(law, log, -step, highest);
        return new Estimate(Math.exp(log), lower, limit(law, log, step, highest));
    }

    /** Limits where the maximum lies at variance 0. */
    Estimate ofNone(double[] law) {
        return new Estimate(0, 0, limit(law, Math.log(SMALL), 1, atNone));
    }

    private double limit(double[] law, double from, double step, double highest) {
        RatioPath path = new RatioPath((offset, others) -> rootRatio(others, from + offset, highest), z, TOLERANCE);
        double furthest = step > 0
                ? Math.log(FrailtyLikelihood.MOST_VARIANCE) - from
                : from - Math.log(FrailtyLikelihood.LEAST_VARIANCE);
        return Math.exp(from + path.limit(law, step, furthest));
    }

    /** Root of twice the loss at this variance; NaN when the law of life finds no maximum. */
    private double rootRatio(double[] warm, double logVariance, double highest) {
        int n = warm.length;
        Objective given = law -> {
            double[] point = Arrays.copyOf(law, n + 1);
            point[n] = logVariance;
            Objective.Evaluation full = likelihood.at(point);
            double[][] hessian = new double[n][];
            for (int i = 0; i < n; i++) {
                hessian[i] = Arrays.copyOf(full.hessian()[i], n);
            }
            return new Objective.Evaluation(full.value(), Arrays.copyOf(full.gradient(), n), hessian);
        };
        Maximum maximum = NewtonMaximizer.withDefaults().maximize(given, warm);
        if (maximum.outcome() != Maximum.Outcome.CONVERGED) {
            return Double.NaN;
        }
        System.arraycopy(maximum.point(), 0, warm, 0, n);
        return Math.sqrt(Math.max(0, 2 * (highest - maximum.at().value())));
    }
}
