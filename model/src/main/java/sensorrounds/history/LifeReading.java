package sensorrounds.history;

import java.io.Serializable;
import java.time.LocalDate;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.Source;
import sensorrounds.visit.WheelPosition;

/**
 * One attempt to read one sensor during its life. Nulls mean not written down.
 *
 * @param attempts tries until the answer or until giving up
 * @param ambientCelsius air temperature at the visit, °C
 */
public record LifeReading(
        LocalDate day,
        String visitId,
        WheelPosition position,
        String readerId,
        String technicianId,
        ReadOutcome outcome,
        Integer attempts,
        BatteryReport battery,
        Double pressureKpa,
        Double gaugePressureKpa,
        Double ambientCelsius,
        Source source)
        implements Serializable {
    public boolean answered() {
        return outcome == ReadOutcome.OK;
    }
}
