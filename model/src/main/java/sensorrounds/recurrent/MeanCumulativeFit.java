package sensorrounds.recurrent;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import sensorrounds.numeric.StandardNormal;

/**
 * An estimated mean cumulative function: a step function on the stretch of time in which anyone was watched. Beyond that
 * it does not answer. Where nobody was watched in between ({@link #unwatched}) it stands still for want of data, and is too
 * low from there on by what went unseen (Zuo, Meeker and Wu 2008, Technometrics 50:128).
 */
public final class MeanCumulativeFit implements Serializable {
    private static final long serialVersionUID = 1;

    /**
     * The curve from one time with events on.
     *
     * @param atRisk units watched at that time
     * @param events events at that time
     * @param mean mean number of events of a unit up to and with it
     * @param variance robust variance of the mean
     * @param poissonError standard error if each unit's events were a Poisson process; for contrast only
     * @param lower pointwise limit from the robust variance
     * @param upper pointwise limit
     */
    public record Step(
            double time,
            long atRisk,
            long events,
            double mean,
            double variance,
            double poissonError,
            double lower,
            double upper)
            implements Serializable {
        public double standardError() {
            return Math.sqrt(variance);
        }
    }

    private final double from;
    private final double to;
    private final long units;
    private final long events;
    private final List<Step> steps;
    private final NavigableMap<Double, Long> watchedAfter;

    /** @param watchedAfter number of units watched just after each time at which a window began or ended */
    MeanCumulativeFit(long units, long events, List<Step> steps, NavigableMap<Double, Long> watchedAfter) {
        this.from = watchedAfter.isEmpty() ? Double.NaN : watchedAfter.firstKey();
        this.to = watchedAfter.isEmpty() ? Double.NaN : watchedAfter.lastKey();
        this.units = units;
        this.events = events;
        this.steps = List.copyOf(steps);
        this.watchedAfter = new TreeMap<>(watchedAfter);
    }

    /** First time at which a unit came under observation; NaN when none did. */
    public double from() {
        return from;
    }

    /** Last time at which a unit was watched; NaN when none was. */
    public double to() {
        return to;
    }

    public boolean covers(double time) {
        return time >= from && time <= to;
    }

    /** Units given, watched or not. */
    public long units() {
        return units;
    }

    public long events() {
        return events;
    }

    /** One for each time with events, in time order. */
    public List<Step> steps() {
        return steps;
    }

    /** Stretches between {@link #from} and {@link #to} in which no unit was watched. */
    public List<ObservationWindow> unwatched() {
        List<ObservationWindow> stretches = new ArrayList<>();
        double emptySince = Double.NaN;
        for (Map.Entry<Double, Long> e : watchedAfter.entrySet()) {
            if (!Double.isNaN(emptySince)) {
                stretches.add(new ObservationWindow(emptySince, e.getKey()));
            }
            emptySince = e.getValue() == 0 ? e.getKey() : Double.NaN;
        }
        return stretches;
    }

    /** Units watched at a time: those with a window (from, to] that holds it. */
    public long atRisk(double time) {
        Map.Entry<Double, Long> before = watchedAfter.lowerEntry(time);
        return before == null ? 0 : before.getValue();
    }

    /**
     * The step in force at a time; before the first event one of mean 0, with limits NaN since nothing is known of the spread.
     *
     * @throws IllegalArgumentException beyond the time watched; ask {@link #covers} first
     */
    public Step at(double time) {
        if (!covers(time)) {
            throw new IllegalArgumentException("units were watched from " + from + " to " + to + ", not at " + time
                    + "; use a fitted rate to go beyond the data");
        }
        int low = 0;
        int high = steps.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (steps.get(middle).time() <= time) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low == 0 ? new Step(from, atRisk(time), 0, 0, 0, 0, Double.NaN, Double.NaN) : steps.get(low - 1);
    }

    /**
     * This less another mean cumulative function of other units, with normal limits: variances of separate units add
     * (Lawless and Nadeau 1995, section 3).
     *
     * @param level coverage, in (0, 1)
     * @throws IllegalArgumentException when a curve does not reach the time
     */
    public MeanDifference minus(MeanCumulativeFit other, double time, double level) {
        if (!(level > 0 && level < 1)) {
            throw new IllegalArgumentException("coverage of limits must lie between 0 and 1, not " + level);
        }
        Step mine = at(time);
        Step others = other.at(time);
        double difference = mine.mean() - others.mean();
        double error = Math.sqrt(mine.variance() + others.variance());
        double half = StandardNormal.quantile((1 + level) / 2) * error;
        return new MeanDifference(time, difference, error, difference - half, difference + half);
    }
}
