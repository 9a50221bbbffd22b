package sensorrounds.recurrence;

import java.io.Serializable;

/**
 * How often system warnings come to the vehicles of a class, and whether they come more often as time goes on.
 *
 * @param cohort a vehicle class, or {@link PeerRates#ALL}
 * @param vehicles under observation
 * @param warned vehicles with a warning after their first visit
 * @param events warnings after the first visit
 * @param statistic of the robust Laplace test, standard normal without a trend, above 0 where warnings come more often; NaN with
 *     too few vehicles
 * @param pValue two-sided; NaN with too few vehicles
 */
public record WarningTrend(
        String cohort,
        long vehicles,
        long warned,
        long events,
        double exposureYears,
        double perYear,
        double statistic,
        double pValue,
        Direction direction)
        implements Serializable {
    /** What the test says, at 5 %. */
    public enum Direction {
        MORE_OFTEN,
        LESS_OFTEN,
        NO_TREND_SHOWN,
        /** Fewer warned vehicles than the test needs. */
        TOO_FEW
    }
}
