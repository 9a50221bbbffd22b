package sensorrounds.cox;

import java.util.Arrays;

/**
 * Sums that terms are added to and later taken from again. The rounding of every addition is kept beside the sum
 * (Neumaier 1974, ZAMM 54:39-51), so that a large row which has left leaves nothing behind but its absence.
 */
final class RunningSums {
    private final double[] sum;
    private final double[] rounding;

    RunningSums(int size) {
        sum = new double[size];
        rounding = new double[size];
    }

    void add(int index, double term) {
        double before = sum[index];
        double after = before + term;
        rounding[index] += Math.abs(before) >= Math.abs(term) ? (before - after) + term : (term - after) + before;
        sum[index] = after;
    }

    double get(int index) {
        return sum[index] + rounding[index];
    }

    void clear() {
        Arrays.fill(sum, 0);
        Arrays.fill(rounding, 0);
    }
}
