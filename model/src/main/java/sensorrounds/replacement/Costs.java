package sensorrounds.replacement;

import java.io.Serializable;
import java.time.LocalDate;

/**
 * Costs of replacing a sensor, all in one currency and as of one date.
 *
 * @param currency three-letter code
 * @param asOf date of the figures
 * @param plannedVisit set-up of a planned stop per vehicle: bringing it in, relearn, test drive
 * @param perWheel work on one wheel: bead off, kit, balance
 * @param defaultSensorPrice price of a sensor whose part has none in the parts list
 * @param unplannedVisit call-out after a failure
 * @param downtime vehicle and driver standing still after a failure
 */
public record Costs(
        String currency,
        LocalDate asOf,
        double plannedVisit,
        double perWheel,
        double defaultSensorPrice,
        double unplannedVisit,
        double downtime)
        implements Serializable {
    /** Cost of a planned replacement of one sensor at a stop of its own. */
    public double planned(double sensorPrice) {
        return plannedVisit + perWheel + sensorPrice;
    }

    /** Cost of a replacement after a failure. */
    public double afterFailure(double sensorPrice) {
        return unplannedVisit + downtime + perWheel + sensorPrice;
    }
}
