package sensorrounds.frailty;

/**
 * How the gamma density with mean 1 depends on its shape a, in forms that keep their digits where a is large and the
 * frailty nearly 1. By the recurrence up to 15, then the asymptotic series: Abramowitz and Stegun (1964), 6.3.5, 6.3.18,
 * 6.4.6 and 6.4.12.
 */
final class GammaShape {
    private static final double SHIFT = 15;

    private GammaShape() {}

    /** a (log a - digamma(a)), which tends to 1/2. */
    static double logExcess(double a) {
        if (a >= SHIFT) {
            double r = 1 / (a * a);
            return 0.5 + (1.0 / 12 - r * (1.0 / 120 - r * (1.0 / 252 - r * (1.0 / 240 - r / 132)))) / a;
        }
        double sum = 0;
        double z = a;
        for (; z < SHIFT; z++) {
            sum += 1 / z;
        }
        return a * (Math.log(a / z) + sum + logExcess(z) / z);
    }

    /** a^2 trigamma(a) - a, which tends to 1/2. */
    static double trigammaExcess(double a) {
        if (a >= SHIFT) {
            double r = 1 / (a * a);
            return 0.5 + (1.0 / 6 - r * (1.0 / 30 - r * (1.0 / 42 - r * (1.0 / 30 - r * 5 / 66)))) / a;
        }
        double sum = 0;
        double z = a;
        for (; z < SHIFT; z++) {
            sum += 1 / (z * z);
        }
        double trigamma = sum + (trigammaExcess(z) + z) / (z * z);
        return a * a * trigamma - a;
    }
}
