package sensorrounds.simulate;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.WheelReading;
import sensorrounds.visit.WheelWork;
import sensorrounds.visit.WorkReason;

/** What a technician writes down of one wheel, while writing it. */
final class WheelDraft {
    final Wheel wheel;
    /** The sensor that was there on arrival. */
    final SimulatedSensor found;

    ReadOutcome read;
    String sensorId;
    Integer attempts;
    Double pressureKpa;
    Double gaugeKpa;
    Boolean hot;
    Double celsius;
    BatteryReport battery;
    String part;
    WheelWork work = WheelWork.NONE;
    WorkReason reason;
    String newSensorId;
    String newPart;
    Boolean cloned;
    boolean tyreDateWritten;

    WheelDraft(Wheel wheel) {
        this.wheel = wheel;
        this.found = wheel.sensor();
    }

    boolean silent() {
        return read == ReadOutcome.NO_ANSWER;
    }

    boolean touched() {
        return work != WheelWork.NONE;
    }

    WheelReading reading() {
        LocalDate tyreDate = tyreDateWritten
                ? LocalDate.ofEpochDay(wheel.tyreMadeDay()).with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY))
                : null;
        return new WheelReading(
                wheel.position,
                wheel.position.code(),
                sensorId,
                read,
                attempts,
                pressureKpa,
                gaugeKpa,
                hot,
                celsius,
                battery,
                part,
                work,
                reason,
                newSensorId,
                newPart,
                cloned,
                tyreDate);
    }
}
