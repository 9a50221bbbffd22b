package sensorrounds.turnbull;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sensorrounds.survival.LifetimeSample;
import sensorrounds.turnbull.TurnbullFit.Status;

/** The lives of a sample placed on its innermost intervals: what is settled by counting, and what is left to maximise. */
final class PlacedLives {
    private final Support support;
    private final CertainFailures certain;
    private final double[] outlived;
    /** Lives whose failure no infinite hazard explains, equal ranges merged. */
    private final Map<IntervalRange, Double> open = new LinkedHashMap<>();

    private final double firstEntry;
    private final int lastStart;

    PlacedLives(LifetimeSample sample) {
        support = Support.of(sample);
        int m = support.size();
        int[] known = new int[m + 1];
        outlived = new double[m + 1];
        List<IntervalRange> ranges = new ArrayList<>();
        int latest = 0;
        for (int i = 0; i < sample.size(); i++) {
            IntervalRange range = support.within(sample.lower(i), sample.upper(i));
            ranges.add(range);
            int start = support.firstAfter(sample.entry(i));
            latest = Math.max(latest, start);
            known[start]++;
            known[range.from()]--;
            outlived[start] += sample.weight(i);
            outlived[range.from()] -= sample.weight(i);
        }
        for (int k = 1; k <= m; k++) {
            known[k] += known[k - 1];
            outlived[k] += outlived[k - 1];
        }
        // A sample is sorted by entry.
        firstEntry = sample.entry(0);
        lastStart = latest;
        certain = new CertainFailures(Arrays.copyOf(known, m));
        List<IntervalRange> explained = new ArrayList<>();
        for (int i = 0; i < sample.size(); i++) {
            if (sample.failed(i)) {
                if (certain.explains(ranges.get(i))) {
                    explained.add(ranges.get(i));
                } else {
                    open.merge(ranges.get(i), sample.weight(i), Double::sum);
                }
            }
        }
        certain.serve(explained);
    }

    /** The problem on the intervals that somebody is known to have outlived; the others are settled. */
    HazardProblem problem() {
        int[] compact = new int[support.size() + 1];
        double[] r = new double[support.size()];
        int size = 0;
        for (int k = 0; k < support.size(); k++) {
            compact[k] = size;
            if (!certain.outlivedByNone(k)) {
                r[size++] = outlived[k];
            }
        }
        compact[support.size()] = size;
        int[] from = new int[open.size()];
        int[] end = new int[open.size()];
        double[] weight = new double[open.size()];
        int g = 0;
        for (Map.Entry<IntervalRange, Double> group : open.entrySet()) {
            from[g] = compact[group.getKey().from()];
            end[g] = compact[group.getKey().end() - 1] + 1;
            weight[g++] = group.getValue();
        }
        return new HazardProblem(Arrays.copyOf(r, size), from, end, weight);
    }

    TurnbullFit result(HazardProblem problem, HazardMaximizer.Solution solution) {
        int m = support.size();
        List<InnermostInterval> intervals = new ArrayList<>(m);
        List<Double> collapses = new ArrayList<>();
        boolean settledFreely = false;
        double survival = 1;
        int next = 0;
        for (int k = 0; k < m; k++) {
            double hazard;
            boolean beyond = support.upper(k) == Double.POSITIVE_INFINITY;
            if (!certain.outlivedByNone(k)) {
                hazard = solution.hazard()[next++];
            } else {
                hazard = certain.infinite(k) || beyond ? Double.POSITIVE_INFINITY : 0;
                settledFreely |= hazard == 0;
            }
            if (hazard == Double.POSITIVE_INFINITY && k < lastStart) {
                collapses.add(support.upper(k));
            }
            double mass = survival * -Math.expm1(-hazard);
            survival *= Math.exp(-hazard);
            intervals.add(new InnermostInterval(
                    support.lower(k),
                    support.upper(k),
                    hazard,
                    mass,
                    survival,
                    certain.outlivedByNone(k) ? 0 : outlived[k]));
        }
        Uniqueness uniqueness = settledFreely ? Uniqueness.NOT_UNIQUE : Uniqueness.of(problem, solution.hazard());
        Status status = !solution.certified()
                ? Status.NOT_CONVERGED
                : collapses.isEmpty() ? Status.CONVERGED : Status.COLLAPSED;
        return new TurnbullFit(status, intervals, firstEntry, collapses, uniqueness, problem, solution, support);
    }
}
