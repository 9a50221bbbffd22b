package sensorrounds.numeric;

/**
 * Arithmetic on logarithms of probabilities without underflow or cancellation. Source: Maechler (2012), Accurately
 * Computing log(1 - exp(-|a|)), for where to switch between the two forms.
 */
public final class LogSpace {
    private static final double LOG_HALF = -Math.log(2);

    private LogSpace() {}

    /** log(1 - exp(x)) for x <= 0; minus infinity at 0; NaN for a positive or NaN argument. */
    public static double log1mExp(double x) {
        if (!(x <= 0)) {
            return Double.NaN;
        }
        return x > LOG_HALF ? Math.log(-Math.expm1(x)) : Math.log1p(-Math.exp(x));
    }

    /** log(exp(a) - exp(b)) for b <= a; b may be minus infinity. */
    public static double logDifference(double a, double b) {
        return b == Double.NEGATIVE_INFINITY ? a : a + log1mExp(b - a);
    }

    /** log(1 + exp(x)). */
    public static double softplus(double x) {
        return x > 0 ? x + Math.log1p(Math.exp(-x)) : Math.log1p(Math.exp(x));
    }
}
