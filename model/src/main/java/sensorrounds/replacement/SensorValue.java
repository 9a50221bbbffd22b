package sensorrounds.replacement;

import sensorrounds.outlook.SurvivalAhead;

/**
 * What replacing one sensor at a stop is worth, against leaving it until a later one:
 *
 * <pre>gain = B C - g L</pre>
 *
 * C is the chance that it fails in between and is called out for before the later stop, B the cost of a breakdown, L the
 * days until its place gets a new sensor, at the later stop or by that call-out, and g what one of them is worth: the least
 * long-run cost per day of an ordinary sensor of the cohort that is replaced at the vehicle's stops or after its failure,
 * {@link OpportunityReplacement}. So a stop taken now is credited with the whole renewal it starts, and charged with the
 * life it gives up. For an ordinary sensor, from one stop to the next, the gain turns at the optimal age. Source: Dekker and
 * Dijkstra (1992), Opportunity-based age replacement, Naval Research Logistics 39; Berg (1980), A marginal cost analysis for
 * preventive replacement policies, EJOR 4 (both from memory).
 *
 * @param piece cost of the piece with its work
 * @param breakdown B
 * @param rate g, per day
 * @param noticeDays mean days from a failure to its call-out
 */
record SensorValue(SurvivalAhead ahead, double piece, double breakdown, double rate, double noticeDays) {
    /** Cumulative hazards to the horizon between which the break-even is sought: P from 1e-13 to 1 - 4e-18. */
    private static final double LEAST_HAZARD = 1e-13;

    private static final double MOST_HAZARD = 40;

    /** Break-evens are right to this share of themselves. */
    private static final double SETTLED = 1e-12;

    /** Days to a call-out that comes at once. */
    private static final double AT_ONCE = 1e-6;

    /**
     * Both sides of the comparison, as expected today: a sensor that does not work at the first stop counts for nothing, as
     * a stop reads its sensors, and finds the dead.
     *
     * @param saved B C
     * @param givenUp g L
     */
    record Worth(double saved, double givenUp) {
        double gain() {
            return saved - givenUp;
        }

        /** Gain over what is asked for on top of what is given up. */
        double over(double hurdle) {
            return saved - (1 + hurdle) * givenUp;
        }
    }

    /**
     * @param gapDays days from one stop to the next: a failure on any of them alike is called out for before the next one with
     *     chance 1 - D/gap (1 - exp(-gap/D)), D the mean days to a call-out
     * @param stop its share of what a stop or a reading for its sake costs
     */
    Stakes stakes(int gapDays, double stop) {
        double calledOut = 1 + noticeDays / gapDays * Math.expm1(-gapDays / noticeDays);
        return new Stakes(breakdown * calledOut, rate, stop);
    }

    double failedAlready() {
        return ahead.failureBy(0);
    }

    /** Replaced on one day ahead rather than on a later one. */
    Worth worth(double from, double to) {
        Worth working = ifWorking(ahead, from, to);
        double chance = 1 - ahead.failureBy(from);
        return new Worth(chance * working.saved, chance * working.givenUp);
    }

    /** Replaced today rather than some days on, if no stop is near: every failure in between is called out for. */
    Worth worthAtOnce(int days) {
        SurvivalAhead.Stretch left = ahead.between(0, days, AT_ONCE);
        double chance = 1 - failedAlready();
        return new Worth(chance * breakdown * left.calledOut(), chance * rate * left.working());
    }

    private Worth ifWorking(SurvivalAhead sensor, double from, double to) {
        SurvivalAhead.Stretch left = sensor.between(from, to, noticeDays);
        return new Worth(breakdown * left.calledOut(), rate * (left.working() + noticeDays * left.calledOut()));
    }

    /**
     * The P to the horizon from which replacing at the first stop pays, if this sensor's hazard from today on is multiplied
     * by whatever it takes; what it may have died of before is in P as it is. As what is saved rises with that factor
     * against what is given up, gain over hurdle and P over break-even are the same thing. NaN when no P suffices.
     */
    double breakEven(double from, double to, double hurdle, int horizonDays) {
        double low = Math.log(LEAST_HAZARD);
        double high = Math.log(MOST_HAZARD);
        if (!(balance(high, from, to, hurdle, horizonDays) > 0)) {
            return Double.NaN;
        }
        double x = Math.log(Math.min(1, Math.max(1e-6, ahead.hazardBy(horizonDays) - ahead.hazardBy(0))));
        // What is saved is nearly in proportion to a small hazard, what is given up nearly level: a slope of about 1.
        double slope = 1;
        double f = balance(x, from, to, hurdle, horizonDays);
        for (int i = 0; i < 60 && Math.abs(f) > SETTLED && high - low > SETTLED; i++) {
            if (f > 0) {
                high = x;
            } else {
                low = x;
            }
            double next = x - f / slope;
            next = next > low && next < high ? next : (low + high) / 2;
            double there = balance(next, from, to, hurdle, horizonDays);
            double secant = (there - f) / (next - x);
            slope = secant > 0.1 && secant < 10 ? secant : 1;
            x = next;
            f = there;
        }
        return -Math.expm1(-ahead.hazardBy(0) - Math.exp(x));
    }

    /** Log of what is saved over what it must exceed, for a hazard to the horizon of exp(logHazard). */
    private double balance(double logHazard, double from, double to, double hurdle, int horizonDays) {
        Worth worth = ifWorking(ahead.withHazardAhead(Math.exp(logHazard), horizonDays), from, to);
        return worth.saved > 0 ? Math.log(worth.saved / ((1 + hurdle) * worth.givenUp)) : Double.NEGATIVE_INFINITY;
    }
}
