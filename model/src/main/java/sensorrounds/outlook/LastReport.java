package sensorrounds.outlook;

/** State of a sensor at its last reading, the covariate of its outlook. */
public enum LastReport {
    /** Answered, nothing amiss. */
    SOUND,
    /** Answered, woke slowly beyond what its reader explains. */
    SLOW_TO_WAKE,
    /** Answered with a low battery report. */
    LOW_BATTERY,
    /** Did not answer at the last visit; answered before. */
    SILENT_ONCE
}
