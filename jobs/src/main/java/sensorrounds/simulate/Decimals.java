package sensorrounds.simulate;

/** Plain decimal text, fast and the same everywhere. */
final class Decimals {
    private static final long[] TENS = {1, 10, 100, 1000};

    private Decimals() {}

    /** Rounded to at most {@code places} decimals, without zeros at the end. */
    static String text(double value, int places) {
        long scaled = Math.round(value * TENS[places]);
        long whole = Math.abs(scaled) / TENS[places];
        long rest = Math.abs(scaled) % TENS[places];
        int shown = places;
        while (shown > 0 && rest % 10 == 0) {
            rest /= 10;
            shown--;
        }
        StringBuilder s = new StringBuilder(12);
        if (scaled < 0) {
            s.append('-');
        }
        s.append(whole);
        if (shown > 0) {
            String digits = Long.toString(rest);
            s.append('.');
            s.append("0".repeat(shown - digits.length())).append(digits);
        }
        return s.toString();
    }
}
