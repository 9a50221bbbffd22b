package sensorrounds.visit;

import java.io.Serializable;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.SortedMap;

/**
 * What a log says once per visit, in canonical units. Every field but the four keys may be null: not written down.
 *
 * @param visitId key of the visit, unique over all logs
 * @param revision how often the visit was edited after it was first written, 0 for the first form
 * @param visitedAt wall-clock time at the place of the visit
 * @param vehicleId key of the vehicle (a trailer has its own)
 * @param odometerKm kilometres
 * @param ambientCelsius air temperature, °C
 * @param placardKpa prescribed cold gauge pressure by axle (from 1), kPa; empty when not written down
 * @param wheelSet name of the wheel set on the vehicle; null for a vehicle with one set
 * @param warningSince first day the driver saw the warning
 * @param drivingMinutesToWarning minutes of driving until the warning comes
 */
public record VisitHeader(
        String visitId,
        int revision,
        LocalDateTime visitedAt,
        String technicianId,
        String readerId,
        String vehicleId,
        String vin,
        String registration,
        Double odometerKm,
        Double ambientCelsius,
        SortedMap<Integer, Double> placardKpa,
        String wheelSet,
        VisitReason reason,
        Warning warning,
        LocalDate warningSince,
        Double drivingMinutesToWarning,
        List<FaultCode> faultCodes,
        RelearnKind relearn,
        RelearnResult relearnResult,
        Boolean pressuresStored,
        Boolean codesCleared,
        TestDrive testDrive,
        String notes)
        implements Serializable {

    public LocalDate day() {
        return visitedAt.toLocalDate();
    }
}
