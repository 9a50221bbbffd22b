package sensorrounds.visit;

/** What came of the relearn. Attempted means that nobody wrote down whether it took. */
public enum RelearnResult {
    DONE,
    ATTEMPTED,
    FAILED
}
