package sensorrounds.outlook;

import java.util.Map;
import java.util.TreeMap;
import sensorrounds.survival.WeibullLife;

/**
 * The chance of failure by any day ahead, from a stored outlook and the law it stands on.
 *
 * <p>With a known age the cumulative hazard since the last answer, c(s) = r (H(age + s) - H(age at last answer)), follows
 * exactly from the outlook's figure at the horizon h: c(s) = c(h) - r (H(age + h) - H(age + s)), c(h) = -ln(1 - p(h)).
 * With an unknown age c is interpolated linearly between the days the outlook reports, which makes the hazard constant
 * between them, and carried on beyond them.
 */
public final class SurvivalAhead {
    private static final double Z95 = 1.959963984540054;

    private final SensorOutlook outlook;
    private final WeibullLife law;
    private final int horizonDays;
    private final TreeMap<Integer, Double> reported = new TreeMap<>();

    /**
     * @param law law of the outlook's cohort
     * @param horizonDays horizon the outlook was made for
     * @throws IllegalArgumentException when the outlook has no probabilities
     */
    public SurvivalAhead(SensorOutlook outlook, WeibullLife law, int horizonDays) {
        if (!(outlook.pHorizon() >= 0 && outlook.pHorizon() <= 1)) {
            throw new IllegalArgumentException("outlook of " + outlook.lifeId() + " has no probability ("
                    + outlook.pHorizon() + "): no law of life was fitted for it, leave it out here");
        }
        this.outlook = outlook;
        this.law = law;
        this.horizonDays = horizonDays;
        reported.put(30, hazard(outlook.p30()));
        reported.put(90, hazard(outlook.p90()));
        reported.put(180, hazard(outlook.p180()));
        reported.put(365, hazard(outlook.p365()));
        reported.put(horizonDays, hazard(outlook.pHorizon()));
    }

    /** Cumulative hazard from the last answer to {@code days} after the as-of day. */
    public double hazardBy(double days) {
        if (outlook.ageDays() == null) {
            return interpolated(days);
        }
        double age = outlook.ageDays();
        double rest = law.cumulativeHazard(age + horizonDays) - law.cumulativeHazard(age + days);
        return Math.max(0, reported.get(horizonDays) - outlook.failureRatio() * rest);
    }

    /** P(not working by {@code days} after the as-of day | worked at the last answer). */
    public double failureBy(double days) {
        return -Math.expm1(-hazardBy(days));
    }

    /**
     * Standard deviation of the log of the cumulative hazard to the horizon, from the uncertainty that sensors share:
     * the law and the ratio, back from the outlook's limits. An unknown age is each sensor's own uncertainty and evens
     * out over many, so there it is the law's at half its median life.
     */
    public double sdLogHazard() {
        if (outlook.ageDays() == null) {
            double[] limits = law.failureWithinLimits(law.quantile(0.5) / 2, horizonDays, 1, 0);
            return sd(hazard(limits[0]), hazard(limits[1]));
        }
        return sd(hazard(outlook.pHorizonLower()), hazard(outlook.pHorizonUpper()));
    }

    private double sd(double lower, double upper) {
        if (!(lower > 0)) {
            return 0;
        }
        double middle = reported.get(horizonDays);
        // An upper limit that rounds to 1 says nothing: the lower one mirrors it on the log scale.
        double span = upper < Double.POSITIVE_INFINITY
                ? Math.log(upper / lower) / 2
                : middle < Double.POSITIVE_INFINITY ? Math.log(middle / lower) : 0;
        return span / Z95;
    }

    private double interpolated(double days) {
        Map.Entry<Integer, Double> left = reported.floorEntry((int) Math.floor(days));
        if (left == null) {
            left = reported.firstEntry();
        }
        Map.Entry<Integer, Double> right = reported.higherEntry(left.getKey());
        if (right == null) {
            right = left;
            left = reported.lowerEntry(right.getKey());
        }
        if (right.getValue().isInfinite()) {
            return days < right.getKey() ? left.getValue() : Double.POSITIVE_INFINITY;
        }
        double slope = (right.getValue() - left.getValue()) / (right.getKey() - left.getKey());
        return Math.max(0, left.getValue() + slope * (days - left.getKey()));
    }

    private static double hazard(double p) {
        return -Math.log1p(-p);
    }
}
