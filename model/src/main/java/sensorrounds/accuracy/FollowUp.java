package sensorrounds.accuracy;

import java.util.Arrays;
import sensorrounds.survival.LifetimeSample;

/**
 * What became of the units that were predicted: under observation at ages in (entry, exit], then failed or lost from
 * sight. For a forecast made on one day count from that day: entry 0 for all. Predictions are passed beside it, one per
 * unit in this order. Immutable.
 */
public final class FollowUp {
    private final double[] entry;
    private final double[] exit;
    private final boolean[] failed;
    private final double[] weight;

    private FollowUp(double[] entry, double[] exit, boolean[] failed, double[] weight) {
        this.entry = entry;
        this.exit = exit;
        this.failed = failed;
        this.weight = weight;
    }

    /**
     * Units of weight 1.
     *
     * @throws IllegalArgumentException if lengths differ, or a unit breaks 0 <= entry < exit < infinity
     */
    public static FollowUp of(double[] entry, double[] exit, boolean[] failed) {
        if (entry.length != exit.length || entry.length != failed.length) {
            throw new IllegalArgumentException("units need arrays of one length, not entry " + entry.length + ", exit "
                    + exit.length + ", failed " + failed.length);
        }
        for (int i = 0; i < entry.length; i++) {
            if (!(0 <= entry[i] && entry[i] < exit[i] && exit[i] < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("unit " + i + " was under observation for no time: entry " + entry[i]
                        + ", exit " + exit[i] + "; needs 0 <= entry < exit, finite");
            }
        }
        double[] ones = new double[entry.length];
        Arrays.fill(ones, 1);
        return new FollowUp(entry.clone(), exit.clone(), failed.clone(), ones);
    }

    /** Units counted this often: the same as repeating them. */
    public FollowUp withWeights(double[] weights) {
        requirePredictions("weights", weights);
        for (int i = 0; i < weights.length; i++) {
            if (!(weights[i] > 0)) {
                throw new IllegalArgumentException("unit " + i + " has weight " + weights[i] + "; needs one above 0");
            }
        }
        return new FollowUp(entry, exit, failed, weights.clone());
    }

    public int size() {
        return entry.length;
    }

    public double entry(int unit) {
        return entry[unit];
    }

    public double exit(int unit) {
        return exit[unit];
    }

    public boolean failed(int unit) {
        return failed[unit];
    }

    public double weight(int unit) {
        return weight[unit];
    }

    /** Whether any unit came under observation later than at age 0. */
    public boolean delayedEntry() {
        return Arrays.stream(entry).anyMatch(age -> age > 0);
    }

    /** The units as a survival sample. */
    LifetimeSample sample() {
        double[] upper = exit.clone();
        for (int i = 0; i < upper.length; i++) {
            upper[i] = failed[i] ? exit[i] : Double.POSITIVE_INFINITY;
        }
        return LifetimeSample.of(entry, exit, upper, weight);
    }

    /** One finite number per unit. */
    void requirePredictions(String what, double[] values) {
        if (values.length != size()) {
            throw new IllegalArgumentException(values.length + " " + what + " for " + size() + " units; one each");
        }
        for (int i = 0; i < values.length; i++) {
            if (!Double.isFinite(values[i])) {
                throw new IllegalArgumentException("unit " + i + ": " + values[i] + " in " + what + " is no number");
            }
        }
    }

    /** Units by rising value. */
    static int[] order(double[] values) {
        Integer[] order = new Integer[values.length];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, (a, b) -> Double.compare(values[a], values[b]));
        return Arrays.stream(order).mapToInt(Integer::intValue).toArray();
    }
}
