package sensorrounds.ranktest;

import java.util.ArrayList;
import java.util.List;
import sensorrounds.ranktest.ComparisonResult.Row;
import sensorrounds.ranktest.ComparisonResult.Status;
import sensorrounds.survival.LifetimeSample;
import sensorrounds.turnbull.Turnbull;
import sensorrounds.turnbull.TurnbullFit;
import sensorrounds.turnbull.Uniqueness;

/** What the tests around a pooled nonparametric estimate share: an estimate per stratum, scores added over strata. */
final class IntervalComparison {
    private IntervalComparison() {}

    /** Whether the scores hang on hazards that only a unique pooled estimate determines. */
    enum Needs {
        MAXIMUM,
        UNIQUE_MAXIMUM
    }

    /** How one stratum adds to the scores and their covariance. */
    @FunctionalInterface
    interface Stratum {
        void add(List<LifetimeSample> samples, TurnbullFit pooled, double[] scores, double[][] variance);
    }

    static ComparisonResult of(List<Group> groups, TrendScores trendScores, Needs needs, Stratum stratum) {
        int strata = Group.strataOf(groups);
        int k = groups.size();
        double[] scores = new double[k];
        double[][] variance = new double[k][k];
        String failed = "";
        String open = "";
        for (int s = 0; s < strata; s++) {
            int index = s;
            List<LifetimeSample> samples =
                    groups.stream().map(group -> group.strata().get(index)).toList();
            TurnbullFit pooled = Turnbull.withDefaults().fit(LifetimeSample.pooled(samples));
            boolean maximum = pooled.converged() || pooled.status() == TurnbullFit.Status.COLLAPSED;
            if (maximum && needs == Needs.UNIQUE_MAXIMUM && pooled.uniquenessWhereOutlived() == Uniqueness.NOT_UNIQUE) {
                open = "stratum " + (s + 1) + ": other masses fit all groups pooled equally well, and each gives other"
                        + " scores; take ages in wider steps";
            } else if (maximum) {
                stratum.add(samples, pooled, scores, variance);
            } else if (pooled.status() == TurnbullFit.Status.NOT_CONVERGED) {
                failed = "stratum " + (s + 1) + ", all groups pooled: " + pooled.cause();
            }
        }
        List<Row> rows = new ArrayList<>();
        for (int j = 0; j < k; j++) {
            double failures = groups.get(j).failures();
            rows.add(new Row(groups.get(j).name(), groups.get(j).lives(), failures, failures - scores[j]));
        }
        if (!failed.isEmpty()) {
            return ComparisonResult.without(Status.NO_POOLED_ESTIMATE, failed, List.of());
        }
        if (groups.stream().noneMatch(group -> group.failures() > 0)) {
            return ComparisonResult.without(Status.NO_FAILURES, "no life in any group failed", rows);
        }
        if (!open.isEmpty()) {
            List<Row> withoutExpected = rows.stream()
                    .map(r -> new Row(r.name(), r.lives(), r.observed(), Double.NaN))
                    .toList();
            return ComparisonResult.without(Status.NOT_DETERMINED, open, withoutExpected);
        }
        return ComparisonResult.of(rows, variance, trendScores.forGroups(k));
    }
}
