package sensorrounds.recurrent;

/** What came of fitting a rate of events that changes with time. */
public enum RateStatus {
    CONVERGED,
    /** Fewer than two events. */
    TOO_FEW_EVENTS,
    /** The likelihood rises without end: the events leave the shape open. */
    NO_FINITE_MAXIMUM
}
