package sensorrounds.numeric;

/**
 * Gamma function and its regularised incomplete forms P(a, x) and Q(a, x) = 1 - P(a, x), Abramowitz and Stegun (1964),
 * 6.1 and 6.5. The logarithm of Q stays finite where Q itself underflows.
 */
public final class GammaFunction {
    private static final int MAX_TERMS = 10_000;
    private static final double TINY = 1e-300;
    private static final double EPS = 1e-16;
    /** Lanczos (1964), SIAM J. Numer. Anal. B 1:86-96, with g = 7 and nine terms; error below 1e-14. */
    private static final double[] LANCZOS = {
        0.99999999999980993,
        676.5203681218851,
        -1259.1392167224028,
        771.32342877765313,
        -176.61502916214059,
        12.507343278686905,
        -0.13857109526572012,
        9.9843695780195716e-6,
        1.5056327351493116e-7
    };

    private GammaFunction() {}

    /** log Gamma(x) for x > 0. */
    public static double logGamma(double x) {
        if (!(x > 0)) {
            throw new IllegalArgumentException("log gamma needs x > 0, not " + x);
        }
        if (x < 0.5) {
            return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
        }
        double y = x - 1;
        double sum = LANCZOS[0];
        for (int i = 1; i < LANCZOS.length; i++) {
            sum += LANCZOS[i] / (y + i);
        }
        double t = y + 7.5;
        return 0.5 * Math.log(2 * Math.PI) + (y + 0.5) * Math.log(t) - t + Math.log(sum);
    }

    /** P(a, x), the share of a gamma law of shape a below x. */
    public static double regularizedLower(double a, double x) {
        return -Math.expm1(logRegularizedUpper(a, x));
    }

    /** log P(a, x) for a > 0, x >= 0; keeps its digits where P is small. */
    public static double logRegularizedLower(double a, double x) {
        if (!(a > 0 && x >= 0)) {
            throw new IllegalArgumentException("incomplete gamma needs a > 0 and x >= 0, not a " + a + ", x " + x);
        }
        if (x == 0) {
            return Double.NEGATIVE_INFINITY;
        }
        if (Double.isInfinite(x)) {
            return 0;
        }
        double logLead = a * Math.log(x) - x - logGamma(a);
        return x < a + 1 ? logLead + Math.log(series(a, x)) : Math.log1p(-Math.exp(logLead) * fraction(a, x));
    }

    /** log Q(a, x) for a > 0, x >= 0. */
    public static double logRegularizedUpper(double a, double x) {
        if (!(a > 0 && x >= 0)) {
            throw new IllegalArgumentException("incomplete gamma needs a > 0 and x >= 0, not a " + a + ", x " + x);
        }
        if (x == 0) {
            return 0;
        }
        if (Double.isInfinite(x)) {
            return Double.NEGATIVE_INFINITY;
        }
        double logLead = a * Math.log(x) - x - logGamma(a);
        return x < a + 1 ? Math.log1p(-Math.exp(logLead) * series(a, x)) : logLead + Math.log(fraction(a, x));
    }

    /** Abramowitz and Stegun 6.5.29: P = lead * sum x^n / (a (a+1) ... (a+n)). */
    static double series(double a, double x) {
        double term = 1 / a;
        double sum = term;
        for (int n = 1; n < MAX_TERMS && term > sum * EPS; n++) {
            term *= x / (a + n);
            sum += term;
        }
        return sum;
    }

    /** Abramowitz and Stegun 6.5.31 in its even part, by the modified Lentz rule. */
    static double fraction(double a, double x) {
        double b = x + 1 - a;
        double c = 1 / TINY;
        double d = 1 / b;
        double result = d;
        for (int n = 1; n < MAX_TERMS; n++) {
            double numerator = -n * (n - a);
            b += 2;
            d = numerator * d + b;
            d = 1 / (Math.abs(d) < TINY ? TINY : d);
            c = b + numerator / c;
            c = Math.abs(c) < TINY ? TINY : c;
            double factor = d * c;
            result *= factor;
            if (Math.abs(factor - 1) < EPS) {
                break;
            }
        }
        return result;
    }
}
