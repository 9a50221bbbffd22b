package sensorrounds.run;

/** The command line or the settings file asks for something that cannot be. The way out stands in the message. */
public final class UsageError extends RuntimeException {
    private static final long serialVersionUID = 1;

    /**
     * @param what what is wrong
     * @param where option, or file and line
     * @param value what was given
     * @param expected what would do
     * @param wayOut what to do about it
     */
    public UsageError(String what, String where, String value, String expected, String wayOut) {
        super(what + "\n  where:    " + where + "\n  found:    " + value + "\n  expected: " + expected
                + "\n  way out:  " + wayOut);
    }
}
