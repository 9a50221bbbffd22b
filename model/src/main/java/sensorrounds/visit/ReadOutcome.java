package sensorrounds.visit;

/** What came of trying to wake the sensor of one wheel. Three of the four say nothing of a dead sensor. */
public enum ReadOutcome {
    OK,
    NO_ANSWER,
    NOT_TRIED,
    NOT_PRESENT
}
