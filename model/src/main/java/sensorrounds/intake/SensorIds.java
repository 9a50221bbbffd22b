package sensorrounds.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Reads sensor IDs by the form their file has. What a spreadsheet or a hand has spoiled is refused with a hint, not mended. */
final class SensorIds {
    private static final long MAX_ID = 0xFFFF_FFFFL;
    private static final int MAX_DECIMAL_DIGITS = 10;
    private static final int MOST_CANDIDATES = 4;
    /** Letters that are no hexadecimal digits, and the digits they are written for (common practice, no source). */
    private static final String LETTERS = "OQIJLSGZ";

    private static final String DIGITS = "00111562";

    private final FieldReader in;
    private final IdForm form;

    SensorIds(FieldReader in, IdForm form) {
        this.in = in;
        this.form = form;
    }

    /** @return the ID as hexadecimal digits, or null for a blank field */
    String read(Field field) {
        String text = in.text(field);
        if (text == null) {
            return null;
        }
        String id = form.base() == IdForm.Base.DECIMAL ? fromDecimal(field, text) : fromHex(field, text);
        if (Codes.isPlaceholder(id)) {
            throw new FieldProblem(RejectionRule.PLACEHOLDER_ID, field.key(), text, "the ID of one sensor, or a blank");
        }
        // The same string when nothing had to be changed.
        if (id != text && form.base() == IdForm.Base.HEX) {
            in.note(Note.ID_NORMALISED.bit());
        }
        return id;
    }

    private String fromHex(Field field, String text) {
        String id = Codes.sensorId(text);
        boolean zerosMayBeLost = in.isNumber(field) && form.digits() == null && text.length() < IdForm.MAX_DIGITS;
        if (zerosMayBeLost && isDecimal(text)) {
            throw asNumber(field, text, withZeros(text));
        }
        if (id != null && (form.digits() == null || id.length() == form.digits())) {
            in.evidence((isDecimal(id) ? Evidence.ID_DIGITS_ONLY : Evidence.ID_WITH_LETTER).bit());
            return id;
        }
        if (form.digits() != null && isDecimal(text) && text.length() < form.digits()) {
            in.note(Note.ID_PADDED.bit());
            return "0".repeat(form.digits() - text.length()) + text;
        }
        if (isNumberForm(text)) {
            throw asNumber(field, text, candidates(text));
        }
        throw new FieldProblem(RejectionRule.BAD_SENSOR_ID, field.key(), text, digitsExpected() + hint(text));
    }

    private String fromDecimal(Field field, String text) {
        if (isNumberForm(text)) {
            throw asNumber(field, text, List.of());
        }
        boolean fits = isDecimal(text) && text.length() <= MAX_DECIMAL_DIGITS && Long.parseLong(text) <= MAX_ID;
        int digits = form.digits() == null ? IdForm.MAX_DIGITS : form.digits();
        String id = fits ? String.format(Locale.ROOT, "%0" + digits + "X", Long.parseLong(text)) : null;
        if (id == null || id.length() > digits) {
            throw new FieldProblem(
                    RejectionRule.BAD_SENSOR_ID,
                    field.key(),
                    text,
                    "decimal digits up to " + Long.toString((1L << 4 * digits) - 1) + ", as idBase of the layout says");
        }
        in.note(Note.ID_FROM_DECIMAL.bit());
        return id;
    }

    private String digitsExpected() {
        return (form.digits() == null
                        ? IdForm.MIN_DIGITS + " to " + IdForm.MAX_DIGITS
                        : form.digits().toString()) + " hexadecimal digits (0-9, A-F)";
    }

    private String hint(String text) {
        if (isDecimal(text) && text.length() > IdForm.MAX_DIGITS && text.length() <= MAX_DECIMAL_DIGITS) {
            return "; if the reader writes decimal numbers, give idBase \"decimal\" in a layout";
        }
        StringBuilder mended = new StringBuilder(text.toUpperCase(Locale.ROOT));
        for (int i = 0; i < mended.length(); i++) {
            int letter = LETTERS.indexOf(mended.charAt(i));
            if (letter >= 0) {
                mended.setCharAt(i, DIGITS.charAt(letter));
            }
        }
        String near = Codes.sensorId(mended.toString());
        return near == null ? "" : "; copied by hand it may stand for " + near;
    }

    private static FieldProblem asNumber(Field field, String text, List<String> candidates) {
        return new FieldProblem(
                RejectionRule.ID_AS_NUMBER,
                field.key(),
                text,
                "the ID as text"
                        + (candidates.isEmpty()
                                ? "; its last digits may be lost"
                                : "; unless digits were lost it was " + String.join(" or ", candidates)));
    }

    private static boolean isDecimal(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) < '0' || text.charAt(i) > '9') {
                return false;
            }
        }
        return !text.isEmpty();
    }

    /** A number with a decimal mark or a signed exponent: 1.234E+59, 12345678.0. */
    private static boolean isNumberForm(String text) {
        boolean marked = text.indexOf('.') > 0 || text.indexOf(',') > 0 || text.indexOf('+') > 0;
        return marked && !Double.isNaN(Numbers.read(text, text.indexOf(',') > 0 ? ',' : '.'));
    }

    /** A number has no leading zeros: these are the IDs that may have been typed. */
    private static List<String> withZeros(String digits) {
        List<String> found = new ArrayList<>();
        for (String id = digits; id.length() <= IdForm.MAX_DIGITS; id = "0" + id) {
            if (id.length() >= IdForm.MIN_DIGITS) {
                found.add(id);
            }
        }
        return found;
    }

    /** The IDs of the form digits, E, digits that have this value: 1.234E+59 was 1234E56, 12340E55 or 01234E56. */
    private List<String> candidates(String text) {
        String upper = text.toUpperCase(Locale.ROOT).replace(',', '.');
        int e = upper.indexOf('E');
        int point = upper.indexOf('.');
        String mantissa = e < 0 ? upper : upper.substring(0, e);
        String digits = mantissa.replace(".", "").replaceFirst("0+$", "");
        int decimals = point < 0 ? 0 : digits.length() - point;
        int exponent = (e < 0 ? 0 : Integer.parseInt(upper.substring(e + 1).replace("+", ""))) - decimals;
        List<String> found = new ArrayList<>();
        int least = form.digits() == null ? IdForm.MIN_DIGITS : form.digits();
        int most = form.digits() == null ? IdForm.MAX_DIGITS : form.digits();
        for (int zeros = 0; zeros <= exponent && zeros < most; zeros++) {
            String whole = digits + "0".repeat(zeros);
            String id = exponent == zeros && e < 0 ? whole : whole + "E" + (exponent - zeros);
            for (; id.length() <= most; id = "0" + id) {
                if (id.length() >= least && found.size() < MOST_CANDIDATES) {
                    found.add(id);
                }
            }
        }
        return found;
    }
}
