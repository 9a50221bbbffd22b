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
        String rung)
        implements Serializable {}
