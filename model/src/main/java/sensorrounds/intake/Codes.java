package sensorrounds.intake;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.IsoFields;
import java.util.Locale;

/** The codes stamped on parts or sent by them: sensor IDs, vehicle identification numbers, tyre dates, fault codes. */
final class Codes {
    private static final int MIN_ID_DIGITS = 6;
    private static final int MAX_ID_DIGITS = 8;
    private static final int VIN_LENGTH = 17;
    private static final int VIN_CHECK_PLACE = 8;
    /** Weights of 49 CFR 565.15(c), table IV; the check digit itself has none. */
    private static final int[] VIN_WEIGHTS = {8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2};
    /** Values of the letters A to Z in 49 CFR 565.15(c), table III; −1 for I, O and Q, which do not occur. */
    private static final int[] VIN_LETTERS = {
        1, 2, 3, 4, 5, 6, 7, 8, -1, 1, 2, 3, 4, 5, -1, 7, -1, 9, 2, 3, 4, 5, 6, 7, 8, 9
    };

    private Codes() {}

    /** @return the ID in upper case without 0x, or null when it is not 6 to 8 hexadecimal digits */
    static String sensorId(String text) {
        boolean prefixed = text.startsWith("0x") || text.startsWith("0X");
        int from = prefixed ? 2 : 0;
        int length = text.length() - from;
        if (length < MIN_ID_DIGITS || length > MAX_ID_DIGITS) {
            return null;
        }
        boolean lower = false;
        for (int i = from; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c >= 'a' && c <= 'f') {
                lower = true;
            } else if (!(c >= '0' && c <= '9' || c >= 'A' && c <= 'F')) {
                return null;
            }
        }
        String digits = prefixed ? text.substring(from) : text;
        return lower ? digits.toUpperCase(Locale.ROOT) : digits;
    }

    /** True for an ID all of zeros or all of Fs, which readers write for none (common practice, no source). */
    static boolean isPlaceholder(String id) {
        char first = id.charAt(0);
        if (first != '0' && first != 'F') {
            return false;
        }
        for (int i = 1; i < id.length(); i++) {
            if (id.charAt(i) != first) {
                return false;
            }
        }
        return true;
    }

    /** What is odd about a vehicle identification number in upper case (ISO 3779; 49 CFR 565.15), as note bits. */
    static long vinNotes(String vin) {
        if (vin.length() != VIN_LENGTH) {
            return Note.VIN_FORM.bit();
        }
        int sum = 0;
        for (int i = 0; i < VIN_LENGTH; i++) {
            char c = vin.charAt(i);
            int value = c >= '0' && c <= '9' ? c - '0' : c >= 'A' && c <= 'Z' ? VIN_LETTERS[c - 'A'] : -1;
            if (value < 0) {
                return Note.VIN_FORM.bit();
            }
            sum += value * VIN_WEIGHTS[i];
        }
        int remainder = sum % 11;
        char check = remainder == 10 ? 'X' : (char) ('0' + remainder);
        return vin.charAt(VIN_CHECK_PLACE) == check ? 0 : Note.VIN_CHECK_DIGIT.bit();
    }

    /**
     * Week and year of manufacture, the last four digits of the tyre identification number since 2000 (49 CFR
     * 574.5(b)(4)), taken as a week of ISO 8601.
     *
     * @return the Monday of that week, or null when there is no such week
     */
    static LocalDate tyreDate(String text) {
        int value = text.length() == 4 ? Numbers.readWhole(text) : -1;
        int week = value / 100;
        if (value < 0 || week < 1) {
            return null;
        }
        // The 4th of January lies in week 1 by definition.
        LocalDate fourth = LocalDate.of(2000 + value % 100, 1, 4);
        return week > IsoFields.WEEK_OF_WEEK_BASED_YEAR.rangeRefinedBy(fourth).getMaximum()
                ? null
                : fourth.with(DayOfWeek.MONDAY).plusWeeks(week - 1L);
    }

    /**
     * A fault code as in SAE J2012 / ISO 15031-6: letter, digit 0 to 3, three hexadecimal digits, and possibly two more
     * for the failure type, which are set off by a hyphen here whatever the log used.
     *
     * @return the code in upper case, or null when it is none
     */
    static String faultCode(String text) {
        String code = text.toUpperCase(Locale.ROOT);
        if (code.length() < 5 || "PCBU".indexOf(code.charAt(0)) < 0 || code.charAt(1) < '0' || code.charAt(1) > '3') {
            return null;
        }
        for (int i = 2; i < 5; i++) {
            if (!isHex(code.charAt(i))) {
                return null;
            }
        }
        if (code.length() == 5) {
            return code;
        }
        int type = "-: ".indexOf(code.charAt(5)) >= 0 ? 6 : 5;
        boolean fits = code.length() == type + 2 && isHex(code.charAt(type)) && isHex(code.charAt(type + 1));
        return fits ? code.substring(0, 5) + "-" + code.substring(type) : null;
    }

    private static boolean isHex(char c) {
        return c >= '0' && c <= '9' || c >= 'A' && c <= 'F';
    }
}
