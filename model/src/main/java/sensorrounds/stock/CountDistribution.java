package sensorrounds.stock;

import java.io.Serializable;
import java.util.Arrays;

/** A distribution of a whole number of pieces: probability of {@code first}, {@code first + 1}, ... */
public final class CountDistribution implements Serializable {
    private static final long serialVersionUID = 1;
    /** Slack for rounding when a cumulative probability meets a level exactly. */
    private static final double ROUNDING = 1e-12;

    /** No pieces, for certain. */
    public static final CountDistribution ZERO = new CountDistribution(0, new double[] {1});

    private final int first;
    private final double[] pmf;

    CountDistribution(int first, double[] pmf) {
        this.first = first;
        this.pmf = pmf;
    }

    public double probability(int k) {
        return k < first || k >= first + pmf.length ? 0 : pmf[k - first];
    }

    /** P(N <= k). */
    public double upTo(int k) {
        double sum = 0;
        for (int i = 0; i < pmf.length && first + i <= k; i++) {
            sum += pmf[i];
        }
        return Math.min(1, sum);
    }

    /** P(N > k), added from the far end so that small tails keep their digits. */
    public double beyond(int k) {
        double sum = 0;
        for (int i = pmf.length - 1; i >= 0 && first + i > k; i--) {
            sum += pmf[i];
        }
        return Math.min(1, sum);
    }

    public double mean() {
        double sum = 0;
        for (int i = 0; i < pmf.length; i++) {
            sum += pmf[i] * (first + i);
        }
        return sum;
    }

    public double variance() {
        double mean = mean();
        double sum = 0;
        for (int i = 0; i < pmf.length; i++) {
            sum += pmf[i] * (first + i - mean) * (first + i - mean);
        }
        return sum;
    }

    /** Smallest k with P(N <= k) >= level: the pieces that meet demand with that probability. */
    public int quantile(double level) {
        double sum = 0;
        for (int i = 0; i < pmf.length; i++) {
            sum += pmf[i];
            if (sum >= level - ROUNDING) {
                return first + i;
            }
        }
        return first + pmf.length - 1;
    }

    /** Expected pieces short when {@code pieces} are there: E[(N - pieces)+]. */
    public double expectedShort(int pieces) {
        double sum = 0;
        for (int i = pmf.length - 1; i >= 0 && first + i > pieces; i--) {
            sum += pmf[i] * (first + i - pieces);
        }
        return sum;
    }

    /** Distribution of the sum of two independent numbers. */
    CountDistribution plus(CountDistribution other) {
        double[] sum = new double[pmf.length + other.pmf.length - 1];
        for (int i = 0; i < pmf.length; i++) {
            double p = pmf[i];
            for (int j = 0; j < other.pmf.length; j++) {
                sum[i + j] += p * other.pmf[j];
            }
        }
        return new CountDistribution(first + other.first, sum);
    }

    /** Without the ends whose whole probability is under {@code mass} each. */
    CountDistribution trimmed(double mass) {
        int from = 0;
        for (double cut = pmf[0]; cut < mass && from < pmf.length - 1; cut += pmf[from]) {
            from++;
        }
        int to = pmf.length;
        for (double cut = pmf[to - 1]; cut < mass && to - 1 > from; cut += pmf[to - 1]) {
            to--;
        }
        return from == 0 && to == pmf.length
                ? this
                : new CountDistribution(first + from, Arrays.copyOfRange(pmf, from, to));
    }

    /** Mixture with these weights, which add up to 1. */
    static CountDistribution mixture(CountDistribution[] parts, double[] weights) {
        int from = Integer.MAX_VALUE;
        int to = 0;
        for (CountDistribution part : parts) {
            from = Math.min(from, part.first);
            to = Math.max(to, part.first + part.pmf.length);
        }
        double[] mixed = new double[to - from];
        for (int p = 0; p < parts.length; p++) {
            for (int i = 0; i < parts[p].pmf.length; i++) {
                mixed[parts[p].first + i - from] += weights[p] * parts[p].pmf[i];
            }
        }
        return new CountDistribution(from, mixed);
    }
}
