package sensorrounds.numeric;

/**
 * Law of Y = log(G / a) for a gamma variable G of shape a and scale 1, whose mean is a: the form in which nothing cancels
 * when a is large, where Y is nearly normal with variance 1/a. Abramowitz and Stegun (1964), 6.1.41 and 6.5.
 */
public final class LogGammaLaw {
    private static final double HALF_LOG_2PI = 0.5 * Math.log(2 * Math.PI);
    /** From here the six terms of Stirling's series are exact to the last bits. */
    private static final double STIRLING_FROM = 10;

    private LogGammaLaw() {}

    /** log of the density of Y at y: a (y - (e^y - 1)) + log(a / 2 pi) / 2 - Stirling's remainder. */
    public static double logDensity(double a, double y) {
        return -a * excess(y) * y * y + 0.5 * Math.log(a) - HALF_LOG_2PI - stirlingRemainder(a);
    }

    /** log P(Y > y) = log Q(a, a e^y). */
    public static double logUpper(double a, double y) {
        double x = a * Math.exp(y);
        if (x == Double.POSITIVE_INFINITY) {
            return Double.NEGATIVE_INFINITY;
        }
        double lead = logDensity(a, y);
        return x < a + 1
                ? Math.log1p(-Math.min(1, Math.exp(lead) * GammaFunction.series(a, x)))
                : lead + Math.log(GammaFunction.fraction(a, x));
    }

    /** log P(Y <= y) = log P(a, a e^y). */
    public static double logLower(double a, double y) {
        double x = a * Math.exp(y);
        if (x == Double.POSITIVE_INFINITY) {
            return 0;
        }
        double lead = logDensity(a, y);
        return x < a + 1
                ? lead + Math.log(GammaFunction.series(a, x))
                : Math.log1p(-Math.min(1, Math.exp(lead) * GammaFunction.fraction(a, x)));
    }

    /** (e^y - 1 - y) / y^2, which is 1/2 at 0. */
    public static double excess(double y) {
        if (Math.abs(y) > 0.5) {
            return (Math.expm1(y) - y) / (y * y);
        }
        double sum = 0;
        for (int n = 18; n >= 2; n--) {
            sum = (1 + sum * y) / n;
        }
        return sum;
    }

    /** log Gamma(a) - ((a - 1/2) log a - a + log(2 pi) / 2): Abramowitz and Stegun 6.1.41. */
    public static double stirlingRemainder(double a) {
        if (a < STIRLING_FROM) {
            return GammaFunction.logGamma(a) - ((a - 0.5) * Math.log(a) - a + HALF_LOG_2PI);
        }
        double s = 1 / (a * a);
        return (1 / 12.0
                        - s * (1 / 360.0 - s * (1 / 1260.0 - s * (1 / 1680.0 - s * (1 / 1188.0 - s * 691 / 360360.0)))))
                / a;
    }
}
