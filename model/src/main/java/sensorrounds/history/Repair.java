package sensorrounds.history;

/** What was done about a warning at a visit, strongest first. */
public enum Repair {
    SET_REPLACED,
    SENSOR_REPLACED,
    OTHER_WHEEL_WORK,
    RELEARN,
    CODES_CLEARED,
    PRESSURES_CORRECTED,
    NONE
}
