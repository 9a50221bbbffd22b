package sensorrounds.accuracy;

import java.util.function.IntToDoubleFunction;

/** Sums of amounts at ages from, or beyond, any age. */
final class SuffixSums {
    private final double[] ages;
    /** Sum of the amounts from each place of the sorted ages on. */
    private final double[] sums;

    private SuffixSums(double[] ages, double[] sums) {
        this.ages = ages;
        this.sums = sums;
    }

    static SuffixSums of(double[] ages, IntToDoubleFunction amount) {
        int[] order = FollowUp.order(ages);
        double[] sorted = new double[ages.length];
        double[] sums = new double[ages.length + 1];
        for (int k = ages.length - 1; k >= 0; k--) {
            sorted[k] = ages[order[k]];
            sums[k] = sums[k + 1] + amount.applyAsDouble(order[k]);
        }
        return new SuffixSums(sorted, sums);
    }

    /** At this age and above. */
    double from(double age) {
        int low = 0;
        int high = ages.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (ages[middle] < age) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return sums[low];
    }

    /** Above this age. */
    double beyond(double age) {
        return from(Math.nextUp(age));
    }
}
