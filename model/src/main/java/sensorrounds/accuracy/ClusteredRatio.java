package sensorrounds.accuracy;

import java.util.HashMap;
import java.util.Map;
import sensorrounds.numeric.WilsonInterval;
import sensorrounds.survival.Estimate;

/**
 * A weighted sum over another, numerator / denominator, of units that come in clusters: the sensors of one vehicle, or one
 * sensor asked about on several days, tell less than as many strangers. The error counts each cluster as one draw.
 *
 * <p>Source: linearised variance of a ratio of cluster totals, clusters drawn with replacement, Cochran (1977), Sampling
 * Techniques, 3rd ed., sec. 9A.2 and 11.20 (from memory); m / (m - 1) sum over clusters of (sum w (y - R x))^2 / (sum w x)^2.
 *
 * @param value NaN without a denominator
 * @param standardError NaN with fewer than two clusters
 * @param clusters that carry weight
 * @param units effective number of units, (sum w)^2 / sum w^2: Kish (1965), Survey Sampling
 */
public record ClusteredRatio(double value, double standardError, int clusters, double units) {
    private static final double LEVEL = 0.95;
    private static final double Z = 1.959963984540054;

    /** Adds up units of clusters. Not thread safe. */
    public static final class Sum {
        private final Map<Object, double[]> clusters = new HashMap<>();
        private double numerator;
        private double denominator;
        private double weights;
        private double squares;

        /**
         * Adds a unit; one of weight 0 is passed over.
         *
         * @param cluster key of its cluster
         */
        public Sum add(Object cluster, double weight, double y, double x) {
            if (!(weight >= 0 && Double.isFinite(weight * y) && Double.isFinite(weight * x))) {
                throw new IllegalArgumentException(
                        "a unit needs a weight from 0 up and numbers, not " + weight + ", " + y + ", " + x);
            }
            if (weight > 0) {
                double[] sums = clusters.computeIfAbsent(cluster, c -> new double[2]);
                sums[0] += weight * y;
                sums[1] += weight * x;
                numerator += weight * y;
                denominator += weight * x;
                weights += weight;
                squares += weight * weight;
            }
            return this;
        }

        public ClusteredRatio ratio() {
            double value = denominator == 0 ? Double.NaN : numerator / denominator;
            int m = clusters.size();
            double square = 0;
            for (double[] sums : clusters.values()) {
                double off = sums[0] - value * sums[1];
                square += off * off;
            }
            double error = m < 2 ? Double.NaN : Math.sqrt(square * m / (m - 1.0)) / Math.abs(denominator);
            return new ClusteredRatio(value, error, m, squares == 0 ? 0 : weights * weights / squares);
        }
    }

    /**
     * The value as a share, with 95 % limits that stay in 0 to 1: Wilson's for the effective number of units, value (1 -
     * value) / error^2, which is never taken as more than {@link #units}. Where nothing or all failed the error says nothing,
     * and units count as strangers. Source: Wilson limits with an effective sample size, Franco, Little, Louis and Slud
     * (2019), J. Surv. Stat. Methodol. 7:334.
     */
    public Estimate share() {
        if (Double.isNaN(value)) {
            return new Estimate(Double.NaN, Double.NaN, Double.NaN);
        }
        double share = Math.min(1, Math.max(0, value));
        double trials =
                standardError > 0 ? Math.min(units, share * (1 - share) / (standardError * standardError)) : units;
        if (!(trials > 0)) {
            // Shares within rounding of nothing or all.
            trials = units;
        }
        WilsonInterval limits = WilsonInterval.of(share * trials, trials, LEVEL);
        return new Estimate(share, limits.lower(), limits.upper());
    }

    /** The value as a ratio over 0, with 95 % limits on the log scale; without limits where it is 0. */
    public Estimate positive() {
        double spread = Math.exp(Z * standardError / value);
        boolean known = value > 0 && Double.isFinite(spread);
        return new Estimate(value, known ? value / spread : Double.NaN, known ? value * spread : Double.NaN);
    }

    /** The value as a number of any sign, with 95 % limits. */
    public Estimate plain() {
        return new Estimate(value, value - Z * standardError, value + Z * standardError);
    }
}
