package sensorrounds.visit;

/** Work done on one wheel at a visit. "Replaced" alone is not enough: it must say what. */
public enum WheelWork {
    NONE,
    SENSOR_REPLACED,
    PLAIN_VALVE_FITTED,
    KIT_RENEWED,
    TYRE_WORK
}
