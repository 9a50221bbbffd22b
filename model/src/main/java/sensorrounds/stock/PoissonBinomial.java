package sensorrounds.stock;

/**
 * Number of failures among independent units with unequal probabilities: exact, by convolving one binomial for each group
 * of equal probabilities. Ends with less than 1e-18 of the probability are cut after each step, 2e-14 in all for
 * ten thousand groups. Source: Hong (2013), On computing the distribution function for the Poisson binomial distribution,
 * Computational Statistics and Data Analysis 59, 41-51 (direct convolution, which keeps the relative accuracy of tails
 * that Fourier methods lose).
 */
public final class PoissonBinomial {
    private static final double CUT = 1e-18;

    private PoissonBinomial() {}

    /**
     * @param probabilities one for each group, 0 to 1
     * @param counts units in each group, 0 or more
     */
    public static CountDistribution of(double[] probabilities, long[] counts) {
        CountDistribution sum = CountDistribution.ZERO;
        for (int g = 0; g < probabilities.length; g++) {
            double p = probabilities[g];
            if (!(p >= 0 && p <= 1 && counts[g] >= 0)) {
                throw new IllegalArgumentException("group " + g + " has probability " + p + " and " + counts[g]
                        + " units; a probability lies from 0 to 1 and a count is not negative");
            }
            if (p > 0 && counts[g] > 0) {
                sum = sum.plus(binomial(Math.toIntExact(counts[g]), p)).trimmed(CUT);
            }
        }
        return sum;
    }

    /** From the mode outwards by the ratio of neighbours, then scaled to 1: no factorials, no underflow in the middle. */
    static CountDistribution binomial(int n, double p) {
        if (p == 1) {
            return new CountDistribution(n, new double[] {1});
        }
        int mode = (int) Math.min(n, Math.floor((n + 1.0) * p));
        double odds = p / (1 - p);
        int low = mode;
        double total = 1;
        for (double term = 1; low > 0; low--) {
            term *= low / (odds * (n - low + 1.0));
            if (term < CUT * CUT) {
                break;
            }
            total += term;
        }
        int high = mode;
        for (double term = 1; high < n; high++) {
            term *= odds * (n - high) / (high + 1.0);
            if (term < CUT * CUT) {
                break;
            }
            total += term;
        }
        double[] pmf = new double[high - low + 1];
        pmf[mode - low] = 1 / total;
        for (int k = mode; k > low; k--) {
            pmf[k - 1 - low] = pmf[k - low] * (k / (odds * (n - k + 1.0)));
        }
        for (int k = mode; k < high; k++) {
            pmf[k + 1 - low] = pmf[k - low] * (odds * (n - k) / (k + 1.0));
        }
        return new CountDistribution(low, pmf);
    }
}
