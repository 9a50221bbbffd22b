package sensorrounds.outlook;

import java.io.Serializable;

/**
 * What outlooks are computed by. The priors are invented: no source gives hazard ratios by last report, so they are
 * kept weak and every one is a setting.
 *
 * @param horizonDays planning horizon, days, at least 1
 * @param sound prior of the failure ratio of sensors that answered with nothing amiss
 * @param slow prior for slow waking
 * @param low prior for a low battery report
 * @param silent prior for a sensor that was silent once
 */
public record OutlookSettings(int horizonDays, Prior sound, Prior slow, Prior low, Prior silent)
        implements Serializable {
    /**
     * Gamma prior of a failure ratio.
     *
     * @param mean prior mean of the ratio, over 0
     * @param weight expected failures the prior counts as, over 0
     */
    public record Prior(double mean, double weight) implements Serializable {
        public Prior {
            if (!(mean > 0 && mean < Double.POSITIVE_INFINITY && weight > 0 && weight < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("no gamma prior: mean " + mean + ", weight " + weight
                        + "; both must be positive numbers, e.g. mean 6 and weight 0.5");
            }
        }
    }

    public OutlookSettings {
        if (horizonDays < 1) {
            throw new IllegalArgumentException(
                    "planning horizon of " + horizonDays + " days; it must be at least 1 day, e.g. 90");
        }
    }

    /**
     * Horizon of 90 days. SOUND counts ten expected failures because the cohort's own law, which most sound sensors
     * make, speaks for a ratio of 1; the others count half a failure.
     */
    public static OutlookSettings defaults() {
        return new OutlookSettings(90, new Prior(1, 10), new Prior(3, 0.5), new Prior(6, 0.5), new Prior(8, 0.5));
    }

    public Prior prior(LastReport report) {
        return switch (report) {
            case SOUND -> sound;
            case SLOW_TO_WAKE -> slow;
            case LOW_BATTERY -> low;
            case SILENT_ONCE -> silent;
        };
    }
}
