package sensorrounds.ranktest;

/** What a test for trend takes the groups to be, as numbers: 1, 2, 3 ... in the order given, or the caller's. */
final class TrendScores {
    private final double[] given;

    TrendScores(double... given) {
        this.given = given.clone();
    }

    static TrendScores inOrder() {
        return new TrendScores();
    }

    double[] forGroups(int groups) {
        if (given.length == 0) {
            double[] scores = new double[groups];
            for (int i = 0; i < groups; i++) {
                scores[i] = i + 1;
            }
            return scores;
        }
        if (given.length != groups) {
            throw new IllegalArgumentException(
                    "a trend needs one score per group: " + given.length + " scores for " + groups + " groups");
        }
        return given;
    }
}
