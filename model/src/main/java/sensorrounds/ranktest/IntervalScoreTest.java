package sensorrounds.ranktest;

import java.util.Arrays;
import java.util.List;
import sensorrounds.survival.LifetimeSample;
import sensorrounds.turnbull.TurnbullFit;

/**
 * Compares groups of lives known to intervals by the scores that the pooled nonparametric estimate gives each life,
 * against their permutation over the groups (large-sample form with n - 1). It assumes that groups were inspected in the
 * same pattern, and that all lives were under observation from the same age: with delayed entry permuting is wrong, and
 * {@link HazardScoreTest} takes its place. Weights are counts.
 *
 * <p>Source: Fay and Shaw (2010), J. Stat. Software 36(2), sections 3 and 4.
 */
public final class IntervalScoreTest {
    private final IntervalScores scores;
    private final TrendScores trendScores;

    private IntervalScoreTest(IntervalScores scores, TrendScores trendScores) {
        this.scores = scores;
        this.trendScores = trendScores;
    }

    /** Sun's log-rank scores; groups in the order given score 1, 2, 3 ... for the trend. */
    public static IntervalScoreTest withDefaults() {
        return new IntervalScoreTest(IntervalScores.SUN, TrendScores.inOrder());
    }

    public IntervalScoreTest with(IntervalScores newScores) {
        return new IntervalScoreTest(newScores, trendScores);
    }

    /** One number per group, in their order. */
    public IntervalScoreTest withTrendScores(double... newScores) {
        return new IntervalScoreTest(scores, new TrendScores(newScores));
    }

    /**
     * The test. In its rows, observed counts failures, and expected is observed less score.
     *
     * @throws IllegalArgumentException if there are fewer than two groups, their strata differ in number, or lives of one
     *     stratum entered at different ages
     */
    public ComparisonResult test(List<Group> groups) {
        return IntervalComparison.of(groups, trendScores, IntervalComparison.Needs.MAXIMUM, this::addStratum);
    }

    private void addStratum(List<LifetimeSample> samples, TurnbullFit fit, double[] scoreSums, double[][] variance) {
        requireOneEntry(samples);
        IntervalScores.Table table = scores.over(fit.intervals());
        int k = samples.size();
        double[] lives = new double[k];
        double[] sums = new double[k];
        double squares = 0;
        for (int j = 0; j < k; j++) {
            LifetimeSample sample = samples.get(j);
            lives[j] = sample.lives();
            for (int i = 0; i < sample.size(); i++) {
                double score = table.score(fit.within(sample.lower(i), sample.upper(i)));
                sums[j] += sample.weight(i) * score;
                squares += sample.weight(i) * score * score;
            }
        }
        double n = Arrays.stream(lives).sum();
        // In theory the scores add to 0; what rounding leaves is taken out.
        double mean = Arrays.stream(sums).sum() / n;
        double spread = n > 1 ? (squares - n * mean * mean) / (n - 1) : 0;
        for (int j = 0; j < k; j++) {
            scoreSums[j] += sums[j] - lives[j] * mean;
            for (int l = 0; l < k; l++) {
                variance[j][l] += spread * ((j == l ? lives[j] : 0) - lives[j] * lives[l] / n);
            }
        }
    }

    private static void requireOneEntry(List<LifetimeSample> samples) {
        // Samples are sorted by entry.
        List<LifetimeSample> present =
                samples.stream().filter(sample -> sample.size() > 0).toList();
        double first = present.stream().mapToDouble(s -> s.entry(0)).min().orElse(0);
        double last =
                present.stream().mapToDouble(s -> s.entry(s.size() - 1)).max().orElse(0);
        if (first != last) {
            throw new IllegalArgumentException("a permutation test needs lives under observation from one age, these"
                    + " entered at ages from " + first + " to " + last + "; use HazardScoreTest");
        }
    }
}
