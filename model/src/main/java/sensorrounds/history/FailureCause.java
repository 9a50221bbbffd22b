package sensorrounds.history;

/** Competing causes of failure. */
public enum FailureCause {
    BATTERY,
    STEM_OR_CORROSION,
    TYRE_CHANGE_DAMAGE,
    INGRESS,
    UNKNOWN
}
