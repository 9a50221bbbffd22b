package sensorrounds.intake;

/**
 * One field that cannot be read. It is thrown only inside the intake, where it ends the reading of one row and becomes a
 * {@link Rejection}; it carries no stack trace, since bad rows are ordinary.
 */
public final class FieldProblem extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final RejectionRule rule;
    private final String field;
    private final String rawValue;
    private final String expected;

    /**
     * @param field canonical name, or the name as written where it is not known
     * @param rawValue the value as written; null when there is none
     * @param expected what would have been right, in words
     */
    public FieldProblem(RejectionRule rule, String field, String rawValue, String expected) {
        super(rule.words() + ": " + field + " = " + rawValue + ", expected " + expected, null, false, false);
        this.rule = rule;
        this.field = field;
        this.rawValue = rawValue;
        this.expected = expected;
    }

    public RejectionRule rule() {
        return rule;
    }

    public String field() {
        return field;
    }

    public String rawValue() {
        return rawValue;
    }

    public String expected() {
        return expected;
    }
}
