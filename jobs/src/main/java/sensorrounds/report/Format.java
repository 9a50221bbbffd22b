package sensorrounds.report;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;

/**
 * Figures for people: thin spaces between thousands, a space before the per cent sign (ISO 80000-1, 7.3.1 and 7.3.4), and
 * no more digits than the figure bears. Values that are not numbers read as a dash.
 */
final class Format {
    static final String NONE = "–";

    private static final char THIN = '\u202f';
    private static final char MINUS = '\u2212';
    /** Largest number under one. */
    private static final double MOST = Math.nextDown(1.0);

    private static final int DIGITS = 3;
    private static final double DAYS_A_YEAR = 365.25;
    private static final double DAYS_A_MONTH = DAYS_A_YEAR / 12;

    private Format() {}

    /** 1 240. */
    static String whole(long n) {
        String digits = Long.toString(Math.abs(n));
        StringBuilder s = new StringBuilder();
        for (int i = 0; i < digits.length(); i++) {
            if (i > 0 && (digits.length() - i) % 3 == 0) {
                s.append(THIN);
            }
            s.append(digits.charAt(i));
        }
        return n < 0 ? MINUS + s.toString() : s.toString();
    }

    static String whole(double x) {
        return Double.isFinite(x) ? whole(Math.round(x)) : NONE;
    }

    /** A share that was counted, to one decimal: 12.4 %. A share that is not nought is never written as nought. */
    static String share(double share) {
        if (!Double.isFinite(share)) {
            return NONE;
        }
        if (share > 0 && share < 0.0005) {
            return "<\u00a00.1" + THIN + "%";
        }
        return fixed(share * 100, 1) + THIN + "%";
    }

    static String share(long part, long whole) {
        return whole == 0 ? NONE : share((double) part / whole);
    }

    /** A probability from a model, in whole per cent: more digits would pretend to more than the fit knows. */
    static String chance(double p) {
        return Double.isFinite(p) ? percentDigits(p) + THIN + "%" : NONE;
    }

    /** As {@link #chance}, and never quite certain: a posterior probability that rounds to one is "> 99 %" too. */
    static String sure(double p) {
        return chance(Math.min(p, MOST));
    }

    /** Limits of a probability: 31–56 %. */
    static String chances(double lower, double upper) {
        if (!Double.isFinite(lower) || !Double.isFinite(upper)) {
            return NONE;
        }
        return Math.round(lower * 100) + "–" + Math.round(upper * 100) + THIN + "%";
    }

    /** A probability with its limits, where they are known: 42 % (31–56 %). */
    static String withLimits(double p, double lower, double upper) {
        boolean known = Double.isFinite(lower) && Double.isFinite(upper);
        return known ? chance(p) + " (" + chances(lower, upper) + ")" : chance(p);
    }

    /** Whole units of the currency. */
    static String money(String currency, double amount) {
        return Double.isFinite(amount) ? currency + "\u00a0" + whole(Math.round(amount)) : NONE;
    }

    /** An age: months under two years, else years to one decimal. Display only; all reckoning is in days. */
    static String age(Integer days) {
        if (days == null) {
            return NONE;
        }
        if (days < 2 * DAYS_A_YEAR) {
            return count(Math.round(days / DAYS_A_MONTH), "month");
        }
        return years(days);
    }

    static String years(double days) {
        return Double.isFinite(days) ? fixed(days / DAYS_A_YEAR, 1) + "\u00a0years" : NONE;
    }

    static double inYears(double days) {
        return days / DAYS_A_YEAR;
    }

    static int days(double years) {
        return (int) Math.round(years * DAYS_A_YEAR);
    }

    /** A number with its noun: 1 wheel, 1 240 wheels. */
    static String count(long n, String noun) {
        return count(n, noun, noun + "s");
    }

    static String count(long n, String one, String many) {
        return whole(n) + "\u00a0" + (n == 1 ? one : many);
    }

    /** Three significant digits, without an exponent. */
    static String figure(double x) {
        if (!Double.isFinite(x)) {
            return NONE;
        }
        if (x == 0) {
            return "0";
        }
        BigDecimal rounded = new BigDecimal(x).round(new MathContext(DIGITS, RoundingMode.HALF_EVEN));
        if (rounded.abs().compareTo(BigDecimal.valueOf(100)) >= 0) {
            return whole(rounded.longValue());
        }
        // A closing nought is a digit too: 1.50, not 1.5.
        int decimals = DIGITS - (rounded.precision() - rounded.scale());
        return rounded.setScale(decimals, RoundingMode.HALF_EVEN)
                .toPlainString()
                .replace('-', MINUS);
    }

    static String fixed(double x, int decimals) {
        if (!Double.isFinite(x)) {
            return NONE;
        }
        String s = String.format(Locale.ROOT, "%." + decimals + "f", Math.abs(x));
        int point = s.indexOf('.');
        String units = point < 0 ? s : s.substring(0, point);
        String grouped = whole(Long.parseLong(units)) + (point < 0 ? "" : s.substring(point));
        boolean nought = s.chars().noneMatch(c -> c >= '1' && c <= '9');
        return x < 0 && !nought ? MINUS + grouped : grouped;
    }

    /** A number for a machine: the sort key of a cell. Empty when there is none. */
    static String key(double x) {
        return Double.isFinite(x) ? BigDecimal.valueOf(x).stripTrailingZeros().toPlainString() : "";
    }

    private static String percentDigits(double p) {
        if (p > 0 && p < 0.01) {
            return "<\u00a01";
        }
        if (p < 1 && p > 0.99) {
            return ">\u00a099";
        }
        return whole(Math.round(p * 100));
    }
}
