package sensorrounds.outlook;

import java.util.ArrayList;
import java.util.List;
import sensorrounds.outlook.ReportRatios.Ratio;
import sensorrounds.survival.LifeLaw;

/**
 * The age of a working sensor whose origin nobody wrote down, as a distribution. On a vehicle of age A whose sensors are
 * replaced when they fail, the sensor at a wheel is the original with probability S(A), or was fitted a days ago with
 * density m(A - a) S(a), m the renewal density; here given that it has been seen working for the least age. Most sensors of
 * a vehicle of moderate age are still its first, and its part may tell which it is ({@link FittedParts}). Where the vehicle's age is not known either, the density is the limit of
 * that for old vehicles, proportional to S(a). Replacements of sensors that had not failed are left out. Source: Cox (1962),
 * Renewal Theory, ch. 4 and 5 (backward recurrence time).
 */
public final class UnknownAge {
    private static final int CELLS = 128;
    /** Survivors of one in a million beyond the least age are left out when nothing else bounds it. */
    private static final double LAST_HAZARD = Math.log(1e6);

    private final LifeLaw law;
    /** The last one is the vehicle's own age. */
    private final double[] ages = new double[CELLS + 1];

    private final double[] weights = new double[CELLS + 1];

    UnknownAge(LifeLaws.Law fitted, double leastDays, double vehicleDays) {
        this(fitted, leastDays, vehicleDays, Double.POSITIVE_INFINITY, 1);
    }

    /**
     * @param leastDays age it has at least: it was seen working for so long
     * @param vehicleDays the vehicle's age; infinite when not known
     * @param mostDays age it has at most if it was new when fitted; under the vehicle's age it is not the original;
     *     infinite when not known
     * @param firstSensorFactor how many times as likely what is known of it is on a first sensor as on a later one, 0 or more
     */
    public UnknownAge(
            LifeLaws.Law fitted, double leastDays, double vehicleDays, double mostDays, double firstSensorFactor) {
        law = fitted.life();
        double atLeast = law.cumulativeHazard(leastDays);
        double last = law.ageAtHazard(atLeast + LAST_HAZARD);
        double end = Math.max(leastDays, Math.min(Math.min(vehicleDays, mostDays), last));
        double step = (end - leastDays) / CELLS;
        double total = 0;
        for (int i = 0; i < CELLS; i++) {
            ages[i] = leastDays + (i + 0.5) * step;
            double fittedThen = vehicleDays == Double.POSITIVE_INFINITY
                    ? step
                    : fitted.renewals().by(vehicleDays - leastDays - i * step)
                            - fitted.renewals().by(vehicleDays - leastDays - (i + 1) * step);
            // Relative to the least age, so that a very old sensor does not underflow.
            weights[i] = fittedThen * Math.exp(atLeast - law.cumulativeHazard(ages[i]));
            total += weights[i];
        }
        boolean original = vehicleDays < Double.POSITIVE_INFINITY && vehicleDays <= mostDays;
        ages[CELLS] = original ? Math.max(leastDays, vehicleDays) : end;
        // A sensor fitted on the day of its last answer has the one age.
        double pointMass = total > 0 ? 0 : 1;
        weights[CELLS] =
                original ? firstSensorFactor * Math.exp(atLeast - law.cumulativeHazard(ages[CELLS])) : pointMass;
        total += weights[CELLS];
        for (int i = 0; i <= CELLS; i++) {
            weights[i] /= total;
        }
    }

    double failureWithin(double days, Ratio ratio) {
        double p = 0;
        for (int i = 0; i <= CELLS; i++) {
            if (weights[i] > 0) {
                p += weights[i] * ratio.failure(law, ages[i], days);
            }
        }
        return p;
    }

    /**
     * An age it may have.
     *
     * @param weight its probability
     */
    public record Share(double ageDays, double weight) {}

    /** The distribution in a few ages: the mean of each of so many stretches of equal length, and the vehicle's own. */
    public List<Share> shares(int stretches) {
        List<Share> shares = new ArrayList<>();
        for (int k = 0; k < stretches; k++) {
            int from = CELLS * k / stretches;
            int to = CELLS * (k + 1) / stretches;
            double weight = 0;
            double sum = 0;
            for (int i = from; i < to; i++) {
                weight += weights[i];
                sum += weights[i] * ages[i];
            }
            if (weight > 0) {
                shares.add(new Share(sum / weight, weight));
            }
        }
        if (weights[CELLS] > 0) {
            shares.add(new Share(ages[CELLS], weights[CELLS]));
        }
        return shares;
    }

    /** Least lower and greatest upper 95 % limit over the middle 95 % of the ages: wide on purpose. */
    double[] limits(double days, Ratio ratio) {
        double[] young = ratio.hazard(law, quantile(0.025), days).failureLimits();
        double[] old = ratio.hazard(law, quantile(0.975), days).failureLimits();
        return new double[] {Math.min(young[0], old[0]), Math.max(young[1], old[1])};
    }

    private double quantile(double share) {
        double below = 0;
        for (int i = 0; i < CELLS; i++) {
            below += weights[i];
            if (below >= share) {
                return ages[i];
            }
        }
        return ages[CELLS];
    }
}
