package sensorrounds.outlook;

import java.io.Serializable;
import java.time.LocalDate;
import sensorrounds.history.OriginBasis;
import sensorrounds.visit.WheelPosition;

/**
 * The outlook of one sensor in service as of a day.
 *
 * @param depot null when not known, as {@code vehicleClass} and {@code part}
 * @param ageDays age as of that day; null when its origin is unknown, and then the probabilities rest on the vehicle's
 *     class as a whole
 * @param lastReport state at its last reading
 * @param lastReadOn day of that reading
 * @param failureRatio hazard of sensors with this last report against all of their age, until about the next visit
 * @param pNow probability of not working already: failed since its last answer, and nobody has found out
 * @param p30 probability of failing within 30 days, as p90, p180, p365
 * @param pHorizon probability of failing within the planning horizon
 * @param pHorizonLower lower 95 % limit of it, from the uncertainty of the fit
 * @param pHorizonUpper upper 95 % limit of it
 * @param cohort cohort whose fit was used
 * @param rung rung of the fallback ladder that the fit stands on, in words
 * @param method what the probabilities rest on
 * @param why why it is not the hidden condition; empty when it is
 * @param pWeak probability of being weak, still answering, as of that day; NaN without the hidden condition
 * @param setFailures sensors of known age that failed on its vehicle so far
 * @param setRatio how many times as fast the sensors of its vehicle fail as others, from those; 1 when that is not known
 */
public record SensorOutlook(
        String vehicleId,
        String depot,
        String vehicleClass,
        WheelPosition position,
        String wheelSet,
        String sensorId,
        String lifeId,
        String part,
        Integer ageDays,
        OriginBasis basis,
        LastReport lastReport,
        LocalDate lastReadOn,
        double failureRatio,
        double pNow,
        double p30,
        double p90,
        double p180,
        double p365,
        double pHorizon,
        double pHorizonLower,
        double pHorizonUpper,
        String cohort,
        String rung,
        Method method,
        String why,
        double pWeak,
        int setFailures,
        double setRatio)
        implements Serializable {
    /** What the probabilities rest on. */
    public enum Method {
        /** All readings and warnings so far, through the fitted model of good, weak and dead sensors. */
        HIDDEN_CONDITION,
        /** The cohort's law of life and the last report. */
        SURVIVAL_AND_LAST_REPORT
    }

    /** An outlook by the law of life and the last report, no other having been asked for. */
    public SensorOutlook(
            String vehicleId,
            String depot,
            String vehicleClass,
            WheelPosition position,
            String wheelSet,
            String sensorId,
            String lifeId,
            String part,
            Integer ageDays,
            OriginBasis basis,
            LastReport lastReport,
            LocalDate lastReadOn,
            double failureRatio,
            double pNow,
            double p30,
            double p90,
            double p180,
            double p365,
            double pHorizon,
            double pHorizonLower,
            double pHorizonUpper,
            String cohort,
            String rung) {
        this(
                vehicleId,
                depot,
                vehicleClass,
                position,
                wheelSet,
                sensorId,
                lifeId,
                part,
                ageDays,
                basis,
                lastReport,
                lastReadOn,
                failureRatio,
                pNow,
                p30,
                p90,
                p180,
                p365,
                pHorizon,
                pHorizonLower,
                pHorizonUpper,
                cohort,
                rung,
                Method.SURVIVAL_AND_LAST_REPORT,
                "",
                Double.NaN,
                0,
                1);
    }

    /** The same sensor with other chances. */
    public SensorOutlook with(Chances c) {
        return new SensorOutlook(
                vehicleId,
                depot,
                vehicleClass,
                position,
                wheelSet,
                sensorId,
                lifeId,
                part,
                ageDays,
                basis,
                lastReport,
                lastReadOn,
                c.failureRatio,
                c.pNow,
                c.p30,
                c.p90,
                c.p180,
                c.p365,
                c.pHorizon,
                c.pHorizonLower,
                c.pHorizonUpper,
                cohort,
                rung,
                Method.HIDDEN_CONDITION,
                "",
                c.pWeak,
                c.setFailures,
                c.setRatio);
    }

    /** The same outlook with the reason why it is not by the hidden condition. */
    public SensorOutlook because(String reason) {
        return new SensorOutlook(
                vehicleId,
                depot,
                vehicleClass,
                position,
                wheelSet,
                sensorId,
                lifeId,
                part,
                ageDays,
                basis,
                lastReport,
                lastReadOn,
                failureRatio,
                pNow,
                p30,
                p90,
                p180,
                p365,
                pHorizon,
                pHorizonLower,
                pHorizonUpper,
                cohort,
                rung,
                method,
                reason,
                pWeak,
                setFailures,
                setRatio);
    }

    /** Chances by the hidden condition; the names are those of the outlook. */
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
            double setRatio) {}
}
