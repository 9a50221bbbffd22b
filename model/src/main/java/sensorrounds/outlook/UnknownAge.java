package sensorrounds.outlook;

import sensorrounds.survival.WeibullLife;

/**
 * The age of a working sensor whose origin nobody wrote down, as a distribution: a sensor met at random in a fleet that
 * replaces what fails has age a with density proportional to S(a), here limited to the ages its own record allows.
 * Source: equilibrium renewal process, backward recurrence time, Cox (1962), Renewal Theory, ch. 5.
 */
final class UnknownAge {
    private static final int POINTS = 128;
    /** Survivors of one in a million beyond the least age are left out when nothing else bounds it. */
    private static final double LAST_HAZARD = Math.log(1e6);

    private final WeibullLife law;
    private final double[] ages = new double[POINTS];
    private final double[] weights = new double[POINTS];

    /**
     * @param leastDays age it has at least: it was seen working for so long
     * @param mostDays age it has at most; infinite when nothing bounds it
     */
    UnknownAge(WeibullLife law, double leastDays, double mostDays) {
        this.law = law;
        double last = law.scaleDays() * Math.pow(law.cumulativeHazard(leastDays) + LAST_HAZARD, 1 / law.shape());
        double end = Math.max(leastDays, Math.min(mostDays, last));
        double step = (end - leastDays) / POINTS;
        double total = 0;
        for (int i = 0; i < POINTS; i++) {
            ages[i] = leastDays + (i + 0.5) * step;
            // Relative to the least age, so that a very old sensor does not underflow.
            weights[i] = Math.exp(law.cumulativeHazard(leastDays) - law.cumulativeHazard(ages[i]));
            total += weights[i];
        }
        for (int i = 0; i < POINTS; i++) {
            weights[i] /= total;
        }
    }

    double failureWithin(double days, double ratio) {
        double p = 0;
        for (int i = 0; i < POINTS; i++) {
            p += weights[i] * law.failureWithin(ages[i], days, ratio);
        }
        return p;
    }

    /** Least lower and greatest upper 95 % limit over the middle 95 % of the ages: wide on purpose. */
    double[] limits(double days, double ratio, double varLogRatio) {
        double[] young = law.failureWithinLimits(quantile(0.025), days, ratio, varLogRatio);
        double[] old = law.failureWithinLimits(quantile(0.975), days, ratio, varLogRatio);
        return new double[] {Math.min(young[0], old[0]), Math.max(young[1], old[1])};
    }

    private double quantile(double share) {
        double below = 0;
        for (int i = 0; i < POINTS; i++) {
            below += weights[i];
            if (below >= share) {
                return ages[i];
            }
        }
        return ages[POINTS - 1];
    }
}
