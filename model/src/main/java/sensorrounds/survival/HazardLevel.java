package sensorrounds.survival;

import java.util.Arrays;

/**
 * How many times as fast as a given law a sample fails, with a gamma prior: it maximises the likelihood given alive at entry
 * times level^n exp(-n level), n the prior's weight in failures. With exact ages that is (n + d) / (n + E), d failures where the
 * law expects E. Failures known to intervals: EM, the expectation being the hazard spent within the interval before the
 * failure; Dempster, Laird and Rubin (1977), J. Royal Statistical Society B 39:1.
 */
final class HazardLevel {
    private static final int MOST_STEPS = 1000;
    private static final double SETTLED = 1e-12;

    private final double failures;
    /** Hazard surely spent: up to the last good day, of exact failures up to the failure. */
    private final double spent;
    /** Hazard within each failure interval, with the lives that have it. */
    private final double[] within;

    private final double[] weight;

    HazardLevel(LifetimeSample sample, LifeLaw law) {
        double sum = 0;
        double[] intervals = new double[sample.size()];
        double[] lives = new double[sample.size()];
        int n = 0;
        for (int i = 0; i < sample.size(); i++) {
            double lower = law.cumulativeHazard(sample.lower(i));
            sum += sample.weight(i) * (lower - law.cumulativeHazard(sample.entry(i)));
            if (sample.failed(i) && !sample.exact(i)) {
                intervals[n] = law.cumulativeHazard(sample.upper(i)) - lower;
                lives[n++] = sample.weight(i);
            }
        }
        spent = sum;
        failures = sample.failures();
        within = Arrays.copyOf(intervals, n);
        weight = Arrays.copyOf(lives, n);
    }

    /** The level; 0 without failures and prior, NaN where nothing was watched either. */
    double estimate(double priorFailures) {
        double level = 1;
        for (int step = 0; step < MOST_STEPS; step++) {
            double next = (priorFailures + failures) / (priorFailures + expected(level));
            if (!(Math.abs(next - level) > SETTLED * level)) {
                return next;
            }
            level = next;
        }
        return level;
    }

    /** Failures that the law expects over the time watched, where failures lie as this level makes them. */
    double expected(double level) {
        double sum = spent;
        for (int i = 0; i < within.length; i++) {
            double d = level * within[i];
            // Mean of an exponential cut off at d, over the level; d/2 for short intervals.
            double before = d < 1e-4 ? d / 2 : 1 - d / Math.expm1(d);
            sum += weight[i] * (level > 0 ? before / level : within[i] / 2);
        }
        return sum;
    }

    /** Failures expected such that failures / expected is the sample's own level. */
    double expected() {
        return failures > 0 ? expected(estimate(0)) : spent;
    }
}
