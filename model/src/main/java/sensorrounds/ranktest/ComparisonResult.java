package sensorrounds.ranktest;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import sensorrounds.numeric.GammaFunction;
import sensorrounds.numeric.PositiveDefinite;

/**
 * What came of comparing groups: scores with their covariance, the chi-square test of any difference and the test for
 * trend, or the reason why there is none. Asking a result without a test for its figures throws.
 */
public final class ComparisonResult {
    private final Status status;
    private final String cause;
    private final List<Row> rows;
    private final double[][] variance;
    private final double chiSquare;
    private final int degreesOfFreedom;
    private final double trendZ;

    /** What came of a comparison. */
    public enum Status {
        TESTED,
        /** Nobody failed. */
        NO_FAILURES,
        /** At no age with failures were two groups under observation: there is nothing to compare. */
        NOT_COMPARABLE,
        /** The estimate of the pooled lives that the scores need has failed. */
        NO_POOLED_ESTIMATE,
        /** The data leave the scores or their covariance open. */
        NOT_DETERMINED
    }

    /**
     * A group's share in the comparison.
     *
     * @param lives sum of weights
     * @param observed failures, each counted by its weight in the test
     * @param expected the same if the groups did not differ; observed less expected is the score
     */
    public record Row(String name, double lives, double observed, double expected) {
        public double score() {
            return observed - expected;
        }
    }

    private ComparisonResult(Status status, String cause, List<Row> rows) {
        this.status = status;
        this.cause = cause;
        this.rows = List.copyOf(rows);
        variance = new double[0][];
        chiSquare = Double.NaN;
        degreesOfFreedom = 0;
        trendZ = Double.NaN;
    }

    private ComparisonResult(List<Row> rows, double[][] variance, double chiSquare, int freedom, double trendZ) {
        status = Status.TESTED;
        cause = "";
        this.rows = List.copyOf(rows);
        this.variance = variance;
        this.chiSquare = chiSquare;
        degreesOfFreedom = freedom;
        this.trendZ = trendZ;
    }

    static ComparisonResult without(Status status, String cause, List<Row> rows) {
        return new ComparisonResult(status, cause, rows);
    }

    /**
     * The tests from scores with covariance V. Rows of V add to 0, so V has the rank of its groups less one for every
     * set of groups that share risk sets: one group of each such set is left out.
     */
    static ComparisonResult of(List<Row> rows, double[][] variance, double[] trendScores) {
        List<Integer> kept = comparable(variance);
        double[][] inner = new double[kept.size()][kept.size()];
        double[] scores = new double[kept.size()];
        for (int i = 0; i < scores.length; i++) {
            scores[i] = rows.get(kept.get(i)).score();
            for (int j = 0; j < scores.length; j++) {
                inner[i][j] = variance[kept.get(i)][kept.get(j)];
            }
        }
        if (kept.isEmpty() || nothingButRounding(rows, variance)) {
            return without(
                    Status.NOT_COMPARABLE, "at no age with failures were two groups under observation together", rows);
        }
        Optional<PositiveDefinite> factored = PositiveDefinite.of(inner);
        if (factored.isEmpty()) {
            return without(Status.NOT_DETERMINED, "the scores have no covariance that can be inverted", rows);
        }
        double[] solved = factored.get().solve(scores);
        double chiSquare = 0;
        for (int i = 0; i < scores.length; i++) {
            chiSquare += scores[i] * solved[i];
        }
        return new ComparisonResult(rows, variance, chiSquare, kept.size(), trend(rows, variance, trendScores));
    }

    /** Groups never at risk together have variances of nought, and what differences of sums leave of it. */
    private static boolean nothingButRounding(List<Row> rows, double[][] variance) {
        boolean rounding = true;
        for (int j = 0; j < variance.length; j++) {
            rounding &= Math.abs(variance[j][j]) <= 1e-9 * rows.get(j).observed();
        }
        return rounding;
    }

    private static double trend(List<Row> rows, double[][] variance, double[] trendScores) {
        double score = 0;
        double spread = 0;
        for (int i = 0; i < variance.length; i++) {
            score += trendScores[i] * rows.get(i).score();
            for (int j = 0; j < variance.length; j++) {
                spread += trendScores[i] * variance[i][j] * trendScores[j];
            }
        }
        return spread > 0 ? score / Math.sqrt(spread) : Double.NaN;
    }

    /** Groups that share risk sets, directly or through others, less the first of each such set. */
    private static List<Integer> comparable(double[][] variance) {
        List<Integer> kept = new ArrayList<>();
        boolean[] seen = new boolean[variance.length];
        for (int first = 0; first < seen.length; first++) {
            if (!seen[first]) {
                seen[first] = true;
                collect(variance, first, seen, kept);
            }
        }
        kept.sort(null);
        return kept;
    }

    private static void collect(double[][] variance, int from, boolean[] seen, List<Integer> kept) {
        for (int to = 0; to < seen.length; to++) {
            double scale = Math.sqrt(variance[from][from] * variance[to][to]);
            if (!seen[to] && Math.abs(variance[from][to]) > 1e-12 * scale) {
                seen[to] = true;
                kept.add(to);
                collect(variance, to, seen, kept);
            }
        }
    }

    public Status status() {
        return status;
    }

    public boolean tested() {
        return status == Status.TESTED;
    }

    /** Why there is no test, in words; empty when there is one. */
    public String cause() {
        return cause;
    }

    /** The groups in the order given, also where there is no test. */
    public List<Row> rows() {
        return rows;
    }

    /** Covariance of the scores, row by row. */
    public double[][] variance() {
        requireTested();
        return Arrays.stream(variance).map(double[]::clone).toArray(double[][]::new);
    }

    /** Test of any difference; under none it follows a chi-square law with {@link #degreesOfFreedom}. */
    public double chiSquare() {
        requireTested();
        return chiSquare;
    }

    public int degreesOfFreedom() {
        requireTested();
        return degreesOfFreedom;
    }

    /** Chance of a chi-square as large if the groups do not differ. */
    public double pValue() {
        requireTested();
        return upperTail(degreesOfFreedom, chiSquare);
    }

    /** Standard normal under no trend; positive when failures come earlier the higher a group's trend score. NaN if the trend scores are equal where groups can be compared. */
    public double trendZ() {
        requireTested();
        return trendZ;
    }

    /** Two-sided. */
    public double trendPValue() {
        requireTested();
        return upperTail(1, trendZ * trendZ);
    }

    /** Of the chi-square law: Q(df / 2, x / 2), Abramowitz and Stegun (1964), 26.4.19. */
    private static double upperTail(int freedom, double chiSquare) {
        return Double.isNaN(chiSquare)
                ? Double.NaN
                : Math.exp(GammaFunction.logRegularizedUpper(freedom / 2.0, Math.max(0, chiSquare) / 2));
    }

    private void requireTested() {
        if (!tested()) {
            throw new IllegalStateException("no test: " + status + ", " + cause + "; ask tested() first");
        }
    }
}
