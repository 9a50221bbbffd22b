package sensorrounds.regression;

import sensorrounds.survival.LogLifeLaw;

/** Quantiles of laws that have none in closed form. */
final class Quantiles {
    private Quantiles() {}

    /** z with S(z) = 1 - p: bracketed by doubling, then halved to the last bit. */
    static double of(LogLifeLaw law, double p) {
        if (!(p > 0 && p < 1)) {
            throw new IllegalArgumentException("a quantile needs 0 < p < 1, not " + p);
        }
        double target = Math.log1p(-p);
        double low = -1;
        while (law.logSurvival(low) < target) {
            low *= 2;
        }
        double high = 1;
        while (law.logSurvival(high) > target) {
            high *= 2;
        }
        for (double middle = (low + high) / 2; middle > low && middle < high; middle = (low + high) / 2) {
            if (law.logSurvival(middle) > target) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }
}
