package sensorrounds.replacement;

/** What the ranking suggests. It is never a verdict on safety. */
public enum Advice {
    /** Replacing now is expected to cost less than waiting over the horizon. */
    REPLACE_NOW,
    /** Not worth a stop of its own, but worth it when the vehicle stands in the workshop anyway. */
    AT_NEXT_STOP,
    /** Keeping it is expected to cost less. */
    KEEP,
    /** Sensors fail here one after the other: look at receiver, wiring and place before fitting another. */
    CHECK_PLACE_FIRST
}
