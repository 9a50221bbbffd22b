package sensorrounds.condition;

import java.io.Serializable;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;
import sensorrounds.numeric.GammaFunction;

/**
 * How alike the sensors of one vehicle are in their lives. The hazards of a vehicle's sensors share a factor, its frailty,
 * with a gamma law of mean 1 and variance v over vehicles. Given the frailty, failures are Poisson about what the laws of
 * life expect, so their number is negative binomial; v is its maximum likelihood estimate, the mean as counted. After d
 * failures where e were expected the factor has mean (1/v + d) / (1/v + e): Clayton (1978), Biometrika 65:141; Klein and
 * Moeschberger (2003), Survival Analysis, 13.3.
 *
 * <p>Where the data do not show likeness, that is where v adds less than 1 to the log-likelihood (Akaike 1974, IEEE Trans. AC
 * 19:716), or there are fewer than {@link #LEAST_FAILURES} failures, the factor is 1: no sensor pays for its set-mates.
 */
public final class SetLikeness implements Serializable {
    private static final long serialVersionUID = 1;
    /** Our choice, no source. */
    static final long LEAST_FAILURES = 50;

    private static final double LEAST_LOG_VARIANCE = Math.log(1e-3);
    private static final double MOST_LOG_VARIANCE = Math.log(4);
    private static final double GAIN = 1;
    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;
    private static final int HALVINGS = 60;

    private final double variance;
    private final double level;
    private final String note;

    private SetLikeness(double variance, double level, String note) {
        this.variance = variance;
        this.level = level;
        this.note = note;
    }

    /** No likeness, for the reason given. */
    public static SetLikeness none(String why) {
        return new SetLikeness(0, 1, why);
    }

    public static SetLikeness fit(SetCells cells) {
        double[] sums = new double[2];
        cells.each((failed, expected, number) -> {
            sums[0] += (double) failed * number;
            sums[1] += expected * number;
        });
        if (sums[0] < LEAST_FAILURES || !(sums[1] > 0)) {
            return none(
                    String.format(Locale.ROOT, "%.0f failures; at least %d are asked for", sums[0], LEAST_FAILURES));
        }
        double level = sums[0] / sums[1];
        DoubleUnaryOperator value = logVariance -> logLikelihood(cells, level, Math.exp(-logVariance));
        double best = maximum(value);
        double gain = value.applyAsDouble(best) + sums[0];
        return gain > GAIN
                ? new SetLikeness(
                        Math.exp(best), level, String.format(Locale.ROOT, "gain in log-likelihood %.1f", gain))
                : none("the failures of one vehicle are no more alike than chance makes them");
    }

    /** Less that of no likeness, which is minus the number of failures up to the same constant. */
    private static double logLikelihood(SetCells cells, double level, double shape) {
        double[] sum = new double[1];
        double ofShape = GammaFunction.logGamma(shape);
        cells.each((failed, expected, number) -> sum[0] += number
                * (GammaFunction.logGamma(shape + failed)
                        - ofShape
                        - failed * Math.log(shape)
                        - (shape + failed) * Math.log1p(level * expected / shape)));
        return sum[0];
    }

    /** Golden section: Kiefer (1953), Proc. Amer. Math. Soc. 4:502. */
    private static double maximum(DoubleUnaryOperator value) {
        double low = LEAST_LOG_VARIANCE;
        double high = MOST_LOG_VARIANCE;
        double left = high - GOLDEN * (high - low);
        double right = low + GOLDEN * (high - low);
        double atLeft = value.applyAsDouble(left);
        double atRight = value.applyAsDouble(right);
        for (int i = 0; i < HALVINGS; i++) {
            if (atLeft > atRight) {
                high = right;
                right = left;
                atRight = atLeft;
                left = high - GOLDEN * (high - low);
                atLeft = value.applyAsDouble(left);
            } else {
                low = left;
                left = right;
                atLeft = atRight;
                right = low + GOLDEN * (high - low);
                atRight = value.applyAsDouble(right);
            }
        }
        return (low + high) / 2;
    }

    /** Variance of the factor over vehicles; 0 without likeness. */
    public double variance() {
        return variance;
    }

    /** Why there is no likeness, or how much it explains, in words. */
    public String note() {
        return note;
    }

    /** Mean of a vehicle's factor, given failures and what the laws of life expected; 1 without likeness. */
    double ratio(SetCells.SetCount set) {
        return variance == 0 ? 1 : (1 / variance + set.failed()) / (1 / variance + level * set.expected());
    }
}
