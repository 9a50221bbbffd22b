package sensorrounds.ranktest;

import java.util.List;
import sensorrounds.survival.LifetimeSample;
import sensorrounds.turnbull.InnermostInterval;
import sensorrounds.turnbull.IntervalRange;
import sensorrounds.turnbull.TurnbullFit;

/**
 * Compares groups of lives known to intervals, with delayed entry: the score test of proportional hazards at no
 * difference, around the pooled nonparametric estimate. It needs neither the same entries nor the same inspections in the
 * groups. Weights are counts; strata have baseline hazards of their own.
 *
 * <p>A life of group j with cumulative hazard A outlived since entry and x over the interval it failed in adds to the
 * log-likelihood -A e^b + log(1 - exp(-x e^b)), b the group's effect; score and information follow by differentiating in
 * b and in the hazards, and the hazards are projected out: V = I_bb - I_bh I_hh^-1 I_hb. Sources: Finkelstein (1986),
 * Biometrics 42:845-854 (without entry); Cox and Hinkley (1974), Theoretical Statistics, 9.3. The theory holds where
 * ages fall on a grid that stays fixed while lives are added; with nearly as many mass points as failures the test is a
 * guide. Where the pooled estimate is not unique the hazards outlived, and with them the scores, are open: the result says
 * NOT_DETERMINED.
 */
public final class HazardScoreTest {
    private final TrendScores trendScores;

    private HazardScoreTest(TrendScores trendScores) {
        this.trendScores = trendScores;
    }

    /** Groups in the order given score 1, 2, 3 ... for the trend. */
    public static HazardScoreTest withDefaults() {
        return new HazardScoreTest(TrendScores.inOrder());
    }

    /** One number per group, in their order. */
    public HazardScoreTest withTrendScores(double... scores) {
        return new HazardScoreTest(new TrendScores(scores));
    }

    /**
     * The test. In its rows, observed counts failures, and expected is observed less score.
     *
     * @throws IllegalArgumentException if there are fewer than two groups or their strata differ in number
     */
    public ComparisonResult test(List<Group> groups) {
        return IntervalComparison.of(
                groups, trendScores, IntervalComparison.Needs.UNIQUE_MAXIMUM, HazardScoreTest::addStratum);
    }

    private static void addStratum(
            List<LifetimeSample> samples, TurnbullFit fit, double[] scores, double[][] variance) {
        int k = samples.size();
        Cumulated cumulated = new Cumulated(fit.intervals());
        double[][] cross = new double[k][];
        for (int j = 0; j < k; j++) {
            Derivatives derivatives = new Derivatives(fit, cumulated, samples.get(j));
            scores[j] += derivatives.score;
            variance[j][j] += derivatives.information;
            cross[j] = derivatives.cross;
        }
        for (int j = 0; j < k; j++) {
            double[] solved = fit.solveInformation(cross[j]);
            for (int l = 0; l < k; l++) {
                for (int h = 0; h < solved.length; h++) {
                    variance[j][l] -= cross[l][h] * solved[h];
                }
            }
        }
    }

    /** Prefix sums of the finite hazards, and of the number of infinite ones. */
    private static final class Cumulated {
        private final double[] hazard;
        private final int[] infinite;

        Cumulated(List<InnermostInterval> intervals) {
            hazard = new double[intervals.size() + 1];
            infinite = new int[intervals.size() + 1];
            for (int h = 0; h < intervals.size(); h++) {
                boolean finite = intervals.get(h).hazard() < Double.POSITIVE_INFINITY;
                hazard[h + 1] = hazard[h] + (finite ? intervals.get(h).hazard() : 0);
                infinite[h + 1] = infinite[h] + (finite ? 0 : 1);
            }
        }

        double over(IntervalRange range) {
            return hazard[range.end()] - hazard[range.from()];
        }

        boolean finiteOver(IntervalRange range) {
            return infinite[range.end()] == infinite[range.from()];
        }
    }

    /** One group's derivatives in its effect, and in its effect and each hazard. */
    private static final class Derivatives {
        private double score;
        private double information;
        private final double[] cross;

        Derivatives(TurnbullFit fit, Cumulated cumulated, LifetimeSample sample) {
            int m = fit.intervals().size();
            double[] steps = new double[m + 1];
            for (int i = 0; i < sample.size(); i++) {
                double w = sample.weight(i);
                IntervalRange outlived = fit.outlived(sample.entry(i), sample.lower(i), sample.upper(i));
                double a = cumulated.over(outlived);
                score -= w * a;
                information += w * a;
                steps[outlived.from()] += w;
                steps[outlived.end()] -= w;
                IntervalRange within = fit.within(sample.lower(i), sample.upper(i));
                // A failure within an infinite hazard is certain whatever the effect.
                if (sample.failed(i) && cumulated.finiteOver(within)) {
                    double x = cumulated.over(within);
                    double y = 1 / Math.expm1(x);
                    double slope = y * (1 - (1 + y) * x);
                    score += w * y * x;
                    information -= w * x * slope;
                    steps[within.from()] -= w * slope;
                    steps[within.end()] += w * slope;
                }
            }
            cross = new double[m];
            double sum = 0;
            for (int h = 0; h < m; h++) {
                sum += steps[h];
                cross[h] = sum;
            }
        }
    }
}
