package sensorrounds.recurrent;

/**
 * The reverse arrangement test of one unit: over all pairs of times between events, how often the later is the longer. Many
 * such pairs mean that events come less often. It assumes nothing about the law of the times but that they are not tied.
 * Sources: Kendall (1938), Biometrika 30:81; NIST/SEMATECH e-Handbook, 8.2.3.4.
 *
 * @param reversals pairs of which the later is the longer
 * @param most number of pairs
 * @param pIncreasing exact chance, all orders being alike, of as few reversals or fewer: events come more often
 * @param pDecreasing exact chance of as many or more
 */
public record ReverseArrangements(int reversals, int most, double pIncreasing, double pDecreasing) {
    /** Beyond this the exact chances cost more than they tell: they are normal by then. */
    private static final int LONGEST = 400;

    /**
     * @throws IllegalArgumentException when the unit was not watched from 0 on without a gap, or had more than 400 events
     */
    public static ReverseArrangements of(EventHistory unit) {
        double[] between = TrendTests.between(TrendTests.fromZero(unit, "the reverse arrangement test"));
        int n = between.length;
        if (n > LONGEST) {
            throw new IllegalArgumentException("the reverse arrangement test is worked out for at most " + LONGEST
                    + " events, not " + n + "; with so many Lewis and Robinson's test serves");
        }
        int reversals = 0;
        for (int i = 0; i < n; i++) {
            for (int j = i + 1; j < n; j++) {
                reversals += between[j] > between[i] ? 1 : 0;
            }
        }
        double[] chance = chances(n);
        double few = 0;
        double many = 0;
        for (int r = 0; r < chance.length; r++) {
            few += r <= reversals ? chance[r] : 0;
            many += r >= reversals ? chance[r] : 0;
        }
        return new ReverseArrangements(reversals, n * (n - 1) / 2, Math.min(1, few), Math.min(1, many));
    }

    /** Chance of each number of reversals: an i-th time falls behind 0 to i - 1 of those before it, each as likely. */
    private static double[] chances(int n) {
        double[] chance = {1};
        for (int i = 2; i <= n; i++) {
            double[] next = new double[chance.length + i - 1];
            for (int r = 0; r < chance.length; r++) {
                for (int k = 0; k < i; k++) {
                    next[r + k] += chance[r] / i;
                }
            }
            chance = next;
        }
        return chance;
    }
}
