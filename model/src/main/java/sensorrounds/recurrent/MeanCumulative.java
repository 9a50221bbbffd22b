package sensorrounds.recurrent;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.SortedMap;
import java.util.TreeMap;
import sensorrounds.numeric.StandardNormal;
import sensorrounds.numeric.StudentT;

/**
 * Mean cumulative function: the expected number of events of a unit by a time, with no assumption on how a unit's events
 * hang together. At each time with d events among Y units watched it rises by d / Y. The variance is the robust one, from
 * each unit's own departures: with m the rise and Y_i = 1 while unit i is watched,
 *
 * <pre>Var M(t) = sum over units [ sum over s up to t of Y_i(s) / Y(s) (d_i(s) - m(s)) ]^2</pre>
 *
 * so it holds when some units have many events and others none. Sources: Nelson (1988), J. Qual. Technol. 20:24; Lawless
 * and Nadeau (1995), Technometrics 37:158, eq. 2.3; Meeker and Escobar (1998), Statistical Methods for Reliability Data,
 * eq. 16.2. It asks that why a unit is watched has nothing to do with its events.
 */
public final class MeanCumulative {
    /** On which scale the limits are symmetric. */
    public enum Band {
        /** On log M: limits stay above 0. */
        LOG {
            @Override
            double limit(double mean, double error, double z) {
                return mean * Math.exp(z * error / mean);
            }
        },
        /** On M itself; the lower limit may fall below 0. */
        PLAIN {
            @Override
            double limit(double mean, double error, double z) {
                return mean + z * error;
            }
        };

        /** The limit z standard errors up, down when negative. */
        abstract double limit(double mean, double error, double z);
    }

    /** By which law a departure of so many standard errors is judged. */
    public enum Reference {
        /** The normal law, right for many units. */
        NORMAL,
        /**
         * Student's t with the degrees of freedom of {@link WatchedUnits}, n - 1 where n units were watched alike, and the jackknife's
         * variance, since the robust one of few units is too small: without unit i the rise is (d - d_i) / (Y - 1), so that each
         * departure counts with 1 / (Y - 1) instead of 1 / Y, and the sum of squares with (n - 1) / n. A time at which one unit alone
         * was watched tells nothing of how units differ, and below two degrees there are no limits (NaN). Efron and Stein (1981), Ann. Statist. 9:586-596; Cameron and Miller
         * (2015), J. Human Resources 50:317-372, section VI (both from memory).
         */
        FEW_UNITS
    }

    /** With fewer Student's t has no variance, and limits on the log reach from next to nothing to millions. Two, but for rounding. */
    private static final double LEAST_DEGREES = 2 - 1e-9;

    private final Band band;
    private final double level;
    private final Reference reference;

    private MeanCumulative(Band band, double level, Reference reference) {
        this.band = band;
        this.level = level;
        this.reference = reference;
    }

    /** Log limits at 95 %, by the normal law. */
    public static MeanCumulative withDefaults() {
        return new MeanCumulative(Band.LOG, 0.95, Reference.NORMAL);
    }

    public MeanCumulative with(Band newBand) {
        return new MeanCumulative(newBand, level, reference);
    }

    public MeanCumulative with(Reference newReference) {
        return new MeanCumulative(band, level, newReference);
    }

    /** Coverage of the pointwise limits, in (0, 1). */
    public MeanCumulative withLevel(double newLevel) {
        if (!(newLevel > 0 && newLevel < 1)) {
            throw new IllegalArgumentException("coverage of limits must lie between 0 and 1, not " + newLevel);
        }
        return new MeanCumulative(band, newLevel, reference);
    }

    /** What happens at one time, in the order in which it must be taken: events before ends, ends before entries. */
    private static final class Moment {
        private final List<Integer> events = new ArrayList<>();
        private final List<Integer> ends = new ArrayList<>();
        private final List<Integer> entries = new ArrayList<>();
    }

