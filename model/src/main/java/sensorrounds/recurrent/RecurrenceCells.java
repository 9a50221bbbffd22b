package sensorrounds.recurrent;

import java.io.Serializable;
import java.util.HashMap;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Counts from which the mean cumulative function with its robust variance, and tests of trend, come out as if from the
 * histories themselves: a mergeable state of whole numbers, so that any split of the fleet merged in any order is the same.
 * Each unit is watched in one window (from, to] of whole numbers.
 *
 * <p>The variance needs, of each unit, sums over pairs of its events and over its events with either end of its window; so
 * it is enough to count such pairs over all units. Their number is bounded by the square of the length of time in steps,
 * however many units there are. Not thread safe.
 */
public final class RecurrenceCells implements Serializable {
    private static final long serialVersionUID = 1;

    /** A pair of steps. */
    record Pair(int first, int second) implements Serializable {}

    private final int step;
    private final Map<Pair, Long> windows = new HashMap<>();
    private final Map<Pair, Long> eventWithFrom = new HashMap<>();
    private final Map<Pair, Long> eventWithTo = new HashMap<>();
    /** Pairs of one unit's events: unordered at different steps; at one step ordered, each with itself too. */
    private final Map<Pair, Long> eventPairs = new HashMap<>();

    private long units;
    private long events;
    private long exposure;
    private long departures;
    private long departuresSquared;
    private long eventsByLengthSquared;

    /**
     * @param step width to which times are rounded for the curve: starts down, events and ends up, so that an event stays in
     *     its window; 1 keeps them as they are. Tests of trend use the times as they are.
     */
    public RecurrenceCells(int step) {
        if (step < 1) {
            throw new IllegalArgumentException("a step is 1 or wider, not " + step);
        }
        this.step = step;
    }

    /**
     * Counts a unit watched in (from, to].
     *
     * @throws IllegalArgumentException when the window holds no time or an event lies outside it
     */
    public RecurrenceCells add(int from, int to, int... times) {
        if (from >= to) {
            throw new IllegalArgumentException(
                    "a window of observation (from, to] needs from < to, not (" + from + ", " + to + "]");
        }
        Pair window = new Pair(Math.floorDiv(from, step), up(to));
        windows.merge(window, 1L, Long::sum);
        units++;
        exposure += (long) to - from;
        SortedMap<Integer, Integer> own = new TreeMap<>();
        long departure = 0;
        for (int time : times) {
            if (time <= from || time > to) {
                throw new IllegalArgumentException("an event at " + time + " lies outside the window of observation ("
                        + from + ", " + to + "]; an event that opened the observation is not counted");
            }
            own.merge(up(time), 1, Integer::sum);
            departure += 2L * time - from - to;
        }
        long length = (long) to - from;
        events += times.length;
        eventsByLengthSquared += times.length * length * length;
        departures += departure;
        departuresSquared += departure * departure;
        own.forEach((at, n) -> {
            eventWithFrom.merge(new Pair(at, window.first()), (long) n, Long::sum);
            eventWithTo.merge(new Pair(at, window.second()), (long) n, Long::sum);
            own.headMap(at).forEach((earlier, m) -> eventPairs.merge(new Pair(earlier, at), (long) n * m, Long::sum));
            eventPairs.merge(new Pair(at, at), (long) n * n, Long::sum);
        });
        return this;
    }

    private int up(int time) {
        return Math.negateExact(Math.floorDiv(-time, step));
    }

    /**
     * Takes in the counts of other units.
     *
     * @throws IllegalArgumentException when they were counted at another step
     */
    public RecurrenceCells merge(RecurrenceCells o) {
        if (step != o.step) {
            throw new IllegalArgumentException("counts at steps of " + step + " and " + o.step + " do not add up");
        }
        addAll(windows, o.windows);
        addAll(eventWithFrom, o.eventWithFrom);
        addAll(eventWithTo, o.eventWithTo);
        addAll(eventPairs, o.eventPairs);
        units += o.units;
        events += o.events;
        exposure += o.exposure;
        departures += o.departures;
        departuresSquared += o.departuresSquared;
        eventsByLengthSquared += o.eventsByLengthSquared;
        return this;
    }

    private static void addAll(Map<Pair, Long> mine, Map<Pair, Long> others) {
        others.forEach((pair, n) -> mine.merge(pair, n, Long::sum));
    }

    public long units() {
        return units;
    }

    public long events() {
        return events;
    }

    /** Unit-time watched, not rounded. */
    public long exposure() {
        return exposure;
    }

    /** Number of cells held: what travels between partitions. */
    public int size() {
        return windows.size() + eventWithFrom.size() + eventWithTo.size() + eventPairs.size();
    }

