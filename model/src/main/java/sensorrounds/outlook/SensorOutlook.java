package sensorrounds.outlook;

import java.io.Serializable;

/**
 * The outlook of one sensor in service as of a day: the sensor, its chances of failing, and what these rest on.
 */
public record SensorOutlook(SensorInService sensor, Chances chances, Grounds grounds) implements Serializable {
    /** What the probabilities rest on. */
    public enum Method {
        /** All readings and warnings so far, through the fitted model of good, weak and dead sensors. */
        HIDDEN_CONDITION,
        /** The cohort's law of life and the last report. */
        SURVIVAL_AND_LAST_REPORT
    }

    /** The same sensor with chances by the hidden condition. */
    public SensorOutlook byCondition(Chances byCondition) {
        return new SensorOutlook(
                sensor, byCondition, new Grounds(grounds.cohort, grounds.rung, Method.HIDDEN_CONDITION, ""));
    }

    /** The same outlook with the reason why it is not by the hidden condition. */
    public SensorOutlook because(String reason) {
        return new SensorOutlook(sensor, chances, new Grounds(grounds.cohort, grounds.rung, grounds.method, reason));
    }

    /**
     * Chances of a sensor's failing; NaN where no law of life was fitted.
     *
     * @param failureRatio hazard of sensors with this last report against all of their age, until about the next visit
     * @param pNow probability of not working already: failed since its last answer, and nobody has found out
     * @param p30 probability of failing within 30 days, as p90, p180, p365
     * @param pHorizon probability of failing within the planning horizon
     * @param pHorizonLower lower 95 % limit of it, from the uncertainty of the fit
     * @param pHorizonUpper upper 95 % limit of it
     * @param pWeak probability of being weak, still answering, as of that day; NaN without the hidden condition
     * @param setFailures sensors of known age that failed on its vehicle so far; 0 without the hidden condition
     * @param setRatio how many times as fast the sensors of its vehicle fail as others, from those; 1 when that is not known
     */
    public record Chances(
            double failureRatio,
            double pNow,
            double p30,
            double p90,
            double p180,
            double p365,
            double pHorizon,
            double pHorizonLower,
            double pHorizonUpper,
            double pWeak,
            int setFailures,
            double setRatio)
            implements Serializable {
        /** Chances by a law of life and the last report: whether the sensor is weak, and its vehicle's others, are not known. */
        public Chances(
                double failureRatio,
                double pNow,
                double p30,
                double p90,
                double p180,
                double p365,
                double pHorizon,
                double pHorizonLower,
                double pHorizonUpper) {
            this(failureRatio, pNow, p30, p90, p180, p365, pHorizon, pHorizonLower, pHorizonUpper, Double.NaN, 0, 1);
        }
    }

    /**
     * What chances rest on.
     *
     * @param cohort cohort whose fit was used; null when none was fitted, as {@code rung}
     * @param rung rung of the fallback ladder that the fit stands on, in words
     * @param method by which of the two ways they were worked out
     * @param why why it is not the hidden condition; empty when it is
     */
    public record Grounds(String cohort, String rung, Method method, String why) implements Serializable {
        /** A law of life and the last report, the hidden condition not having been asked for. */
        public static Grounds ofLaw(String cohort, String rung) {
            return new Grounds(cohort, rung, Method.SURVIVAL_AND_LAST_REPORT, "");
        }
    }
}
