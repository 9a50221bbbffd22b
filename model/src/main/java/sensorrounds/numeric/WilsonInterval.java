package sensorrounds.numeric;

import java.io.Serializable;

/**
 * A share with its score limits, which stay in [0, 1] and hold for small numbers and for none or all: Wilson (1927), JASA
 * 22:209; Newcombe (1998), Stat. Med. 17:857, method 3.
 *
 * @param share NaN of no trials, with limits 0 and 1
 */
public record WilsonInterval(double share, double lower, double upper) implements Serializable {
    /**
     * @param successes 0 to {@code trials}
     * @param trials from 0 up; need not be whole, e.g. the effective number behind an estimate
     * @param level coverage, in (0, 1)
     */
    public static WilsonInterval of(double successes, double trials, double level) {
        if (!(successes >= 0 && successes <= trials && trials < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "a share needs 0 <= successes <= trials, not " + successes + " of " + trials);
        }
        if (!(level > 0 && level < 1)) {
            throw new IllegalArgumentException("coverage of limits must lie between 0 and 1, not " + level);
        }
        if (trials == 0) {
            return new WilsonInterval(Double.NaN, 0, 1);
        }
        double z = StandardNormal.quantile((1 + level) / 2);
        double share = successes / trials;
        double middle = share + z * z / (2 * trials);
        double half = z * Math.sqrt(share * (1 - share) / trials + z * z / (4 * trials * trials));
        double divisor = 1 + z * z / trials;
        // At none and at all the limit is 0 and 1 but for rounding.
        double lower = successes == 0 ? 0 : Math.max(0, (middle - half) / divisor);
        double upper = successes == trials ? 1 : Math.min(1, (middle + half) / divisor);
        return new WilsonInterval(share, lower, upper);
    }
}
