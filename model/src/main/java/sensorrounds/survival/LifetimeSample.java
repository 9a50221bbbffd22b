package sensorrounds.survival;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;

/**
 * Observed lives, identical ones merged into weights, in the fixed order of (entry, lower, upper); every estimator takes
 * this. The unit entered observation alive at {@code entry} and failed in {@code (lower, upper]}; {@code lower == upper}
 * is an exact failure, an infinite {@code upper} no failure seen. Ages are days when the sample comes from
 * {@link Lifetime}s, else whatever unit the caller chose. Immutable; the order of the input never matters.
 */
public final class LifetimeSample implements Serializable {
    private final double[] entry;
    private final double[] lower;
    private final double[] upper;
    private final double[] weight;
    private final double lives;
    private final double failures;
    private final double exposure;
    /** Worked out on first use; whoever does it first, it is the same. */
    private transient LifeTerms terms;

    private record Row(double entry, double lower, double upper, double weight) {
        static final Comparator<Row> ORDER = Comparator.comparingDouble(Row::entry)
                .thenComparingDouble(Row::lower)
                .thenComparingDouble(Row::upper);

        boolean sameLife(Row other) {
            return entry == other.entry && lower == other.lower && upper == other.upper;
        }
    }

    private LifetimeSample(List<Row> rows) {
        List<Row> sorted = new ArrayList<>(rows);
        sorted.sort(Row.ORDER.thenComparingDouble(Row::weight));
        List<Row> merged = new ArrayList<>();
        for (Row row : sorted) {
            Row last = merged.isEmpty() ? null : merged.get(merged.size() - 1);
            if (last != null && last.sameLife(row)) {
                merged.set(merged.size() - 1, new Row(row.entry, row.lower, row.upper, last.weight + row.weight));
            } else {
                merged.add(row);
            }
        }
        entry = merged.stream().mapToDouble(Row::entry).toArray();
        lower = merged.stream().mapToDouble(Row::lower).toArray();
        upper = merged.stream().mapToDouble(Row::upper).toArray();
        weight = merged.stream().mapToDouble(Row::weight).toArray();
        double sumLives = 0;
        double sumFailures = 0;
        double sumExposure = 0;
        for (int i = 0; i < weight.length; i++) {
            sumLives += weight[i];
            sumFailures += failed(i) ? weight[i] : 0;
            sumExposure += weight[i] * (exit(i) - entry[i]);
        }
        lives = sumLives;
        failures = sumFailures;
        exposure = sumExposure;
    }

    /** The sample of these lives, ages in days. */
    public static LifetimeSample of(Collection<Lifetime> lifetimes) {
        List<Row> rows = new ArrayList<>(lifetimes.size());
        for (Lifetime life : lifetimes) {
            rows.add(new Row(
                    life.entry(),
                    life.lower(),
                    life.failed() ? life.upper() : Double.POSITIVE_INFINITY,
                    life.weight()));
        }
        return new LifetimeSample(rows);
    }

    /**
     * The sample of these lives, ages in any one unit.
     *
     * @param upper positive infinity where no failure was seen
     * @throws IllegalArgumentException if the lengths differ, or a life breaks 0 <= entry <= lower <= upper, entry <
     *     upper, finite lower, weight > 0; the message names the place in the arrays
     */
    public static LifetimeSample of(double[] entry, double[] lower, double[] upper, double[] weight) {
        if (entry.length != lower.length || entry.length != upper.length || entry.length != weight.length) {
            throw new IllegalArgumentException("lives need arrays of one length, not entry " + entry.length + ", lower "
                    + lower.length + ", upper " + upper.length + ", weight " + weight.length);
        }
        List<Row> rows = new ArrayList<>(entry.length);
        for (int i = 0; i < entry.length; i++) {
            boolean ordered = 0 <= entry[i] && entry[i] <= lower[i] && lower[i] <= upper[i] && entry[i] < upper[i];
            boolean finite = lower[i] < Double.POSITIVE_INFINITY && weight[i] < Double.POSITIVE_INFINITY;
            if (!(ordered && finite && weight[i] > 0)) {
                throw new IllegalArgumentException("not a life at index " + i + ": entry " + entry[i] + ", lower "
                        + lower[i] + ", upper " + upper[i] + ", weight " + weight[i]
                        + "; needs 0 <= entry <= lower <= upper, entry < upper, finite lower, weight > 0");
            }
            rows.add(new Row(entry[i], lower[i], upper[i], weight[i]));
        }
        return new LifetimeSample(rows);
    }

    /** All lives of all these samples. */
    public static LifetimeSample pooled(Collection<LifetimeSample> samples) {
        List<Row> rows = new ArrayList<>();
        for (LifetimeSample sample : samples) {
            for (int i = 0; i < sample.size(); i++) {
                rows.add(sample.row(i));
            }
        }
        return new LifetimeSample(rows);
    }

    /**
     * The same lives with every failure interval replaced by its midpoint, for estimators that need exact ages. A
     * diagnostic, not a method of record: with visit gaps up to about 1.5 years the Kaplan-Meier curve of midpoints
     * stays close to the truth, but its limits are too narrow, since not knowing the age is not in them.
     */
    public LifetimeSample atMidpoints() {
        List<Row> rows = new ArrayList<>(size());
        for (int i = 0; i < size(); i++) {
            double exit = exit(i);
            rows.add(failed(i) ? new Row(entry[i], exit, exit, weight[i]) : row(i));
        }
        return new LifetimeSample(rows);
    }

    /** Number of distinct lives; indices run below it. */
    public int size() {
        return weight.length;
    }

    public double entry(int i) {
        return entry[i];
    }

    public double lower(int i) {
        return lower[i];
    }

    /** Positive infinity where no failure was seen. */
    public double upper(int i) {
        return upper[i];
    }

    public double weight(int i) {
        return weight[i];
    }

    public boolean failed(int i) {
        return upper[i] < Double.POSITIVE_INFINITY;
    }

    public boolean exact(int i) {
        return lower[i] == upper[i];
    }

    /** Age at which the life left observation: its failure (midpoint of the interval) or when last seen alive. */
    public double exit(int i) {
        return failed(i) ? lower[i] + (upper[i] - lower[i]) / 2 : lower[i];
    }

    /** Whether every failure is known to its exact age. */
    public boolean exactFailures() {
        for (int i = 0; i < size(); i++) {
            if (failed(i) && !exact(i)) {
                return false;
            }
        }
        return true;
    }

    /** Sum of weights. */
    public double lives() {
        return lives;
    }

    /** Sum of weights of lives that failed. */
    public double failures() {
        return failures;
    }

    /** Unit-time under observation, entry to exit; failures count to the middle of their interval. */
    public double exposure() {
        return exposure;
    }

    /** Highest age anything is known about: a failure's upper end or an age last seen alive; 0 without lives. */
    public double lastAge() {
        double last = 0;
        for (int i = 0; i < size(); i++) {
            last = Math.max(last, failed(i) ? upper[i] : lower[i]);
        }
        return last;
    }

    /** The lives as their likelihood sees them. */
    LifeTerms terms() {
        if (terms == null) {
            terms = new LifeTerms(this);
        }
        return terms;
    }

    private Row row(int i) {
        return new Row(entry[i], lower[i], upper[i], weight[i]);
    }
}
