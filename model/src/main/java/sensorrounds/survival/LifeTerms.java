package sensorrounds.survival;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * A sample as its likelihood sees it. Given alive at entry, a life adds w (log(S(lower) - S(upper)) - log S(entry)): two terms
 * that share no age, so lives with one entry need the second once, and lives with one interval the first. A grid of n ages has up
 * to n^3 distinct lives, but n entries and n^2 intervals; nothing is rounded or left out. Likelihood: Klein and Moeschberger
 * (2003), Survival Analysis, eqs. 3.5.1-3.5.5.
 */
final class LifeTerms {
    /** Distinct entries above 0, ascending; from 0 everyone was observed and the term is 0. */
    final double[] entry;

    final double[] entryWeight;
    /** Distinct intervals by (lower, upper), ascending; upper is infinite without a failure, lower == upper is exact. */
    final double[] lower;

    final double[] upper;
    final double[] weight;

    LifeTerms(LifetimeSample sample) {
        int n = sample.size();
        int[] order = IntStream.range(0, n)
                .boxed()
                .sorted(Comparator.<Integer>comparingDouble(sample::lower).thenComparingDouble(sample::upper))
                .mapToInt(Integer::intValue)
                .toArray();
        double[] from = new double[n];
        double[] to = new double[n];
        double[] lives = new double[n];
        int intervals = 0;
        for (int i : order) {
            boolean again =
                    intervals > 0 && from[intervals - 1] == sample.lower(i) && to[intervals - 1] == sample.upper(i);
            if (!again) {
                from[intervals] = sample.lower(i);
                to[intervals] = sample.upper(i);
                intervals++;
            }
            lives[intervals - 1] += sample.weight(i);
        }
        lower = Arrays.copyOf(from, intervals);
        upper = Arrays.copyOf(to, intervals);
        weight = Arrays.copyOf(lives, intervals);
        double[] met = new double[n];
        double[] metWeight = new double[n];
        int entries = 0;
        // The sample is in the order of its entries.
        for (int i = 0; i < n; i++) {
            if (sample.entry(i) > 0) {
                if (entries == 0 || met[entries - 1] != sample.entry(i)) {
                    met[entries++] = sample.entry(i);
                }
                metWeight[entries - 1] += sample.weight(i);
            }
        }
        entry = Arrays.copyOf(met, entries);
        entryWeight = Arrays.copyOf(metWeight, entries);
    }

    boolean exact(int i) {
        return lower[i] == upper[i];
    }

    boolean failed(int i) {
        return upper[i] < Double.POSITIVE_INFINITY;
    }
}
