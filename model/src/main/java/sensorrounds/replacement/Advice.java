package sensorrounds.replacement;

/** What the ranking suggests. It is never a verdict on safety. */
public enum Advice {
    /** Bring the vehicle in: the stop as a whole is expected to save more than it costs. */
    REPLACE_NOW(Urgency.NOW),
    /** Probably dead since it was last heard, or the vehicle is out of sight: go and read it, which costs less. */
    READ_FIRST(Urgency.NOW),
    /** Sensors fail here one after the other: look at receiver, wiring and place before fitting another. */
    CHECK_PLACE_FIRST(Urgency.NOW),
    /** Not worth a stop of its own, but worth it when the vehicle stands in the workshop anyway. */
    AT_NEXT_STOP(Urgency.WHEN_IT_SUITS),
    /** Its wheel set is in store: replace it when the set goes on. */
    AT_SEASONAL_CHANGE(Urgency.WHEN_IT_SUITS),
    /** Spare wheel: nothing breaks down with its sensor, replace it when the wheel is off. */
    WHEN_OFF(Urgency.WHEN_IT_SUITS),
    /** Keeping it is expected to cost less, but it gave a sign of weakness. */
    WATCH(Urgency.LOOK),
    /** Keeping it is expected to cost less. */
    KEEP(Urgency.NONE);

    /** How soon something is to be done, soonest first. */
    public enum Urgency {
        NOW,
        WHEN_IT_SUITS,
        LOOK,
        NONE
    }

    private final Urgency urgency;

    Advice(Urgency urgency) {
        this.urgency = urgency;
    }

    public Urgency urgency() {
        return urgency;
    }

    /** Whether it asks for a new sensor to be fitted, now or later. */
    public boolean fits() {
        return this == REPLACE_NOW || this == AT_NEXT_STOP || this == AT_SEASONAL_CHANGE || this == WHEN_OFF;
    }
}
