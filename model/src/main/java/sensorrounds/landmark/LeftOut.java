package sensorrounds.landmark;

/** Why a life has no place in a landmark sample. */
public enum LeftOut {
    /** Its age is not known, or it is left out of all survival samples. */
    NO_AGE,
    /** It was not tried within the window before the landmark age. */
    NOT_TRIED_THEN,
    /** It was known failed by then. */
    ALREADY_FAILED,
    /** It was tried, but the visit told nothing about it. */
    NO_REPORT,
    /** No later contact tells what became of it. */
    NO_LATER_CONTACT,
    /** Its battery was never reported low. */
    NEVER_LOW
}
