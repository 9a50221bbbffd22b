package sensorrounds.survival;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * How many units are under observation at an age: those with entry < age <= exit. A unit entering exactly at an age is
 * not at risk there, one leaving is. Under delayed entry the number may rise with age. Source: Klein and Moeschberger
 * (2003), Survival Analysis, 4.6. A count takes O(log n).
 */
public final class RiskSet {
    private final WeightsBelow entries;
    private final WeightsBelow exits;
    private final List<Span> observed;

    private RiskSet(WeightsBelow entries, WeightsBelow exits, List<Span> observed) {
        this.entries = entries;
        this.exits = exits;
        this.observed = observed;
    }

    /** Risk set of a sample; a failure known to an interval leaves in the middle of it. */
    public static RiskSet of(LifetimeSample sample) {
        int n = sample.size();
        double[] entry = new double[n];
        double[] exit = new double[n];
        double[] weight = new double[n];
        List<Span> observed = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            entry[i] = sample.entry(i);
            exit[i] = sample.exit(i);
            weight[i] = sample.weight(i);
            append(observed, entry[i], exit[i]);
        }
        return new RiskSet(WeightsBelow.of(entry, weight), WeightsBelow.of(exit, weight), List.copyOf(observed));
    }

    /** Weight under observation at the age. */
    public double at(double age) {
        double difference = entries.below(age) - exits.below(age);
        // Fractional weights leave rounding where nobody is left.
        return difference > 1e-12 * entries.total() ? difference : 0;
    }

    /** Ages at which the weight under observation changes, in no order. */
    DoubleStream changes() {
        return DoubleStream.concat(Arrays.stream(entries.ages()), Arrays.stream(exits.ages()));
    }

    /** Stretches of age with somebody under observation, in order, apart from each other. */
    public List<Span> observed() {
        return observed;
    }

    /** Samples come sorted by entry, so that a stretch only ever grows at its end. */
    private static void append(List<Span> observed, double entry, double exit) {
        if (!(entry < exit)) {
            return;
        }
        Span last = observed.isEmpty() ? null : observed.get(observed.size() - 1);
        if (last != null && entry <= last.to()) {
            observed.set(observed.size() - 1, new Span(last.from(), Math.max(last.to(), exit)));
        } else {
            observed.add(new Span(entry, exit));
        }
    }

    private record WeightsBelow(double[] ages, double[] cumulated) {
        static WeightsBelow of(double[] ages, double[] weights) {
            Integer[] order = new Integer[ages.length];
            Arrays.setAll(order, i -> i);
            Arrays.sort(order, Comparator.comparingDouble(i -> ages[i]));
            double[] sorted = new double[ages.length];
            double[] cumulated = new double[ages.length + 1];
            for (int i = 0; i < order.length; i++) {
                sorted[i] = ages[order[i]];
                cumulated[i + 1] = cumulated[i] + weights[order[i]];
            }
            return new WeightsBelow(sorted, cumulated);
        }

        /** Weight at ages strictly below. */
        double below(double age) {
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
            return cumulated[low];
        }

        double total() {
            return cumulated[ages.length];
        }
    }
}
