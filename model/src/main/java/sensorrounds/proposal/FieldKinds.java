package sensorrounds.proposal;

import java.util.EnumSet;
import java.util.Set;
import sensorrounds.intake.Field;

/** What kind of value a field holds, as far as its texts can show it. */
final class FieldKinds {
    static final Set<Field> PRESSURES = pressures();
    static final Set<Field> DISTANCES = EnumSet.of(Field.ODOMETER, Field.TEST_DRIVE_DISTANCE);
    static final Set<Field> TEMPERATURES = EnumSet.of(Field.AMBIENT_TEMPERATURE, Field.TEMPERATURE);
    static final Set<Field> MINUTES = EnumSet.of(Field.DRIVING_MINUTES_TO_WARNING, Field.TEST_DRIVE_MINUTES);
    static final Set<Field> DATES = EnumSet.of(Field.VISITED_AT, Field.WARNING_SINCE);
    static final Set<Field> IDS = EnumSet.of(Field.SENSOR_ID, Field.NEW_SENSOR_ID);
    /** Any text fits them, so that only their header can name them. */
    static final Set<Field> FREE = EnumSet.of(
            Field.VISIT_ID,
            Field.TECHNICIAN_ID,
            Field.READER_ID,
            Field.VEHICLE_ID,
            Field.REGISTRATION,
            Field.WHEEL_SET,
            Field.NOTES,
            Field.PART,
            Field.NEW_PART);
    /** Fields that take one of a few words. */
    static final Set<Field> WORDS = EnumSet.of(
            Field.ODOMETER_UNIT,
            Field.TEMPERATURE_UNIT,
            Field.PRESSURE_UNIT,
            Field.REASON,
            Field.WARNING,
            Field.RELEARN,
            Field.RELEARN_RESULT,
            Field.PRESSURES_STORED,
            Field.CODES_CLEARED,
            Field.TEST_DRIVE_WARNING_RETURNED,
            Field.READ,
            Field.HOT,
            Field.BATTERY,
            Field.WORK,
            Field.WORK_REASON,
            Field.CLONED);

    private FieldKinds() {}

    static boolean isNumber(Field field) {
        return PRESSURES.contains(field)
                || DISTANCES.contains(field)
                || TEMPERATURES.contains(field)
                || MINUTES.contains(field);
    }

    private static Set<Field> pressures() {
        Set<Field> fields = EnumSet.of(Field.PRESSURE, Field.GAUGE_PRESSURE);
        for (int axle = 1; axle <= 9; axle++) {
            fields.add(Field.placardPressure(axle));
        }
        return fields;
    }
}
