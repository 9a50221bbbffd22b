package sensorrounds.visit;

/** Why a sensor was replaced or taken out. */
public enum WorkReason {
    BATTERY_EXHAUSTED,
    NO_ANSWER,
    STEM_BROKEN,
    CORROSION,
    TYRE_CHANGE_DAMAGE,
    INGRESS,
    WRONG_TYPE,
    NOT_LEARNED,
    LOST,
    PREVENTIVE,
    CUSTOMER_WHEELS,
    UNKNOWN
}
