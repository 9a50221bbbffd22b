package sensorrounds.landmark;

/** How the first low battery report of a sensor came about, as was known on that day. */
public enum FirstLow {
    /** After a report that was not low, in air not colder than the limit. */
    IN_WARMTH,
    /** After a report that was not low, in air colder than the limit: cold lowers the voltage of a sound cell too. */
    IN_THE_COLD,
    /** After a report that was not low; nobody wrote down how cold it was. */
    TEMPERATURE_NOT_KNOWN,
    /** Low at its very first report: for how long it had been low is not known, so the life ahead is shorter. */
    LOW_FROM_THE_START
}
