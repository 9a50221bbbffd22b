package sensorrounds.replacement;

import java.io.Serializable;
import java.time.LocalDate;

/**
 * Costs of replacing sensors, all in one currency and as of one date.
 *
 * @param currency three-letter code
 * @param asOf date of the figures
 * @param plannedVisit set-up of a planned stop, once per vehicle however many sensors are done: bringing it in, relearn,
 *     test drive
 * @param reading going to a vehicle and waking its sensors, no wheel off
 * @param perWheel work on one wheel: bead off, kit, balance
 * @param defaultSensorPrice price of a sensor whose part has none in the parts list
 * @param unplannedVisit call-out after a failure
 * @param downtime vehicle and driver standing still after a failure
 */
public record Costs(
        String currency,
        LocalDate asOf,
        double plannedVisit,
        double reading,
        double perWheel,
        double defaultSensorPrice,
        double unplannedVisit,
        double downtime)
        implements Serializable {
    /** One new sensor with the work on its wheel, at a stop that happens anyway. */
    public double piece(double sensorPrice) {
        return perWheel + sensorPrice;
    }

    /** What a failure on the road costs beside the new sensor. */
    public double breakdown() {
        return unplannedVisit + downtime;
    }
}
