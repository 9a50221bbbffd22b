package sensorrounds.condition;

import java.io.Serializable;
import java.util.List;
import sensorrounds.condition.HiddenSettings.Priors;
import sensorrounds.condition.HiddenSettings.Warning;

/**
 * What an analyst can choose of the model of the hidden condition over laws of life; the settings file holds it. None of
 * the figures has a source; the priors are weak, so that some hundred sensors overrule them.
 *
 * @param triesWhenNotWritten tries a silent read counts as when nobody wrote their number down
 * @param leastSensors sensors under which nothing is fitted
 * @param leastFailures failed sensors under which nothing is fitted
 * @param rateDeviation standard deviation of the priors of the logs of rates
 * @param reportDeviation standard deviation of the priors of the log odds of waking and of reports
 * @param centre middle of the priors
 * @param wakeSlopeDeviation standard deviation of the prior of the change of the log odds of waking when weak with those of a good
 *     sensor, about 0
 * @param seasonDeviation standard deviation of the prior of the log of the rates' factor in the cold, about 0
 */
public record HiddenChoices(
        int triesWhenNotWritten,
        int leastSensors,
        int leastFailures,
        double rateDeviation,
        double reportDeviation,
        Centre centre,
        double wakeSlopeDeviation,
        double seasonDeviation)
        implements Serializable {
    /** Steps between age bands, of which there are none over laws. */
    private static final double NO_STEP = 1;

    /**
     * Middle of the priors.
     *
     * @param weakening rate of weakening, as a share of the hazard of the law of life
     * @param sudden rate of sudden death, likewise
     * @param yearsWeak mean years from weak to dead
     * @param wakeOddsFactor odds that a weak sensor answers one try, relative to a good one
     * @param coldWakeFactor further factor on these odds in the cold, beside what the cold does to good sensors
     * @param lowWhenGood chance of a low battery report of a good sensor, not cold
     * @param lowWhenGoodCold the same in the cold
     * @param lowWhenWeak chance of a low battery report of a weak sensor, not cold
     * @param lowWhenWeakCold the same in the cold
     * @param missed chance that a read of a working sensor fails however often it is tried
     * @param warning how the system's own warning speaks
     */
    public record Centre(
            double weakening,
            double sudden,
            double yearsWeak,
            double wakeOddsFactor,
            double coldWakeFactor,
            double lowWhenGood,
            double lowWhenGoodCold,
            double lowWhenWeak,
            double lowWhenWeakCold,
            double missed,
            Warning warning)
            implements Serializable {}

    /** The documented defaults. */
    public static HiddenChoices defaults() {
        return new HiddenChoices(
                2,
                200,
                20,
                1.5,
                1.5,
                new Centre(0.8, 0.2, 1, 0.15, 1, 0.02, 0.1, 0.5, 0.7, 0.01, new Warning(0.03, 0.9, 0.7, 30)),
                0.5,
                0.5);
    }

    /**
     * Settings for sensors whose cohorts have a law of life, {@link HiddenCohorts#of}: one age band, since the laws hold how
     * failing goes with age.
     */
    public HiddenSettings overLaws() {
        return new HiddenSettings(
                List.of(),
                triesWhenNotWritten,
                leastSensors,
                leastFailures,
                new Priors(
                        new HiddenSettings.Centre(
                                1 / centre.weakening(),
                                centre.yearsWeak(),
                                1 / centre.sudden(),
                                centre.wakeOddsFactor(),
                                centre.coldWakeFactor(),
                                centre.lowWhenGood(),
                                centre.lowWhenGoodCold(),
                                centre.lowWhenWeak(),
                                centre.lowWhenWeakCold(),
                                centre.missed(),
                                centre.warning()),
                        rateDeviation,
                        NO_STEP,
                        reportDeviation,
                        wakeSlopeDeviation,
                        seasonDeviation));
    }
}
