package sensorrounds.numeric;

/**
 * A sum of independent Poisson counts, each with a weight of its own, and its mid-P gamma limits: half the gamma law with the mean and
 * the variance of what was counted, half that with one event more, whose weight is that of an event met at random. They allow for the
 * skewness of few counts and for the event that did not happen by chance; of equal weights they are the mid-P limits of a Poisson
 * count. Sources: Fay and Kim (2017), Biometrical J. 59:377-387, section 2.2; the gamma law of a weighted sum: Fay and Feuer (1997),
 * Stat. Med. 16:791-801; the weight of the further event: Tiwari, Clegg and Zou (2006), Stat. Methods Med. Res. 15:547-569 (all three
 * from memory).
 *
 * @param sum of weights of the events, 0 without any
 * @param variance sum of their squares
 * @param extra mean weight of an event, over all places where one could have been counted
 * @param extraSquare mean squared weight
 */
public record WeightedCount(double sum, double variance, double extra, double extraSquare) {
    private static final int MAX_STEPS = 200;

    public WeightedCount {
        if (!(sum >= 0 && variance >= 0 && (sum > 0) == (variance > 0) && extra > 0 && extraSquare > 0)) {
            throw new IllegalArgumentException("a weighted count needs a sum and a variance that are both positive, or"
                    + " both 0, and positive weights of a further event, not " + sum + ", " + variance + ", " + extra
                    + ", " + extraSquare);
        }
    }

    /**
     * The value that the mean of the sum is below with probability p; 0 where the law has more than p there.
     *
     * @param p in (0, 1): (1 - level) / 2 for a lower limit, (1 + level) / 2 for an upper
     */
    public double limit(double p) {
        if (!(p > 0 && p < 1)) {
            throw new IllegalArgumentException("a limit needs 0 < p < 1, not " + p);
        }
        if (sum == 0 && p <= 0.5) {
            return 0;
        }
        double low = 0;
        double high = Double.POSITIVE_INFINITY;
        double x = start(p);
        for (int i = 0; i < MAX_STEPS; i++) {
            double gap = (below(x, sum, variance) + below(x, sum + extra, variance + extraSquare)) / 2 - p;
            if (gap < 0) {
                low = x;
            } else {
                high = x;
            }
            double slope = (density(x, sum, variance) + density(x, sum + extra, variance + extraSquare)) / 2;
            double next = x - gap / slope;
            if (!(next > low && next < high)) {
                next = high == Double.POSITIVE_INFINITY ? 2 * x : (low + high) / 2;
            }
            boolean done = Math.abs(next - x) <= 1e-12 * x;
            x = next;
            if (done) {
                break;
            }
        }
        return x;
    }

    /** The quantile of Wilson and Hilferty (1931), PNAS 17:684, of the gamma law halfway between the two. */
    private double start(double p) {
        double mean = sum + extra / 2;
        double shape = mean * mean / (variance + extraSquare / 2);
        double root = 1 - 1 / (9 * shape) + StandardNormal.quantile(p) / (3 * Math.sqrt(shape));
        return mean * Math.max(1e-3, root * root * root);
    }

    /** Gamma law of this mean and variance; all at 0 where the mean is 0. */
    private static double below(double x, double mean, double variance) {
        return mean == 0 ? 1 : GammaFunction.regularizedLower(mean * mean / variance, x * mean / variance);
    }

    private static double density(double x, double mean, double variance) {
        if (mean == 0) {
            return 0;
        }
        double shape = mean * mean / variance;
        double scaled = x * mean / variance;
        return Math.exp(shape * Math.log(scaled) - scaled - GammaFunction.logGamma(shape)) / x;
    }
}
