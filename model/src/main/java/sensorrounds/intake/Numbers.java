package sensorrounds.intake;

/**
 * Reads decimal numbers without regular expressions. The short path is exact: a mantissa below 2^53 divided by a power of
 * ten up to 10^22 is rounded once, as IEEE 754 asks, so it gives what {@link Double#parseDouble} gives (Clinger, How to
 * read floating point numbers accurately, PLDI 1990).
 */
final class Numbers {
    private static final int MAX_EXACT_DIGITS = 15;
    private static final double[] POWERS = {
        1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15
    };

    private Numbers() {}

    /** @return the number, or NaN when the text is no finite number with this decimal mark */
    static double read(String text, char mark) {
        int n = text.length();
        int i = 0;
        boolean negative = false;
        if (n > 0 && (text.charAt(0) == '-' || text.charAt(0) == '+')) {
            negative = text.charAt(0) == '-';
            i = 1;
        }
        long mantissa = 0;
        int digits = 0;
        int fraction = -1;
        for (; i < n; i++) {
            char c = text.charAt(i);
            if (c >= '0' && c <= '9') {
                if (++digits > MAX_EXACT_DIGITS) {
                    return longForm(text, mark);
                }
                mantissa = mantissa * 10 + (c - '0');
                if (fraction >= 0) {
                    fraction++;
                }
            } else if (c == mark && fraction < 0) {
                fraction = 0;
            } else {
                return longForm(text, mark);
            }
        }
        if (digits == 0) {
            return Double.NaN;
        }
        double value = fraction > 0 ? mantissa / POWERS[fraction] : mantissa;
        return negative ? -value : value;
    }

    /** Many digits, or an exponent. */
    private static double longForm(String text, char mark) {
        boolean digit = false;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean isDigit = c >= '0' && c <= '9';
            digit |= isDigit;
            // parseDouble would also take "NaN", "1f" and hexadecimal forms.
            if (!isDigit && c != mark && c != '-' && c != '+' && (!digit || c != 'e' && c != 'E')) {
                return Double.NaN;
            }
        }
        try {
            double value = Double.parseDouble(mark == '.' ? text : text.replace(mark, '.'));
            return Double.isInfinite(value) ? Double.NaN : value;
        } catch (NumberFormatException e) {
            return Double.NaN;
        }
    }

    /** @return the whole number, or -1 when the text is not one to nine digits */
    static int readWhole(String text) {
        int n = text.length();
        if (n == 0 || n > 9) {
            return -1;
        }
        int value = 0;
        for (int i = 0; i < n; i++) {
            char c = text.charAt(i);
            if (c < '0' || c > '9') {
                return -1;
            }
            value = value * 10 + (c - '0');
        }
        return value;
    }
}
