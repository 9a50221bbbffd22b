package sensorrounds.outlook;

import java.util.SortedMap;
import java.util.TreeMap;
import sensorrounds.survival.LifeLaw;

/**
 * The chance of failure by any day ahead, from a stored outlook and the law it stands on.
 *
 * <p>The cumulative hazard since the last answer, -ln(1 - p), is interpolated linearly between the days the outlook reports,
 * which makes the hazard constant between them. Beyond the last it goes on as the law of the cohort does, at the level that
 * the outlook has reached by then; without an age, as it was.
 */
public final class SurvivalAhead {
    private static final double Z95 = 1.959963984540054;

    /** A cumulative hazard at which failure is certain to double precision. */
    private static final double CERTAIN = 40;

    /** Days on which the hazard is taken up again past those of the outlook; constant between them as well. */
    private static final int[] LATER = {547, 730, 1095, 1461};

    private final SensorOutlook outlook;
    private final LifeLaw law;
    private final int horizonDays;
    /** Days of the outlook and past them, rising, and the cumulative hazard up to each. */
    private final int[] days;

    private final double[] hazards;

    /**
     * What comes of leaving a sensor alone for a stretch of days, given that it works when the stretch begins.
     *
     * @param calledOut chance that it fails and is called out for before the stretch ends
     * @param working expected days that it works
     */
    public record Stretch(double calledOut, double working) {}

    /**
     * @param law law of the outlook's cohort
     * @param horizonDays horizon the outlook was made for
     * @throws IllegalArgumentException when the outlook has no probabilities
     */
    public SurvivalAhead(SensorOutlook outlook, LifeLaw law, int horizonDays) {
        if (!(outlook.chances().pHorizon() >= 0 && outlook.chances().pHorizon() <= 1)) {
            throw new IllegalArgumentException("outlook of " + outlook.sensor().lifeId() + " has no probability ("
                    + outlook.chances().pHorizon() + "): no law of life was fitted for it, leave it out here");
        }
        this.outlook = outlook;
        this.law = law;
        this.horizonDays = horizonDays;
        SortedMap<Integer, Double> reported = new TreeMap<>();
        reported.put(0, hazard(outlook.chances().pNow()));
        reported.put(30, hazard(outlook.chances().p30()));
        reported.put(90, hazard(outlook.chances().p90()));
        reported.put(180, hazard(outlook.chances().p180()));
        reported.put(365, hazard(outlook.chances().p365()));
        reported.put(horizonDays, hazard(outlook.chances().pHorizon()));
        int last = reported.lastKey();
        if (outlook.sensor().ageDays() != null && last == 365) {
            carryOn(reported, law, outlook.sensor().ageDays());
        }
        days = reported.keySet().stream().mapToInt(i -> i).toArray();
        hazards = reported.values().stream().mapToDouble(h -> h).toArray();
    }

    /** Past the last day reported the hazard goes on as the law's does from there. */
    private static void carryOn(SortedMap<Integer, Double> reported, LifeLaw law, int age) {
        double base = law.cumulativeHazard(age + 365.0);
        double own = reported.get(365) - reported.get(180);
        double scale = own / (base - law.cumulativeHazard(age + 180.0));
        if (scale > 0 && scale < Double.POSITIVE_INFINITY) {
            for (int day : LATER) {
                reported.put(day, reported.get(365) + scale * (law.cumulativeHazard(age + (double) day) - base));
            }
        }
    }

    private SurvivalAhead(SensorOutlook outlook, LifeLaw law, int horizonDays, int[] days, double[] hazards) {
        this.outlook = outlook;
        this.law = law;
        this.horizonDays = horizonDays;
        this.days = days;
        this.hazards = hazards;
    }

    /** Cumulative hazard from the last answer to {@code day} days after the as-of day. */
    public double hazardBy(double day) {
        int left = piece(day);
        return Math.max(0, hazards[left] + slope(left) * (day - days[left]));
    }

    /** Piece of constant hazard that holds the day; the last one is carried on. */
    private int piece(double day) {
        int left = 0;
        while (left < days.length - 2 && days[left + 1] <= day) {
            left++;
        }
        return left;
    }

    private double slope(int left) {
        return (hazards[left + 1] - hazards[left]) / (days[left + 1] - days[left]);
    }

    /**
     * The stretch between two days ahead, in closed form piece by piece. A call-out follows a failure after an exponential
     * time, so one that comes x days before the end of the stretch is called out for with chance 1 - exp(-x/noticeDays);
     * the others are found then.
     *
     * @param noticeDays mean days from a failure to its call-out, over 0
     */
    public Stretch between(double from, double to, double noticeDays) {
        double called = 0;
        double working = 0;
        double alive = 1;
        double at = from;
        for (int left = piece(from); at < to; left++) {
            double end = left >= days.length - 2 ? to : Math.min(to, days[left + 1]);
            double length = end - at;
            double rate = Math.max(0, slope(left));
            double failing = -alive * Math.expm1(-rate * length);
            called += failing - rate * alive * foundAtTheEnd(rate, length, to - end, noticeDays);
            working += rate > 0 ? failing / rate : alive * length;
            alive -= failing;
            at = end;
        }
        return new Stretch(called, working);
    }

    /** Integral over the piece of exp(-rate v) exp(-(rest + length - v)/notice): failed, and not called out for. */
    private static double foundAtTheEnd(double rate, double length, double rest, double notice) {
        double excess = 1 / notice - rate;
        double atEnd = Math.exp(-rest / notice - rate * length);
        return Math.abs(excess * length) < 1e-8
                ? atEnd * length
                : (atEnd - Math.exp(-(rest + length) / notice)) / excess;
    }

    /**
     * The same sensor with its hazard from the as-of day on multiplied so that it adds up to {@code hazard} over the
     * first days; spread evenly when it had none.
     */
    public SurvivalAhead withHazardAhead(double hazard, int overDays) {
        double before = hazardBy(0);
        double whole = hazardBy(overDays) - before;
        double[] scaled = new double[hazards.length];
        for (int i = 0; i < scaled.length; i++) {
            double share = whole > 0 ? (hazards[i] - before) / whole : (double) days[i] / overDays;
            scaled[i] = before + hazard * share;
        }
        return new SurvivalAhead(outlook, law, horizonDays, days, scaled);
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
        if (outlook.sensor().ageDays() == null) {
            double[] limits = law.failureWithinLimits(law.quantile(0.5) / 2, horizonDays, 1, 0);
            return sd(hazard(limits[0]), hazard(limits[1]));
        }
        return sd(
                hazard(outlook.chances().pHorizonLower()),
                hazard(outlook.chances().pHorizonUpper()));
    }

    private double sd(double lower, double upper) {
        if (!(lower > 0)) {
            return 0;
        }
        double middle = hazard(outlook.chances().pHorizon());
        // An upper limit that rounds to 1 says nothing: the lower one mirrors it on the log scale.
        double span = upper < CERTAIN ? Math.log(upper / lower) / 2 : middle < CERTAIN ? Math.log(middle / lower) : 0;
        return span / Z95;
    }

    private static double hazard(double p) {
        return Math.min(CERTAIN, -Math.log1p(-p));
    }
}
