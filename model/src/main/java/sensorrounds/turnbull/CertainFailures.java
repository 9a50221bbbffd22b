package sensorrounds.turnbull;

import java.util.Arrays;

/**
 * Intervals that no life is known to have outlived. There the likelihood can only gain from hazard, so it wants an
 * infinite one wherever a failed life asks for it: each such life is served by one infinite hazard among the intervals
 * it may have failed in. We put them as late as possible and no more of them than needed (the greedy stabbing of ranges
 * by their right ends), which keeps survival up as long as the data allow.
 */
final class CertainFailures {
    private final boolean[] outlivedByNone;
    private final int[] lastNotOutlived;
    private final boolean[] infinite;

    /** @param known number of lives known to have outlived each interval */
    CertainFailures(int[] known) {
        int m = known.length;
        outlivedByNone = new boolean[m];
        lastNotOutlived = new int[m];
        infinite = new boolean[m];
        int last = -1;
        for (int k = 0; k < m; k++) {
            outlivedByNone[k] = known[k] == 0;
            last = outlivedByNone[k] ? k : last;
            lastNotOutlived[k] = last;
        }
    }

    /** Whether a life that failed within the range is explained by an infinite hazard there. */
    boolean explains(IntervalRange range) {
        return lastNotOutlived[range.end() - 1] >= range.from();
    }

    /** Sets the infinite hazards that the lives with these ranges, all of them explained, ask for. */
    void serve(Iterable<IntervalRange> ranges) {
        int[] latestFrom = new int[infinite.length];
        Arrays.fill(latestFrom, -1);
        for (IntervalRange range : ranges) {
            latestFrom[range.end() - 1] = Math.max(latestFrom[range.end() - 1], range.from());
        }
        int latest = -1;
        for (int k = 0; k < infinite.length; k++) {
            if (latestFrom[k] > latest) {
                latest = lastNotOutlived[k];
                infinite[latest] = true;
            }
        }
    }

    boolean outlivedByNone(int k) {
        return outlivedByNone[k];
    }

    boolean infinite(int k) {
        return infinite[k];
    }
}
