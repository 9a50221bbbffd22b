package sensorrounds.condition;

/**
 * The logarithm of the gamma function and its first two derivatives for x > 0, by the asymptotic series after shifting
 * the argument upwards: Abramowitz and Stegun (1964), 6.1.41, 6.3.18 and 6.4.12 with the recurrences 6.1.15, 6.3.5 and
 * 6.4.6. Absolute error below 1e-13 for arguments up to 100.
 */
public final class LogGamma {
    /** From here the first term left out of each series is below 1e-16. */
    private static final double SHIFT = 15;

    private static final double HALF_LOG_TWO_PI = 0.9189385332046727;

    private LogGamma() {}

    /** log Gamma(x). */
    public static double of(double x) {
        requirePositive(x);
        double product = 1;
        double z = x;
        for (; z < SHIFT; z++) {
            product *= z;
        }
        double r = 1 / (z * z);
        double series = (1.0 / 12 + r * (-1.0 / 360 + r * (1.0 / 1260 + r * (-1.0 / 1680 + r / 1188)))) / z;
        return (z - 0.5) * Math.log(z) - z + HALF_LOG_TWO_PI + series - Math.log(product);
    }

    /** The digamma function, d log Gamma(x) / dx. */
    public static double digamma(double x) {
        requirePositive(x);
        double sum = 0;
        double z = x;
        for (; z < SHIFT; z++) {
            sum -= 1 / z;
        }
        double r = 1 / (z * z);
        double series = r * (1.0 / 12 + r * (-1.0 / 120 + r * (1.0 / 252 + r * (-1.0 / 240 + r / 132))));
        return sum + Math.log(z) - 0.5 / z - series;
    }

    /** The trigamma function, the derivative of {@link #digamma}. */
    public static double trigamma(double x) {
        requirePositive(x);
        double sum = 0;
        double z = x;
        for (; z < SHIFT; z++) {
            sum += 1 / (z * z);
        }
        double r = 1 / (z * z);
        double series = r * (1.0 / 6 + r * (-1.0 / 30 + r * (1.0 / 42 + r * (-1.0 / 30 + r * 5.0 / 66))));
        return sum + 1 / z + 0.5 * r + series / z;
    }

    private static void requirePositive(double x) {
        if (!(x > 0 && x < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("the gamma function is used for finite x > 0 here, not " + x);
        }
    }
}
