package sensorrounds.story;

/** A run whose tables lack a column that this version reads: another version wrote it. */
public final class OtherVersion extends RuntimeException {
    private static final long serialVersionUID = 1;

    OtherVersion(String column) {
        super("no column " + column);
    }
}
