package sensorrounds.intake;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The version of the input contract, docs/visit-log.md. Within one major version a release reads every minor one: what a
 * later minor version adds is left out and counted. Another major version is refused.
 */
public final class ContractVersion {
    /** Major version this release reads. */
    public static final int MAJOR = 1;
    /** Newest minor version this release knows whole. */
    public static final int MINOR = 1;

    private static final Pattern FORM = Pattern.compile("([0-9]{1,4})\\.([0-9]{1,4})");

    private ContractVersion() {}

    /** The version as it is written. */
    public static String text() {
        return MAJOR + "." + MINOR;
    }

    /**
     * True when the text names a minor version after the one this release knows, so that names unknown here are no slips.
     *
     * @param text the version as written; null when none is
     */
    public static boolean isLaterMinor(String text) {
        Matcher m = text == null ? null : FORM.matcher(text.strip());
        return m != null
                && m.matches()
                && Integer.parseInt(m.group(1)) == MAJOR
                && Integer.parseInt(m.group(2)) > MINOR;
    }

    /**
     * @param text the version as written; null for the version of this release
     * @throws FieldProblem for another major version, and for what is no version
     */
    static void check(String text) {
        if (text == null) {
            return;
        }
        Matcher m = FORM.matcher(text);
        if (!m.matches() || Integer.parseInt(m.group(1)) != MAJOR) {
            throw new FieldProblem(
                    RejectionRule.OTHER_CONTRACT,
                    Field.CONTRACT_VERSION.key(),
                    text,
                    MAJOR + ".0 or a later " + MAJOR + ".x");
        }
    }
}
