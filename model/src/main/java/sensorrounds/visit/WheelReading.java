package sensorrounds.visit;

import java.io.Serializable;
import java.time.LocalDate;

/**
 * What a log says of one wheel at a visit, in canonical units. Every field but position and read may be null: not
 * written down.
 *
 * @param position canonical place
 * @param positionRaw the word the log used
 * @param sensorId upper-case hexadecimal, no prefix
 * @param wakeAttempts tries until the sensor answered, or until the technician gave up; at least 1
 * @param pressureKpa gauge pressure the sensor sent, kPa
 * @param gaugePressureKpa gauge pressure by hand gauge, kPa
 * @param hot true when the tyre was warm from driving
 * @param temperatureCelsius temperature the sensor sent, °C
 * @param battery null when not reported, which is not the same as OK
 * @param part part number of the sensor read
 * @param newSensorId ID of the sensor fitted; equal to sensorId when the new one was programmed with the old ID
 * @param newPart part number of the sensor fitted
 * @param cloned true when the new sensor was programmed with the old ID
 * @param tyreDate first day of the week in the tyre's date code
 */
public record WheelReading(
        WheelPosition position,
        String positionRaw,
        String sensorId,
        ReadOutcome read,
        Integer wakeAttempts,
        Double pressureKpa,
        Double gaugePressureKpa,
        Boolean hot,
        Double temperatureCelsius,
        BatteryReport battery,
        String part,
        WheelWork work,
        WorkReason workReason,
        String newSensorId,
        String newPart,
        Boolean cloned,
        LocalDate tyreDate)
        implements Serializable {}
