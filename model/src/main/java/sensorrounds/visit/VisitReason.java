package sensorrounds.visit;

/** Why the visit took place. */
public enum VisitReason {
    WARNING,
    TYRE_WORK,
    SERVICE,
    SEASONAL_CHANGE,
    INSPECTION,
    OTHER
}
