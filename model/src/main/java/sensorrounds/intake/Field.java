package sensorrounds.intake;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import sensorrounds.visit.WheelPosition;

/**
 * The fields of a visit log by their canonical names, in the flat form of a CSV header. docs/visit-log.md is this list in
 * words.
 */
public enum Field {
    CONTRACT_VERSION("contractVersion"),
    VISIT_ID("visitId"),
    REVISION("revision"),
    VISITED_AT("visitedAt"),
    TECHNICIAN_ID("technicianId"),
    READER_ID("readerId"),
    VEHICLE_ID("vehicleId"),
    VIN("vin"),
    REGISTRATION("registration"),
    ODOMETER("odometer"),
    ODOMETER_UNIT("odometerUnit"),
    AMBIENT_TEMPERATURE("ambientTemperature"),
    TEMPERATURE_UNIT("temperatureUnit"),
    PRESSURE_UNIT("pressureUnit"),
    PLACARD_PRESSURE_1("placardPressure1"),
    PLACARD_PRESSURE_2("placardPressure2"),
    PLACARD_PRESSURE_3("placardPressure3"),
    PLACARD_PRESSURE_4("placardPressure4"),
    PLACARD_PRESSURE_5("placardPressure5"),
    PLACARD_PRESSURE_6("placardPressure6"),
    PLACARD_PRESSURE_7("placardPressure7"),
    PLACARD_PRESSURE_8("placardPressure8"),
    PLACARD_PRESSURE_9("placardPressure9"),
    WHEEL_SET("wheelSet"),
    REASON("reason"),
    WARNING("warning"),
    WARNING_SINCE("warningSince"),
    DRIVING_MINUTES_TO_WARNING("drivingMinutesToWarning"),
    FAULT_CODES("faultCodes"),
    RELEARN("relearn"),
    RELEARN_RESULT("relearnResult"),
    PRESSURES_STORED("pressuresStored"),
    CODES_CLEARED("codesCleared"),
    TEST_DRIVE_MINUTES("testDriveMinutes"),
    TEST_DRIVE_DISTANCE("testDriveDistance"),
    TEST_DRIVE_WARNING_RETURNED("testDriveWarningReturned"),
    NOTES("notes"),

    POSITION("position"),
    SENSOR_ID("sensorId"),
    READ("read"),
    WAKE_ATTEMPTS("wakeAttempts"),
    PRESSURE("pressure"),
    GAUGE_PRESSURE("gaugePressure"),
    HOT("hot"),
    TEMPERATURE("temperature"),
    BATTERY("battery"),
    PART("part"),
    WORK("work"),
    WORK_REASON("workReason"),
    NEW_SENSOR_ID("newSensorId"),
    NEW_PART("newPart"),
    CLONED("cloned"),
    TYRE_DATE("tyreDate");

    private static final Map<String, Field> BY_KEY =
            Arrays.stream(values()).collect(Collectors.toUnmodifiableMap(Field::key, Function.identity()));

    /** The fields that stand once per visit. */
    public static final List<Field> OF_VISIT =
            Arrays.stream(values()).filter(f -> !f.ofWheel()).toList();
    /** The fields that stand once per wheel. */
    public static final List<Field> OF_WHEEL =
            Arrays.stream(values()).filter(Field::ofWheel).toList();
    /** The fields without which a file cannot be a visit log. */
    public static final List<Field> KEYS = List.of(VISIT_ID, VISITED_AT, VEHICLE_ID);

    private final String key;

    Field(String key) {
        this.key = key;
    }

    /** The canonical name. */
    public String key() {
        return key;
    }

    /** @return the field with this canonical name */
    public static Optional<Field> of(String key) {
        return Optional.ofNullable(BY_KEY.get(key));
    }

    /** The field of the placard pressure of one axle, counted from 1. */
    public static Field placardPressure(int axle) {
        if (axle < 1 || axle > WheelPosition.MAX_AXLE) {
            throw new IllegalArgumentException("axle " + axle + ", expected 1 to " + WheelPosition.MAX_AXLE);
        }
        return values()[PLACARD_PRESSURE_1.ordinal() + axle - 1];
    }

    public boolean ofWheel() {
        return ordinal() >= POSITION.ordinal();
    }

    /** True when the nested JSON form writes this field inside an object of its own, under another name. */
    public boolean nestedInJson() {
        return switch (this) {
            case TEST_DRIVE_MINUTES, TEST_DRIVE_DISTANCE, TEST_DRIVE_WARNING_RETURNED -> true;
            default -> ordinal() >= PLACARD_PRESSURE_1.ordinal() && ordinal() <= PLACARD_PRESSURE_9.ordinal();
        };
    }

    /** True for what tells of a person: it is masked in messages and in what is handed on. */
    public boolean isPersonal() {
        return this == TECHNICIAN_ID || this == VIN || this == REGISTRATION || this == NOTES;
    }

    /** True for a code that may start with a zero or look like 1E5: written as a number it is already damaged. */
    public boolean mustBeText() {
        return this == SENSOR_ID || this == NEW_SENSOR_ID || this == TYRE_DATE;
    }
}
