package sensorrounds.turnbull;

/**
 * The likelihood in the increments h of the cumulative hazard over intervals: sum over groups g of lives of w_g log(1 -
 * exp(-x_g)) less sum_k r_k h_k, with x_g the sum of h over the intervals in which the lives of g may have failed (a
 * contiguous range), and r_k > 0 the weight known to have outlived interval k. It is concave in h >= 0, truncated or
 * not, so that the KKT conditions are enough. Values, gradients and curvature products take O(groups + intervals) by
 * prefix sums and difference arrays.
 *
 * <p>With y = 1 / (e^x - 1) the derivative of log(1 - e^-x), its conjugate gives an upper bound on the maximum for any y
 * that pulls no interval harder than r (Boyd and Vandenberghe 2004, Convex Optimization, 5.1 and 5.5): that bound is
 * what certifies a solution.
 */
final class HazardProblem {
    private final double[] outlived;
    private final int[] from;
    private final int[] end;
    private final double[] weight;

    /**
     * @param outlived r, all positive
     * @param from first interval of each group
     * @param end one past the last
     */
    HazardProblem(double[] outlived, int[] from, int[] end, double[] weight) {
        this.outlived = outlived;
        this.from = from;
        this.end = end;
        this.weight = weight;
    }

    int size() {
        return outlived.length;
    }

    int groups() {
        return weight.length;
    }

    int from(int group) {
        return from[group];
    }

    int end(int group) {
        return end[group];
    }

    double outlived(int k) {
        return outlived[k];
    }

    /** x of every group. */
    double[] reach(double[] hazard) {
        return sums(prefix(hazard), hazard);
    }

    double value(double[] hazard, double[] reach) {
        double value = 0;
        for (int g = 0; g < weight.length; g++) {
            value += weight[g] * log1mExpMinus(reach[g]);
        }
        for (int k = 0; k < outlived.length; k++) {
            value -= outlived[k] * hazard[k];
        }
        return value;
    }

    /** Sum of w y over the groups that cover each interval; its excess over r is the gradient. */
    double[] pull(double[] reach) {
        double[] pull = new double[size() + 1];
        for (int g = 0; g < weight.length; g++) {
            double y = weight[g] / Math.expm1(reach[g]);
            pull[from[g]] += y;
            pull[end[g]] -= y;
        }
        accumulate(pull);
        return pull;
    }

    /**
     * A bound on how far the value lies below the maximum. The groups' y are scaled down by the product of min(1, r /
     * pull) over their intervals, which makes them admissible in the dual; terms are arranged so that nothing cancels.
     */
    double gap(double[] hazard, double[] reach, double[] pull) {
        double[] logScale = new double[size()];
        double gap = 0;
        for (int k = 0; k < size(); k++) {
            gap += hazard[k] * (outlived[k] - pull[k]);
            logScale[k] = pull[k] > outlived[k] ? Math.log(outlived[k] / pull[k]) : 0;
        }
        double[] total = sums(prefix(logScale), logScale);
        for (int g = 0; g < weight.length; g++) {
            if (total[g] < 0) {
                double y = 1 / Math.expm1(reach[g]);
                gap += weight[g] * y * -Math.expm1(total[g]) * Math.log1p(1 / (y * Math.exp(total[g])));
            }
        }
        return gap;
    }

    /** -w d2 log(1 - e^-x) / dx2 of every group. */
    double[] curvature(double[] reach) {
        double[] curvature = new double[weight.length];
        for (int g = 0; g < weight.length; g++) {
            double y = 1 / Math.expm1(reach[g]);
            curvature[g] = weight[g] * y * (1 + y);
        }
        return curvature;
    }

    /** Sum over the groups that cover each interval of their weight times their value. */
    double[] spreadWeighted(double[] perGroup) {
        double[] weighted = perGroup.clone();
        for (int g = 0; g < weighted.length; g++) {
            weighted[g] *= weight[g];
        }
        return spread(weighted);
    }

    /** Diagonal of the information. */
    double[] diagonal(double[] curvature) {
        return spread(curvature);
    }

    /** Information times v. */
    double[] times(double[] curvature, double[] v) {
        double[] along = sums(prefix(v), v);
        for (int g = 0; g < along.length; g++) {
            along[g] *= curvature[g];
        }
        return spread(along);
    }

    private double[] spread(double[] perGroup) {
        double[] sum = new double[size() + 1];
        for (int g = 0; g < perGroup.length; g++) {
            sum[from[g]] += perGroup[g];
            sum[end[g]] -= perGroup[g];
        }
        accumulate(sum);
        return sum;
    }

    private double[] sums(double[] prefix, double[] values) {
        double[] sums = new double[weight.length];
        for (int g = 0; g < sums.length; g++) {
            // A single interval is taken as it is: a difference of prefix sums would lose digits.
            sums[g] = end[g] - from[g] == 1 ? values[from[g]] : prefix[end[g]] - prefix[from[g]];
        }
        return sums;
    }

    private static double[] prefix(double[] values) {
        double[] prefix = new double[values.length + 1];
        for (int k = 0; k < values.length; k++) {
            prefix[k + 1] = prefix[k] + values[k];
        }
        return prefix;
    }

    private static void accumulate(double[] differences) {
        for (int k = 1; k < differences.length; k++) {
            differences[k] += differences[k - 1];
        }
    }

    private static double log1mExpMinus(double x) {
        return x > 0 ? x < 0.693 ? Math.log(-Math.expm1(-x)) : Math.log1p(-Math.exp(-x)) : Double.NEGATIVE_INFINITY;
    }
}
