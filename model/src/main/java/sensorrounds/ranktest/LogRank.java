package sensorrounds.ranktest;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import sensorrounds.ranktest.ComparisonResult.Row;
import sensorrounds.ranktest.ComparisonResult.Status;
import sensorrounds.survival.LifetimeSample;
import sensorrounds.survival.RiskSet;

/**
 * The log-rank test and its weighted relatives for two or more groups, within strata, with delayed entry: a life counts
 * at ages in (entry, exit]. At each age with failures every group expects its share of them by its share of those at
 * risk; the variance is hypergeometric, d (Y - d) / (Y - 1) with ties. Weights of lives are counts.
 *
 * <p>Sources: Klein and Moeschberger (2003), Survival Analysis, eqs. 7.3.1-7.3.5 (k samples), 7.4 (trend), 7.5 (strata);
 * Mantel (1966), Cancer Chemother. Rep. 50:163.
 */
public final class LogRank {
    private final RankWeight weight;
    private final TrendScores trendScores;

    private LogRank(RankWeight weight, TrendScores trendScores) {
        this.weight = weight;
        this.trendScores = trendScores;
    }

    /** Weight 1 at every age; groups in the order given score 1, 2, 3 ... for the trend. */
    public static LogRank withDefaults() {
        return new LogRank(RankWeight.LOG_RANK, TrendScores.inOrder());
    }

    public LogRank with(RankWeight newWeight) {
        return new LogRank(newWeight, trendScores);
    }

    /** One number per group, in their order: an age, a dose, a year of make. */
    public LogRank withTrendScores(double... scores) {
        return new LogRank(weight, new TrendScores(scores));
    }

    /**
     * The test.
     *
     * @throws IllegalArgumentException if there are fewer than two groups, their strata differ in number, or a failure is
     *     known only to an interval
     */
    public ComparisonResult test(List<Group> groups) {
        int strata = Group.strataOf(groups);
        int k = groups.size();
        Sums sums = new Sums(k);
        for (int s = 0; s < strata; s++) {
            int stratum = s;
            addStratum(
                    sums,
                    groups.stream().map(group -> group.strata().get(stratum)).toList());
        }
        List<Row> rows = new ArrayList<>();
        double failures = 0;
        for (int j = 0; j < k; j++) {
            rows.add(new Row(groups.get(j).name(), groups.get(j).lives(), sums.observed[j], sums.expected[j]));
            failures += groups.get(j).failures();
        }
        if (!(failures > 0)) {
            return ComparisonResult.without(Status.NO_FAILURES, "no life in any group failed", rows);
        }
        return ComparisonResult.of(rows, sums.variance, trendScores.forGroups(k));
    }

    private static final class Sums {
        private final double[] observed;
        private final double[] expected;
        private final double[][] variance;

        Sums(int groups) {
            observed = new double[groups];
            expected = new double[groups];
            variance = new double[groups][groups];
        }
    }

    private void addStratum(Sums sums, List<LifetimeSample> samples) {
        int k = samples.size();
        List<RiskSet> riskSets = samples.stream().map(RiskSet::of).toList();
        double survival = 1;
        double modified = 1;
        for (Map.Entry<Double, double[]> age : failuresByAge(samples).entrySet()) {
            double[] failed = age.getValue();
            double[] atRisk = new double[k];
            double all = 0;
            double allFailed = 0;
            for (int j = 0; j < k; j++) {
                atRisk[j] = riskSets.get(j).at(age.getKey());
                all += atRisk[j];
                allFailed += failed[j];
            }
            modified *= 1 - allFailed / (all + 1);
            double w = weight.at(survival, modified, all);
            survival *= Math.max(0, 1 - allFailed / all);
            // One unit alone at risk says nothing about differences.
            double spread = all > 1 ? w * w * allFailed * Math.max(0, all - allFailed) / (all - 1) : 0;
            for (int j = 0; j < k; j++) {
                sums.observed[j] += w * failed[j];
                sums.expected[j] += w * allFailed * atRisk[j] / all;
                for (int l = 0; l < k; l++) {
                    double own = j == l ? atRisk[j] / all : 0;
                    sums.variance[j][l] += spread * (own - atRisk[j] / all * (atRisk[l] / all));
                }
            }
        }
    }

    private static SortedMap<Double, double[]> failuresByAge(List<LifetimeSample> samples) {
        SortedMap<Double, double[]> byAge = new TreeMap<>();
        for (int j = 0; j < samples.size(); j++) {
            LifetimeSample sample = samples.get(j);
            if (!sample.exactFailures()) {
                throw new IllegalArgumentException(
                        "the log-rank test needs exact failure ages and a sample has failures"
                                + " known to an interval; use IntervalScoreTest, or pass sample.atMidpoints() for a"
                                + " diagnostic");
            }
            for (int i = 0; i < sample.size(); i++) {
                if (sample.failed(i)) {
                    byAge.computeIfAbsent(sample.exit(i), age -> new double[samples.size()])[j] += sample.weight(i);
                }
            }
        }
        return byAge;
    }
}