    /** As {@link TrendTests#robustLaplace}, of the units counted. */
    public TrendTest robustLaplace() {
        return TrendTest.normal(departures / Math.sqrt(departuresSquared));
    }

    /** As {@link TrendTests#laplace}, of the units counted. */
    public TrendTest laplace() {
        return TrendTest.normal(departures / 2.0 / Math.sqrt(eventsByLengthSquared / 12.0));
    }

    /** Cells that come up at one step. */
    private static final class Moment {
        private final Map<Integer, Long> from = new TreeMap<>();
        private final Map<Integer, Long> earlier = new TreeMap<>();
        private final Map<Integer, Long> endedFrom = new TreeMap<>();
        private final Map<Integer, Long> endedEvents = new TreeMap<>();
        private long entries;
    }

    /**
     * The pass of {@link MeanCumulative#fit(java.util.Collection)} over counts. There each unit's inner sum is kept; here only
     * their total over the units watched, with the parts of it that leave at an end or are squared at an event taken from the
     * pairs.
     */
    void walk(MeanCumulative.Curve curve) {
        SortedMap<Integer, Moment> moments = moments();
        Map<Integer, Double> fallAt = new HashMap<>();
        Map<Integer, Double> riseAt = new HashMap<>();
        Map<Integer, WatchedUnits.Own> ownAt = new HashMap<>();
        long watched = 0;
        double fall = 0;
        double sumWatched = 0;
        double variance = 0;
        for (Map.Entry<Integer, Moment> e : moments.entrySet()) {
            int time = e.getKey();
            Moment now = e.getValue();
            long d = now.from.values().stream().mapToLong(n -> n).sum();
            if (d > 0) {
                double rise = curve.weight(watched);
                double share = d * rise / watched;
                variance += share * (watched * share - 2 * sumWatched);
                fall += share;
                sumWatched += d * rise - watched * share;
                double before = 0;
                double together = 0;
                for (Map.Entry<Integer, Long> pair : now.earlier.entrySet()) {
                    if (pair.getKey() == time) {
                        together = pair.getValue() * rise;
                    } else {
                        before += pair.getValue() * riseAt.get(pair.getKey());
                    }
                }
                for (Map.Entry<Integer, Long> from : now.from.entrySet()) {
                    before -= from.getValue() * (fall - fallAt.get(from.getKey()));
                }
                variance += (2 * before + together) * rise;
                riseAt.put(time, rise);
                curve.step((double) time * step, watched, d, variance);
            }
            for (Map.Entry<Integer, Long> from : now.endedFrom.entrySet()) {
                watched -= from.getValue();
                curve.units.leave(from.getValue(), curve.units.since(ownAt.get(from.getKey())));
                sumWatched += from.getValue() * (fall - fallAt.get(from.getKey()));
            }
            for (Map.Entry<Integer, Long> event : now.endedEvents.entrySet()) {
                sumWatched -= event.getValue() * riseAt.get(event.getKey());
            }
            watched += now.entries;
            curve.units.enter(now.entries, WatchedUnits.Own.NOTHING);
            ownAt.put(time, curve.units.total());
            fallAt.put(time, fall);
            if (now.entries > 0 || !now.endedFrom.isEmpty()) {
                curve.watched((double) time * step, watched);
            }
        }
    }

    private SortedMap<Integer, Moment> moments() {
        SortedMap<Integer, Moment> moments = new TreeMap<>();
        windows.forEach((w, n) -> {
            at(moments, w.first()).entries += n;
            at(moments, w.second()).endedFrom.put(w.first(), n);
        });
        eventWithFrom.forEach((p, n) -> at(moments, p.first()).from.put(p.second(), n));
        eventWithTo.forEach((p, n) -> at(moments, p.second()).endedEvents.put(p.first(), n));
        eventPairs.forEach((p, n) -> at(moments, p.second()).earlier.put(p.first(), n));
        return moments;
    }

    private static Moment at(SortedMap<Integer, Moment> moments, int time) {
        return moments.computeIfAbsent(time, t -> new Moment());
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof RecurrenceCells o
                && step == o.step
                && units == o.units
                && events == o.events
                && exposure == o.exposure
                && departures == o.departures
                && departuresSquared == o.departuresSquared
                && eventsByLengthSquared == o.eventsByLengthSquared
                && windows.equals(o.windows)
                && eventWithFrom.equals(o.eventWithFrom)
                && eventWithTo.equals(o.eventWithTo)
                && eventPairs.equals(o.eventPairs);
    }

    @Override
    public int hashCode() {
        return windows.hashCode() + 31 * eventPairs.hashCode();
    }
}
