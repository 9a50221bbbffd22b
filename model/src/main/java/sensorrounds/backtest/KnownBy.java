package sensorrounds.backtest;

import java.util.ArrayList;
import java.util.List;
import sensorrounds.accuracy.FollowUp;
import sensorrounds.accuracy.SightWeights;

/**
 * The forecasts of one cut with what is known of them at the end of a horizon, each with what it stands for.
 *
 * <p>A failure is known to an interval. One that may lie on either side of the end of the horizon counts as failed by the
 * share of its interval before it, as if equally likely on every day, and as living on by the rest: it becomes two entries.
 * Otherwise it is put in the middle of its interval, cut off at the day of the forecast. A sensor last seen working before
 * the end of the horizon is lost from sight that day, and those in sight stand for it, {@link SightWeights}; one never heard
 * again is lost at once. What had failed by the cut fails at once, after those never heard again: that, too, is only known
 * where somebody came again. Time counts from the cut, so that all enter at 0.
 */
final class KnownBy {
    /** A sensor is in sight for this part of the day it was last seen on; who was never heard again, on the day of the cut. */
    private static final double SEEN = 0.25;

    /** Later on that day, so that those never heard again are lost before what had failed comes out. */
    private static final double FAILED_AT_ONCE = 0.5;

    /**
     * A forecast, or a part of one, whose outcome is known.
     *
     * @param weight number of forecasts it stands for
     * @param part 1, or less for a part of one
     * @param days from the cut to its failure, or to the end of the horizon
     */
    record Entry(Judged judged, boolean failed, double weight, double part, double days) {
        Forecast forecast() {
            return judged.forecast();
        }

        double outcome() {
            return failed ? 1 : 0;
        }
    }

    private final List<Judged> all;
    private final List<Entry> entries;

    private KnownBy(List<Judged> all, List<Entry> entries) {
        this.all = all;
        this.entries = entries;
    }

    /** @param judged forecasts of one cut, with known chances */
    static KnownBy of(List<Judged> judged, Horizon horizon) {
        List<Judged> of = new ArrayList<>();
        List<double[]> rows = new ArrayList<>();
        for (Judged j : judged) {
            double share = j.fate().failed() ? j.fate().failedShareBy(horizon.days()) : 0;
            if (share > 0) {
                of.add(j);
                rows.add(new double[] {
                    middle(j.fate().workedOn(), Math.min(j.fate().failedBy(), horizon.days())), 1, share
                });
            }
            if (share < 1) {
                of.add(j);
                rows.add(new double[] {livedTo(j.fate(), horizon), 0, 1 - share});
            }
        }
        double[] exit = rows.stream().mapToDouble(r -> r[0]).toArray();
        boolean[] failed = new boolean[exit.length];
        double longest = 0;
        for (int i = 0; i < exit.length; i++) {
            failed[i] = rows.get(i)[1] == 1;
            longest = Math.max(longest, exit[i]);
        }
        List<Entry> entries = new ArrayList<>();
        if (longest > horizon.days()) {
            FollowUp units = FollowUp.of(new double[exit.length], exit, failed)
                    .withWeights(rows.stream().mapToDouble(r -> r[2]).toArray());
            double[] weights = SightWeights.to(horizon.days(), units);
            for (int i = 0; i < weights.length; i++) {
                if (weights[i] > 0) {
                    double days = Math.min(exit[i], horizon.days());
                    entries.add(new Entry(of.get(i), failed[i], weights[i], rows.get(i)[2], days));
                }
            }
        }
        return new KnownBy(List.copyOf(judged), entries);
    }

    /** Last moment it is known to have worked; past the horizon for the part of a failure that lies there. */
    private static double livedTo(Fate fate, Horizon horizon) {
        if (fate.failed()) {
            return middle(Math.max(fate.workedOn(), horizon.days()), fate.failedBy());
        }
        return Math.max(0, fate.workedOn()) + SEEN;
    }

    private static double middle(double from, double to) {
        return Math.max(FAILED_AT_ONCE, (Math.max(0, from) + to) / 2);
    }

    /**
     * Every forecast once, failures in the middle of their intervals, for the order of failures up to the end of the horizon.
     * Parallel to {@link #all}.
     */
    FollowUp inOrder() {
        double[] exit = new double[all.size()];
        boolean[] failed = new boolean[exit.length];
        for (int i = 0; i < exit.length; i++) {
            Fate fate = all.get(i).fate();
            failed[i] = fate.failed();
            exit[i] = failed[i] ? middle(fate.workedOn(), fate.failedBy()) : Math.max(0, fate.workedOn()) + SEEN;
        }
        return FollowUp.of(new double[exit.length], exit, failed);
    }

    /** All forecasts, known or not. */
    List<Judged> all() {
        return all;
    }

    /** Those whose outcome is known; none where nobody was seen past the horizon. */
    List<Entry> entries() {
        return entries;
    }

    /** Failures known, parts of failures added up. */
    double failures() {
        return entries.stream().filter(Entry::failed).mapToDouble(Entry::part).sum();
    }
}
