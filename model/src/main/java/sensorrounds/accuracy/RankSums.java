package sensorrounds.accuracy;

import java.util.Arrays;

/**
 * Weights by rank of a value, with their sums below and at any rank in O(log n). Source: Fenwick (1994), Software: Practice
 * and Experience 24:327-336.
 */
final class RankSums {
    private final double[] values;
    private final double[] tree;
    private final double[] at;
    private double total;

    /** Ranks of these values, equal ones sharing a rank; all weights 0. */
    RankSums(double[] predictions) {
        values = Arrays.stream(predictions).sorted().distinct().toArray();
        tree = new double[values.length + 1];
        at = new double[values.length];
    }

    int rank(double value) {
        return Arrays.binarySearch(values, value);
    }

    void add(int rank, double weight) {
        at[rank] += weight;
        total += weight;
        for (int i = rank + 1; i < tree.length; i += i & -i) {
            tree[i] += weight;
        }
    }

    double below(int rank) {
        double sum = 0;
        for (int i = rank; i > 0; i -= i & -i) {
            sum += tree[i];
        }
        return sum;
    }

    double at(int rank) {
        return at[rank];
    }

    double above(int rank) {
        return total - below(rank) - at[rank];
    }
}
