package sensorrounds.ranktest;

import java.util.List;
import sensorrounds.turnbull.InnermostInterval;
import sensorrounds.turnbull.IntervalRange;

/**
 * The score of a life known to an interval under the pooled estimate: (g(S(L)) - g(S(R))) / (S(L) - S(R)). High scores
 * are early failures. Source: Fay and Shaw (2010), J. Stat. Software 36(2), section 3, after Fay (1996), Biometrics
 * 52:811.
 */
public enum IntervalScores {
    /** g = S log S~, with log S~ the sum of -p / S(before): Sun (1996), Stat. Med. 15:1387; a log-rank score. */
    SUN,
    /** g = S log S: proportional hazards, Finkelstein (1986), Biometrics 42:845; a log-rank score. */
    FINKELSTEIN,
    /** S(L) + S(R) - 1: Wilcoxon-Mann-Whitney, proportional odds; early differences count more. */
    WILCOXON;

    /** Scores from the intervals of a pooled estimate; one instance serves many lives. */
    final class Table {
        private final double[] survival;
        private final double[] sumHazard;

        private Table(List<InnermostInterval> intervals) {
            survival = new double[intervals.size() + 1];
            sumHazard = new double[intervals.size() + 1];
            survival[0] = 1;
            for (int k = 0; k < intervals.size(); k++) {
                InnermostInterval interval = intervals.get(k);
                survival[k + 1] = interval.survivalAfter();
                sumHazard[k + 1] = sumHazard[k] + (interval.mass() > 0 ? interval.mass() / survival[k] : 0);
            }
        }

        double score(IntervalRange range) {
            double left = survival[range.from()];
            double right = survival[range.end()];
            return switch (IntervalScores.this) {
                case WILCOXON -> left + right - 1;
                case FINKELSTEIN -> (sLogS(left) - sLogS(right)) / (left - right);
                case SUN -> (right * sumHazard[range.end()] - left * sumHazard[range.from()]) / (left - right);
            };
        }

        private static double sLogS(double s) {
            return s > 0 ? s * Math.log(s) : 0;
        }
    }

    Table over(List<InnermostInterval> intervals) {
        return new Table(intervals);
    }
}
