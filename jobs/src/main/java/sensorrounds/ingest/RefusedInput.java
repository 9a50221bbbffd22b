package sensorrounds.ingest;

import java.util.Optional;

/**
 * Input that cannot be used as a whole: the user's to mend, not ours. Bad rows are no such thing, they go to quarantine.
 * The command line answers with exit code 2 and this message.
 */
public final class RefusedInput extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final String what;
    private final String where;
    private final String value;
    private final String expected;
    private final String wayOut;

    /**
     * @param what what is wrong, a few words
     * @param where file, and line where there is one
     * @param value the value found; null when there is none to show
     * @param expected what would have been right
     * @param wayOut what to do about it
     */
    public RefusedInput(String what, String where, String value, String expected, String wayOut) {
        super(what + "\n  where: " + where + (value == null ? "" : "\n  found: " + value) + "\n  expected: " + expected
                + "\n  way out: " + wayOut);
        this.what = what;
        this.where = where;
        this.value = value;
        this.expected = expected;
        this.wayOut = wayOut;
    }

    /** Finds the refusal that a failed Spark job carries as its cause. */
    public static Optional<RefusedInput> in(Throwable failure) {
        for (Throwable t = failure; t != null; t = t.getCause()) {
            if (t instanceof RefusedInput refused) {
                return Optional.of(refused);
            }
        }
        return Optional.empty();
    }

    public String what() {
        return what;
    }

    public String where() {
        return where;
    }

    public String value() {
        return value;
    }

    public String expected() {
        return expected;
    }

    public String wayOut() {
        return wayOut;
    }
}
