package sensorrounds.numeric;

/** Quantiles of Student's t law. */
public final class StudentT {
    private StudentT() {}

    /**
     * t with P(T <= t) = p: exact for 1 and 2 degrees of freedom, else the expansion about the normal quantile to the fourth
     * order, Abramowitz and Stegun (1964), 26.7.5, within 0.2 % for p from .005 to .995.
     *
     * @param degrees of freedom, 1 or more
     */
    public static double quantile(double p, double degrees) {
        if (!(p > 0 && p < 1 && degrees >= 1)) {
            throw new IllegalArgumentException(
                    "a t quantile needs 0 < p < 1 and 1 or more degrees of freedom, not " + p + " and " + degrees);
        }
        if (degrees == 1) {
            return Math.tan(Math.PI * (p - 0.5));
        }
        if (degrees == 2) {
            double centred = 2 * p - 1;
            return centred * Math.sqrt(2 / (1 - centred * centred));
        }
        double x = StandardNormal.quantile(p);
        double y = x * x;
        double first = (y + 1) * x / 4;
        double second = ((5 * y + 16) * y + 3) * x / 96;
        double third = (((3 * y + 19) * y + 17) * y - 15) * x / 384;
        double fourth = ((((79 * y + 776) * y + 1482) * y - 1920) * y - 945) * x / 92_160;
        return x + (first + (second + (third + fourth / degrees) / degrees) / degrees) / degrees;
    }
}
