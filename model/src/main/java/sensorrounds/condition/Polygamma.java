package sensorrounds.condition;

/**
 * The first two derivatives of the logarithm of the gamma function for x > 0, by the asymptotic series after shifting the
 * argument upwards: Abramowitz and Stegun (1964), 6.3.18 and 6.4.12 with the recurrences 6.3.5 and 6.4.6.
 */
public final class Polygamma {
    /** From here the first term left out of each series is below 1e-16. */
    private static final double SHIFT = 15;

    private Polygamma() {}

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
            throw new IllegalArgumentException("the polygamma functions are used for finite x > 0 here, not " + x);
        }
    }
}
