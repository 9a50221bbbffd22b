package sensorrounds.condition;

import java.io.Serializable;
import java.util.List;

/**
 * One odds ratio over many strata, each a two-by-two table: Mantel and Haenszel (1959), J. Natl Cancer Inst. 22:719,
 * with the variance of its logarithm by Robins, Breslow and Greenland (1986), Biometrics 42:311. It holds up where
 * single strata are sparse, which maximum likelihood with one parameter per stratum does not.
 *
 * @param logRatio logarithm of the ratio; NaN when the strata say nothing
 * @param variance its variance; infinite when the strata say nothing
 */
public record PooledOdds(double logRatio, double variance) implements Serializable {
    /** Successes and failures with and without the condition. */
    public record Stratum(long withSuccess, long withFailure, long withoutSuccess, long withoutFailure) {}

    /** Whether the strata say anything. */
    public boolean known() {
        return !Double.isNaN(logRatio);
    }

    /** The ratio over these strata, in any order. */
    public static PooledOdds of(List<Stratum> strata) {
        double sumR = 0;
        double sumS = 0;
        double sumPr = 0;
        double sumMixed = 0;
        double sumQs = 0;
        for (Stratum t : strata) {
            double n = (double) t.withSuccess() + t.withFailure() + t.withoutSuccess() + t.withoutFailure();
            if (n == 0) {
                continue;
            }
            double p = (t.withSuccess() + t.withoutFailure()) / n;
            double q = (t.withFailure() + t.withoutSuccess()) / n;
            double r = (double) t.withSuccess() * t.withoutFailure() / n;
            double s = (double) t.withFailure() * t.withoutSuccess() / n;
            sumR += r;
            sumS += s;
            sumPr += p * r;
            sumMixed += p * s + q * r;
            sumQs += q * s;
        }
        if (!(sumR > 0 && sumS > 0)) {
            return new PooledOdds(Double.NaN, Double.POSITIVE_INFINITY);
        }
        double variance = sumPr / (2 * sumR * sumR) + sumMixed / (2 * sumR * sumS) + sumQs / (2 * sumS * sumS);
        return new PooledOdds(Math.log(sumR / sumS), variance);
    }

    /**
     * The log ratio shrunk to "no effect": posterior mean under a normal prior around 0, so that a handful of reads
     * moves it little and no reads at all leave it at 0.
     */
    public double shrunk(double priorDeviation) {
        if (Double.isNaN(logRatio)) {
            return 0;
        }
        double prior = priorDeviation * priorDeviation;
        return logRatio * prior / (prior + variance);
    }
}
