package sensorrounds.recurrence;

import java.util.List;
import sensorrounds.condition.Polygamma;
import sensorrounds.numeric.GammaFunction;

/**
 * Counts y over exposures t, each unit with its own Poisson rate, the rates gamma-distributed with this shape and mean:
 * y is then negative binomial with mean (mean t) and shape, and the maximum-likelihood fit is that of Lawless (1987),
 * Canad. J. Statist. 15:209, section 2 (shape here is one over his a). For each shape the mean solves a monotone
 * equation; the shape maximises the profile over a bracketed range.
 */
final class GammaPoissonFit {
    /** Units with the same count and exposure. */
    record Cell(int count, double exposure, long units) {}

    /** What came of the fit. */
    enum Status {
        CONVERGED,
        /** The counts vary no more than one common Poisson rate explains: the shape grows without bound. */
        NO_SPREAD,
        /** No event, or a shape at the lower end of the range: nothing to fit. */
        FAILED
    }

    /**
     * @param shape shape of the law of rates; infinite for NO_SPREAD, NaN for FAILED
     * @param mean mean rate per unit of exposure; NaN for FAILED
     */
    record Fit(double shape, double mean, double logLikelihood, Status status) {}

    private static final double LOG_SHAPE_FROM = -7;
    private static final double LOG_SHAPE_TO = 9;
    private static final int SCAN = 64;

    private GammaPoissonFit() {}

    static Fit fit(List<Cell> cells) {
        double events =
                cells.stream().mapToDouble(c -> (double) c.count() * c.units()).sum();
        double exposure =
                cells.stream().mapToDouble(c -> c.exposure() * c.units()).sum();
        if (!(events > 0 && exposure > 0)) {
            return new Fit(Double.NaN, Double.NaN, Double.NaN, Status.FAILED);
        }
        int best = 0;
        double bestValue = Double.NEGATIVE_INFINITY;
        for (int i = 0; i <= SCAN; i++) {
            double shape = Math.exp(logShape(i));
            double value = logLikelihood(cells, shape, mean(cells, shape, events / exposure));
            if (value > bestValue) {
                best = i;
                bestValue = value;
            }
        }
        if (best == SCAN) {
            double mean = events / exposure;
            return new Fit(Double.POSITIVE_INFINITY, mean, poisson(cells, mean), Status.NO_SPREAD);
        }
        if (best == 0) {
            return new Fit(Double.NaN, Double.NaN, Double.NaN, Status.FAILED);
        }
        double low = logShape(best - 1);
        double high = logShape(best + 1);
        while (high - low > 1e-13) {
            double middle = 0.5 * (low + high);
            double shape = Math.exp(middle);
            if (score(cells, shape, mean(cells, shape, events / exposure)) > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double shape = Math.exp(0.5 * (low + high));
        double mean = mean(cells, shape, events / exposure);
        return new Fit(shape, mean, logLikelihood(cells, shape, mean), Status.CONVERGED);
    }

    private static double logShape(int i) {
        return LOG_SHAPE_FROM + (LOG_SHAPE_TO - LOG_SHAPE_FROM) * i / SCAN;
    }

    /** Root in the mean m of sum (y - m t) / (shape + m t), which falls in m; by halving on the log scale. */
    private static double mean(List<Cell> cells, double shape, double around) {
        double low = Math.log(around) - 12;
        double high = Math.log(around) + 12;
        while (high - low > 1e-14 * Math.max(1, Math.abs(low))) {
            double middle = 0.5 * (low + high);
            double m = Math.exp(middle);
            double sum = 0;
            for (Cell c : cells) {
                sum += c.units() * (c.count() - m * c.exposure()) / (shape + m * c.exposure());
            }
            if (sum > 0) {
                low = middle;
            } else {
                high = middle;
            }
            if (middle == low && middle == high) {
                break;
            }
        }
        return Math.exp(0.5 * (low + high));
    }

    /** Derivative of the log-likelihood in the shape. */
    static double score(List<Cell> cells, double shape, double mean) {
        double base = Polygamma.digamma(shape);
        double sum = 0;
        for (Cell c : cells) {
            double expected = mean * c.exposure();
            sum += c.units()
                    * (Polygamma.digamma(shape + c.count())
                            - base
                            - Math.log1p(expected / shape)
                            + (expected - c.count()) / (shape + expected));
        }
        return sum;
    }

    static double logLikelihood(List<Cell> cells, double shape, double mean) {
        double sum = 0;
        double base = GammaFunction.logGamma(shape);
        for (Cell c : cells) {
            double expected = mean * c.exposure();
            sum += c.units()
                    * (GammaFunction.logGamma(shape + c.count())
                            - base
                            - GammaFunction.logGamma(c.count() + 1.0)
                            - shape * Math.log1p(expected / shape)
                            + c.count() * (Math.log(expected) - Math.log(shape + expected)));
        }
        return sum;
    }

    static double poisson(List<Cell> cells, double mean) {
        double sum = 0;
        for (Cell c : cells) {
            double expected = mean * c.exposure();
            sum += c.units() * (c.count() * Math.log(expected) - expected - GammaFunction.logGamma(c.count() + 1.0));
        }
        return sum;
    }
}
