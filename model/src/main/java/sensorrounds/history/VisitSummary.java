package sensorrounds.history;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;
import sensorrounds.visit.FaultCode;
import sensorrounds.visit.VisitReason;
import sensorrounds.visit.Warning;
import sensorrounds.visit.WheelPosition;

/**
 * One visit as the warning history needs it. Nulls mean not written down.
 *
 * @param everySensorAnswered true when every wheel was tried and answered: none was left out, of those the register
 *     gives the vehicle or the visit itself names
 * @param slowest place that needed most tries, when one place alone needed more than the others; else null
 * @param slowestAttempts tries it needed; null with {@code slowest}
 * @param silent places that gave no answer
 * @param bare places found without a sensor
 * @param replaced places at which a sensor was replaced
 * @param pressuresExplainedByCold true when a low-pressure warning is explained by temperature: referred to the
 *     reference temperature no tyre is under the warning share of its placard, though at the air temperature at least
 *     one is near it. Null when it cannot be told
 * @param driveMinutes test drive, minutes; null when there was none or it was not written down
 * @param driveKm test drive, km; null when there was none or it was not written down
 * @param warningReturned null when not written down
 * @param odometerKm reading on arrival, km; null when not written down
 */
public record VisitSummary(
        LocalDate day,
        String visitId,
        String technicianId,
        String readerId,
        VisitReason reason,
        Warning warning,
        LocalDate warningSince,
        List<FaultCode> codes,
        boolean everySensorAnswered,
        WheelPosition slowest,
        Integer slowestAttempts,
        List<WheelPosition> silent,
        List<WheelPosition> bare,
        List<WheelPosition> replaced,
        Boolean pressuresExplainedByCold,
        Repair repair,
        boolean codesCleared,
        boolean relearned,
        Double driveMinutes,
        Double driveKm,
        Boolean warningReturned,
        Double odometerKm)
        implements Serializable {
    public VisitSummary {
        codes = List.copyOf(codes);
        silent = List.copyOf(silent);
        bare = List.copyOf(bare);
        replaced = List.copyOf(replaced);
    }

    /** On a later day than the other, or driven since by the odometer: twice on one day without a drive no warning comes back. */
    public boolean isLaterThan(VisitSummary other) {
        boolean driven = odometerKm != null && other.odometerKm != null && odometerKm > other.odometerKm;
        return day.isAfter(other.day) || driven;
    }
}
