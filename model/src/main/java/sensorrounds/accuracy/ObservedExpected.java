package sensorrounds.accuracy;

import sensorrounds.numeric.GammaFunction;
import sensorrounds.survival.Estimate;

/**
 * Failures seen against failures expected of the same units over the time they were watched. Limits are exact for a Poisson
 * count: Garwood (1936), Biometrika 28:437-442. As a check on a survival model: Berry (1983), Biometrics 39:173-184.
 *
 * @param failures seen
 * @param expected sum of the cumulative hazards the prediction gave each unit over its own time under observation
 * @param ratio failures / expected with 95 % limits; NaN where nothing was expected
 */
public record ObservedExpected(double failures, double expected, Estimate ratio) {
    private static final double TAIL = 0.025;

    /** The ratio of a count to its expectation, both from 0 up. */
    public static ObservedExpected of(double failures, double expected) {
        if (!(failures >= 0 && expected >= 0 && failures + expected < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "failures and their expectation are numbers from 0 up, not " + failures + " and " + expected);
        }
        if (expected == 0) {
            return new ObservedExpected(failures, expected, new Estimate(Double.NaN, Double.NaN, Double.NaN));
        }
        double lower = failures == 0 ? 0 : mean(failures, TAIL);
        double upper = mean(failures + 1, 1 - TAIL);
        return new ObservedExpected(
                failures, expected, new Estimate(failures / expected, lower / expected, upper / expected));
    }

    /** x with P(a, x) = p: the mean at which a Poisson count reaches a with chance p. By bisection. */
    private static double mean(double a, double p) {
        double low = 0;
        double high = a + 10 * Math.sqrt(a) + 10;
        for (int i = 0; i < 200 && high - low > 1e-14 * high; i++) {
            double middle = low + (high - low) / 2;
            if (GammaFunction.regularizedLower(a, middle) < p) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low + (high - low) / 2;
    }
}
