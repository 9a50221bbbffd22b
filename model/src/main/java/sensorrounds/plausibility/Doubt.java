package sensorrounds.plausibility;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;
import sensorrounds.visit.Source;
import sensorrounds.visit.WheelPosition;

/**
 * An entry that is well written and is used as it stands, but can hardly be right beside the other entries of its visit or
 * vehicle. It is shown to people; nothing is changed because of it. Its text names no plate, no VIN and no person.
 *
 * @param sensorId null when it concerns no one sensor
 * @param position null when it concerns no one place
 * @param wheelSet wheel set of that place; null with one set, or when it concerns no one place
 * @param what what was found, a sentence
 * @param sources rows that show it, in order; never empty
 */
public record Doubt(
        Kind kind,
        String vehicleId,
        String sensorId,
        WheelPosition position,
        String wheelSet,
        LocalDate day,
        String what,
        List<Source> sources)
        implements Serializable {
    /** What is doubted. */
    public enum Kind {
        SENSOR_ID_NEAR(
                "sensor IDs seen at one visit only, one slip away from the ID seen there at other visits",
                "read the sensor again and correct the ID where it was copied by hand or came through a spreadsheet"),
        SENSOR_AT_TWO_PLACES(
                "one sensor ID at two places of a visit",
                "read both wheels again: the wrong wheel answered, or the ID of the last one stayed in the reader"),
        SENSOR_AT_TWO_VEHICLES(
                "one sensor ID on two vehicles over the same time",
                "read the sensor again: a neighbour's wheel answered, an old value stayed in the reader, a spare or a set"
                        + " of wheels travelled, or the vehicle was mistaken"),
        VIN_AT_TWO_VEHICLES(
                "one vehicle identification number under two vehicle keys",
                "give the vehicle one key, or correct the number of one of the two"),
        PRESSURE_UNIT(
                "pressures that look as if written in another unit",
                "check the unit of the reader, or give pressureUnit under constants in a layout"),
        PRESSURE_ABSOLUTE(
                "pressures that look absolute where gauge pressure is expected",
                "set the reader to gauge pressure; absolute pressure is about 101 kPa more"),
        PRESSURE_UNLIKELY("pressures far from the other figures of the wheel", "gauge the tyre and correct the figure"),
        PLACARD_UNLIKELY(
                "prescribed pressures that no vehicle has, or unlike those of the vehicle's other visits",
                "copy the pressure from the placard with its unit"),
        TEMPERATURE_UNLIKELY(
                "temperatures far from the air and the other wheels: another unit, or a code for no value",
                "check the unit, or give the code under noTemperature in a layout"),
        ODOMETER_BACK("an odometer lower than before", "check both readings"),
        ODOMETER_JUMP("an odometer further on than the vehicle can have driven", "check for a digit too many"),
        DATE_AFTER_VISIT("dates that lie after the visit they are told at", "check the date and that of the visit"),
        VISIT_TWICE(
                "two visits with the same content or the same minute under two keys",
                "keep one of the two, or write the second under the key of the first"),
        VISIT_FIELDS_DIFFER(
                "rows of one visit that say different things about it",
                "write the same values on every row of the visit; those of its last row count"),
        PLATE_CHANGED("a number plate that changes", "nothing to do when the plate was really changed"),
        VIN_CHANGED(
                "a vehicle identification number that changes under one vehicle key",
                "give each vehicle a key of its own, or correct the number"),
        READ_CONTRADICTED(
                "sensors without an answer that sent values",
                "correct the outcome of the read, or leave the values out"),
        WORK_CONTRADICTED(
                "a new sensor named where none was fitted",
                "write sensor-replaced for the work, or leave the new sensor out");

        private final String words;
        private final String remedy;

        Kind(String words, String remedy) {
            this.words = words;
            this.remedy = remedy;
        }

        /** What is doubted, in words. */
        public String words() {
            return words;
        }

        /** The way out. */
        public String remedy() {
            return remedy;
        }
    }

    public Doubt {
        sources = sources.stream().distinct().sorted().toList();
        if (sources.isEmpty()) {
            throw new IllegalArgumentException("a doubt without a row that shows it: " + what);
        }
    }
}
