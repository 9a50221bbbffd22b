package sensorrounds.intake;

import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.util.Arrays;

/**
 * A form of date or date-time given by letters as in {@link java.time.format.DateTimeFormatter}: {@code yyyy} or
 * {@code yy}, {@code MM}, {@code dd}, {@code HH}, {@code mm}, {@code ss}; a single {@code M}, {@code d} or {@code H}
 * takes one or two digits; every other character, and text in single quotes, stands for itself. Compiled once per file
 * and read without allocation but the result.
 */
final class DatePattern implements DateForm {
    private static final long serialVersionUID = 1L;
    private static final String LETTERS = "yMdHms";
    private static final byte MONTH = 1;
    private static final byte DAY = 2;
    /** Two-digit years run from this year over one century. */
    private static final int FIRST_TWO_DIGIT_YEAR = 1990;

    private final String pattern;
    /** For each token: index into LETTERS, or -1 for a literal character. */
    private final byte[] kinds;
    /** Digits of a number (1 means one or two), or the literal character. */
    private final char[] details;

    private final DatePattern exchanged;

    private DatePattern(String pattern, byte[] kinds, char[] details, DatePattern exchanged) {
        this.pattern = pattern;
        this.kinds = kinds;
        this.details = details;
        this.exchanged = exchanged;
    }

    /** @throws IllegalArgumentException when the pattern has other letters, or lacks year, month or day */
    static DatePattern of(String pattern) {
        byte[] kinds = new byte[pattern.length()];
        char[] details = new char[pattern.length()];
        boolean[] seen = new boolean[LETTERS.length()];
        int tokens = 0;
        boolean quoted = false;
        int i = 0;
        while (i < pattern.length()) {
            char c = pattern.charAt(i);
            int kind = quoted ? -1 : LETTERS.indexOf(c);
            int run = 1;
            if (c == '\'') {
                quoted = !quoted;
                i++;
                continue;
            }
            if (kind >= 0) {
                while (i + run < pattern.length() && pattern.charAt(i + run) == c) {
                    run++;
                }
                boolean widthFits = c == 'y' ? run == 2 || run == 4 : run <= 2;
                if (!widthFits || seen[kind]) {
                    throw unsupported(pattern);
                }
                seen[kind] = true;
            } else if (!quoted && Character.isLetter(c)) {
                throw unsupported(pattern);
            }
            kinds[tokens] = (byte) kind;
            details[tokens++] = kind >= 0 ? (char) run : c;
            i += run;
        }
        if (quoted || !seen[0] || !seen[1] || !seen[2] || seen[3] != seen[4]) {
            throw unsupported(pattern);
        }
        kinds = Arrays.copyOf(kinds, tokens);
        details = Arrays.copyOf(details, tokens);
        byte[] other = kinds.clone();
        for (int t = 0; t < tokens; t++) {
            other[t] = kinds[t] == MONTH ? DAY : kinds[t] == DAY ? MONTH : kinds[t];
        }
        return new DatePattern(pattern, kinds, details, new DatePattern(pattern, other, details, null));
    }

    private static IllegalArgumentException unsupported(String pattern) {
        return new IllegalArgumentException("date form \"" + pattern
                + "\"; expected year (yyyy or yy), month (MM or M) and day (dd or d), for a time also HH, mm and"
                + " optionally ss, with separators such as . / - : between them");
    }

    @Override
    public boolean hasTime() {
        return pattern.indexOf('H') >= 0;
    }

    @Override
    public boolean hasTwoDigitYear() {
        return !pattern.contains("yyyy");
    }

    @Override
    public String pattern() {
        return pattern;
    }

    @Override
    public long notes() {
        return Note.DATE_FORMAT.bit() | (hasTwoDigitYear() ? Note.DATE_TWO_DIGIT_YEAR.bit() : 0);
    }

    @Override
    public DatePattern exchanged() {
        return exchanged;
    }

    @Override
    public LocalDateTime read(String text) {
        int[] parts = new int[LETTERS.length()];
        int at = 0;
        for (int t = 0; t < kinds.length; t++) {
            if (kinds[t] < 0) {
                if (at >= text.length() || text.charAt(at) != details[t]) {
                    return null;
                }
                at++;
                continue;
            }
            int most = details[t] == 1 ? 2 : details[t];
            int value = 0;
            int digits = 0;
            while (digits < most && at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9') {
                value = value * 10 + (text.charAt(at++) - '0');
                digits++;
            }
            if (digits < details[t]) {
                return null;
            }
            parts[kinds[t]] = value;
        }
        if (at != text.length()) {
            return null;
        }
        int year = hasTwoDigitYear() ? century(parts[0]) : parts[0];
        try {
            return LocalDateTime.of(year, parts[1], parts[2], parts[3], parts[4], parts[5]);
        } catch (DateTimeException e) {
            return null;
        }
    }

    private static int century(int twoDigits) {
        int base = FIRST_TWO_DIGIT_YEAR % 100;
        return FIRST_TWO_DIGIT_YEAR - base + twoDigits + (twoDigits < base ? 100 : 0);
    }
}
