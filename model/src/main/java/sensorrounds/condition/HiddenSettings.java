package sensorrounds.condition;

import java.io.Serializable;
import java.util.List;

/**
 * What the model of a sensor's hidden condition rests on. None of the figures has a source; the priors are kept weak so
 * that a fleet of some hundred sensors overrules them, and can be taken out.
 *
 * @param bandLimitDays ages in days at which one age band ends and the next begins, rising; rates are constant in a band
 * @param triesWhenNotWritten tries a silent read counts as when nobody wrote their number down
 * @param leastSensors sensors under which nothing is fitted
 * @param leastFailures failed sensors under which nothing is fitted
 * @param priors what is believed of the parameters before any data
 */
public record HiddenSettings(
        List<Integer> bandLimitDays, int triesWhenNotWritten, int leastSensors, int leastFailures, Priors priors)
        implements Serializable {
    /** Longest age reckoned with, 60 years. */
    public static final int MAX_AGE_DAYS = 21_915;

    /**
     * Normal priors on logs and log odds.
     *
     * @param centre middle of the priors, also the start of the fit; its rates are those of the first age band, carried
     *     on to the others
     * @param rateDeviation of the log of the rates in the first band, and of sudden death
     * @param stepDeviation of the change of a log rate from one band to the next
     * @param reportDeviation of the log odds of waking and of low reports
     * @param wakeSlopeDeviation of the change of the log odds of waking when weak with those of a good sensor, about 0
     * @param seasonDeviation of the log of the rates' factor in the cold of the year, about 0
     */
    public record Priors(
            Centre centre,
            double rateDeviation,
            double stepDeviation,
            double reportDeviation,
            double wakeSlopeDeviation,
            double seasonDeviation)
            implements Serializable {
        public Priors {
            if (!(rateDeviation > 0
                    && stepDeviation > 0
                    && reportDeviation > 0
                    && wakeSlopeDeviation > 0
                    && seasonDeviation > 0)) {
                throw new IllegalArgumentException("deviations of the priors are " + rateDeviation + ", "
                        + stepDeviation + ", " + reportDeviation + ", " + wakeSlopeDeviation + " and " + seasonDeviation
                        + "; expected numbers above 0, infinite for no prior");
            }
        }

        /** The same centre as a start only: plain maximum likelihood. */
        public Priors off() {
            double none = Double.POSITIVE_INFINITY;
            return new Priors(centre, none, none, none, none, none);
        }
    }

    /**
     * Middle of the priors.
     *
     * @param yearsUntilWeak mean years from good to weak
     * @param yearsWeak mean years from weak to dead
     * @param yearsUntilSudden mean years to a sudden death
     * @param wakeOddsFactor odds that a weak sensor answers one try, relative to a good one
     * @param coldWakeFactor further factor on these odds in the cold, beside what the cold does to good sensors
     * @param lowWhenGood chance of a low battery report of a good sensor, not cold
     * @param lowWhenGoodCold the same in the cold
     * @param lowWhenWeak chance of a low battery report of a weak sensor, not cold
     * @param lowWhenWeakCold the same in the cold
     * @param missed chance that a read of a working sensor fails however often it is tried: its place, the angle
     * @param warning how the system's own warning speaks
     */
    public record Centre(
            double yearsUntilWeak,
            double yearsWeak,
            double yearsUntilSudden,
            double wakeOddsFactor,
            double coldWakeFactor,
            double lowWhenGood,
            double lowWhenGoodCold,
            double lowWhenWeak,
            double lowWhenWeakCold,
            double missed,
            Warning warning)
            implements Serializable {}

    /**
     * Middle of the priors of what the system's own warning does.
     *
     * @param onWhenAlive chance that it is on at a visit made for another reason while the sensor lives
     * @param onWhenDead the same, the sensor dead
     * @param reported share of deaths whose warning brings the driver in
     * @param daysUntilReported mean days until it does
     */
    public record Warning(double onWhenAlive, double onWhenDead, double reported, double daysUntilReported)
            implements Serializable {}

    public HiddenSettings {
        bandLimitDays = List.copyOf(bandLimitDays);
        int last = 0;
        for (int limit : bandLimitDays) {
            if (limit <= last || limit >= MAX_AGE_DAYS) {
                throw new IllegalArgumentException("limits of the age bands are " + bandLimitDays
                        + " days; expected whole numbers that rise, above 0 and below " + MAX_AGE_DAYS);
            }
            last = limit;
        }
        if (triesWhenNotWritten < 1 || leastSensors < 1 || leastFailures < 0) {
            throw new IllegalArgumentException("triesWhenNotWritten " + triesWhenNotWritten + ", leastSensors "
                    + leastSensors + ", leastFailures " + leastFailures + "; expected at least 1, 1 and 0");
        }
    }

    private static final Warning WARNING = new Warning(0.03, 0.9, 0.7, 30);

    /** For sensors whose cohorts have no law of life: bands up to 4, 6, 8 years and beyond. */
    public static HiddenSettings defaults() {
        return new HiddenSettings(
                List.of(1461, 2192, 2922),
                2,
                200,
                20,
                new Priors(new Centre(10, 1, 100, 0.15, 1, 0.02, 0.1, 0.5, 0.7, 0.01, WARNING), 1.5, 1, 1.5, 0.5, 0.5));
    }

    public HiddenSettings with(List<Integer> newBandLimitDays) {
        return new HiddenSettings(newBandLimitDays, triesWhenNotWritten, leastSensors, leastFailures, priors);
    }

    public HiddenSettings with(Priors newPriors) {
        return new HiddenSettings(bandLimitDays, triesWhenNotWritten, leastSensors, leastFailures, newPriors);
    }

    int bands() {
        return bandLimitDays.size() + 1;
    }
}
