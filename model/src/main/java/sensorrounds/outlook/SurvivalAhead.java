package sensorrounds.outlook;

import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import sensorrounds.survival.LifeLaw;

/**
 * The chance of failure by any day ahead, from a stored outlook and the law it stands on.
 *
 * <p>The cumulative hazard since the last answer, -ln(1 - p), is interpolated linearly between the days the outlook reports,
 * which makes the hazard constant between them, and carried on beyond them.
 */
public final class SurvivalAhead {
    private static final double Z95 = 1.959963984540054;

    /** A cumulative hazard at which failure is certain to double precision. */
    private static final double CERTAIN = 40;

    private final SensorOutlook outlook;
    private final LifeLaw law;
    private final int horizonDays;
    private final NavigableMap<Integer, Double> reported = new TreeMap<>();

    /**
     * @param law law of the outlook's cohort
     * @param horizonDays horizon the outlook was made for
     * @throws IllegalArgumentException when the outlook has no probabilities
     */
    public SurvivalAhead(SensorOutlook outlook, LifeLaw law, int horizonDays) {
        if (!(outlook.pHorizon() >= 0 && outlook.pHorizon() <= 1)) {
            throw new IllegalArgumentException("outlook of " + outlook.lifeId() + " has no probability ("
                    + outlook.pHorizon() + "): no law of life was fitted for it, leave it out here");
        }
        this.outlook = outlook;
        this.law = law;
        this.horizonDays = horizonDays;
        reported.put(0, hazard(outlook.pNow()));
        reported.put(30, hazard(outlook.p30()));
        reported.put(90, hazard(outlook.p90()));
        reported.put(180, hazard(outlook.p180()));
        reported.put(365, hazard(outlook.p365()));
        reported.put(horizonDays, hazard(outlook.pHorizon()));
    }

    /** Cumulative hazard from the last answer to {@code days} after the as-of day. */
    public double hazardBy(double days) {
        Map.Entry<Integer, Double> left = reported.floorEntry((int) Math.floor(days));
        if (left == null) {
            left = reported.firstEntry();
        }
        Map.Entry<Integer, Double> right = reported.higherEntry(left.getKey());
        if (right == null) {
            right = left;
            left = reported.lowerEntry(right.getKey());
        }
        double slope = (right.getValue() - left.getValue()) / (right.getKey() - left.getKey());
        return Math.max(0, left.getValue() + slope * (days - left.getKey()));
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
        double span = upper < CERTAIN ? Math.log(upper / lower) / 2 : middle < CERTAIN ? Math.log(middle / lower) : 0;
        return span / Z95;
    }

    private static double hazard(double p) {
        return Math.min(CERTAIN, -Math.log1p(-p));
    }
}