    /** The estimate; without units one whose domain is empty. */
    public MeanCumulativeFit fit(Collection<EventHistory> units) {
        SortedMap<Double, Moment> moments = new TreeMap<>();
        int unit = 0;
        long events = 0;
        for (EventHistory history : units) {
            for (ObservationWindow w : history.windows()) {
                moments.computeIfAbsent(w.from(), t -> new Moment()).entries.add(unit);
                moments.computeIfAbsent(w.to(), t -> new Moment()).ends.add(unit);
            }
            for (double event : history.events()) {
                moments.computeIfAbsent(event, t -> new Moment()).events.add(unit);
                events++;
            }
            unit++;
        }
        // A unit's inner sum is departure[i] - fall while it is watched, departure[i] while it is not: every unit
        // watched
        // falls by the same m / Y at each time with events. So one pass serves, whatever the number of units.
        double[] departure = new double[unit];
        long watched = 0;
        double fall = 0;
        double sumWatched = 0;
        double variance = 0;
        Curve curve = new Curve(unit);
        WatchedUnits.Own[] since = new WatchedUnits.Own[unit];
        Arrays.fill(since, WatchedUnits.Own.NOTHING);
        for (Map.Entry<Double, Moment> moment : moments.entrySet()) {
            Moment now = moment.getValue();
            if (!now.events.isEmpty()) {
                int d = now.events.size();
                double rise = curve.weight(watched);
                double share = d * rise / watched;
                variance += share * (watched * share - 2 * sumWatched);
                fall += share;
                sumWatched -= watched * share;
                for (int i : now.events) {
                    double before = departure[i] - fall;
                    departure[i] += rise;
                    variance += (2 * before + rise) * rise;
                    sumWatched += rise;
                }
                curve.step(moment.getKey(), watched, d, variance);
            }
            for (int i : now.ends) {
                departure[i] -= fall;
                sumWatched -= departure[i];
                watched--;
                since[i] = curve.units.since(since[i]);
                curve.units.leave(1, since[i]);
            }
            for (int i : now.entries) {
                sumWatched += departure[i];
                departure[i] += fall;
                watched++;
                curve.units.enter(1, since[i]);
                since[i] = curve.units.since(since[i]);
            }
            if (!now.ends.isEmpty() || !now.entries.isEmpty()) {
                curve.watched(moment.getKey(), watched);
            }
        }
        return curve.done(unit, events);
    }

    /** The same from counts; times are those of the cells. */
    public MeanCumulativeFit fit(RecurrenceCells cells) {
        Curve curve = new Curve(cells.units());
        cells.walk(curve);
        return curve.done(cells.units(), cells.events());
    }

    /** Puts the steps together, whoever counts them. */
    final class Curve {
        /** Degrees of freedom of the variance. */
        final WatchedUnits units = new WatchedUnits();

        private final long all;
        /** What the sum of squared departures is multiplied by. */
        private final double shrink;

        private final List<MeanCumulativeFit.Step> steps = new ArrayList<>();
        private final NavigableMap<Double, Long> watchedAfter = new TreeMap<>();
        private double mean;
        private double poisson;

        Curve(long units) {
            all = units;
            shrink = reference == Reference.NORMAL ? 1 : (units - 1.0) / units;
        }

        /** Standard errors from the mean to a limit. */
        private double z(double squares) {
            double p = (1 + level) / 2;
            if (reference == Reference.NORMAL) {
                return StandardNormal.quantile(p);
            }
            double degrees = all > 1 ? units.degrees(squares) : 0;
            return degrees >= LEAST_DEGREES ? StudentT.quantile(p, degrees) : Double.NaN;
        }

        /** What a departure counts with where so many units are watched. */
        double weight(long watched) {
            return 1.0 / (reference == Reference.NORMAL ? watched : Math.max(1, watched - 1));
        }

        /** {@code d} events at a time at which {@code atRisk} units were watched; variance up to and with this time. */
        void step(double time, long atRisk, long d, double variance) {
            double rise = weight(atRisk);
            units.rise(d * rise / atRisk, d * rise * rise / atRisk);
            mean += (double) d / atRisk;
            poisson += (double) d / atRisk / atRisk;
            double z = z(variance);
            double squared = Math.max(0, variance) * shrink;
            double error = Math.sqrt(squared);
            steps.add(new MeanCumulativeFit.Step(
                    time,
                    atRisk,
                    d,
                    mean,
                    squared,
                    Math.sqrt(poisson),
                    band.limit(mean, error, -z),
                    band.limit(mean, error, z)));
        }

        /** Units watched just after a time at which a window began or ended. */
        void watched(double time, long watched) {
            watchedAfter.put(time, watched);
        }

        MeanCumulativeFit done(long units, long events) {
            return new MeanCumulativeFit(units, events, steps, watchedAfter);
        }
    }
}
