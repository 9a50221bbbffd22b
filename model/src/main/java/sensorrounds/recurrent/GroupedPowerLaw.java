package sensorrounds.recurrent;

import java.util.ArrayList;
import java.util.List;
import sensorrounds.numeric.GammaFunction;

/**
 * Power-law process of one unit of which only the number of events in each of several intervals is known, the first from 0 on
 * and each from the end of the one before. Maximum likelihood, with a chi-square test of fit over the intervals as they are.
 * Source: MIL-HDBK-189 (1981), app. C, grouped data; Crow (1974), AMSAA TR-138.
 *
 * @param cause why there is no fit, in words; empty when there is one
 * @param shape NaN unless the fit converged, as all figures that follow
 * @param scale mean number of events by time 1
 * @param expected events expected in each interval; empty when the fit failed
 * @param chiSquare sum of (count - expected)^2 / expected
 * @param degreesOfFreedom intervals less two
 */
public record GroupedPowerLaw(
        RateStatus status,
        String cause,
        double shape,
        double scale,
        List<Double> expected,
        double chiSquare,
        int degreesOfFreedom) {
    private static final double STEEPEST = 1e4;

    public GroupedPowerLaw {
        expected = List.copyOf(expected);
    }

    public boolean converged() {
        return status == RateStatus.CONVERGED;
    }

    /** Chance of a fit as bad or worse; rough where fewer than five events are expected in an interval. NaN without a degree of
     * freedom. */
    public double pValue() {
        if (degreesOfFreedom < 1) {
            return Double.NaN;
        }
        return Math.exp(GammaFunction.logRegularizedUpper(degreesOfFreedom / 2.0, chiSquare / 2));
    }

    /** Events per unit of time at an age above 0. */
    public double rate(double age) {
        return scale * shape * Math.pow(age, shape - 1);
    }

    /**
     * @param ends ends of the intervals, rising from above 0
     * @param counts events in each
     */
    public static GroupedPowerLaw fit(double[] ends, long[] counts) {
        requireRising(ends, counts);
        long n = 0;
        int filled = 0;
        for (long c : counts) {
            n += c;
            filled += c > 0 ? 1 : 0;
        }
        if (n < 2) {
            return failed(RateStatus.TOO_FEW_EVENTS, "a power law takes two events or more, not " + n);
        }
        if (filled == 1 && (counts[0] == n || counts[counts.length - 1] == n)) {
            return failed(
                    RateStatus.NO_FINITE_MAXIMUM,
                    "all events fall in the first or the last interval, so any shape "
                            + "further that way fits better");
        }
        // The derivative falls through 0 once: above 0 at shape 0 since events came after the first interval, below 0
        // for
        // steep shapes since not all came in the last.
        double low = 0;
        double high = 1;
        while (derivative(ends, counts, n, high) > 0 && high < STEEPEST) {
            low = high;
            high *= 2;
        }
        while (high - low > 1e-15 * high) {
            double middle = 0.5 * (low + high);
            if (middle <= low || middle >= high) {
                break;
            }
            if (derivative(ends, counts, n, middle) > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double shape = 0.5 * (low + high);
        double last = ends[ends.length - 1];
        double scale = n / Math.pow(last, shape);
        List<Double> expected = new ArrayList<>();
        double chiSquare = 0;
        for (int i = 0; i < ends.length; i++) {
            double e = scale * (Math.pow(ends[i], shape) - (i == 0 ? 0 : Math.pow(ends[i - 1], shape)));
            expected.add(e);
            chiSquare += (counts[i] - e) * (counts[i] - e) / e;
        }
        return new GroupedPowerLaw(
                RateStatus.CONVERGED, "", shape, scale, expected, chiSquare, Math.max(0, ends.length - 2));
    }

    /** Of the log-likelihood in the shape: sum of counts x (mean log time in the interval less that over all). */
    private static double derivative(double[] ends, long[] counts, long n, double shape) {
        double last = Math.log(ends[ends.length - 1]);
        double sum = -n * (last - 1 / shape);
        for (int i = 0; i < ends.length; i++) {
            if (counts[i] > 0) {
                double from = i == 0 ? Double.NEGATIVE_INFINITY : Math.log(ends[i - 1]);
                TiltedTime interval = new TiltedTime(List.of(new TiltedTime.Stretch(from, Math.log(ends[i]))));
                sum += counts[i] * interval.at(shape).mean();
            }
        }
        return sum;
    }

    private static void requireRising(double[] ends, long[] counts) {
        if (ends.length != counts.length || ends.length == 0) {
            throw new IllegalArgumentException(
                    "one count for each interval is needed, not " + counts.length + " for " + ends.length);
        }
        for (int i = 0; i < ends.length; i++) {
            if (!(ends[i] > (i == 0 ? 0 : ends[i - 1]) && ends[i] < Double.POSITIVE_INFINITY) || counts[i] < 0) {
                throw new IllegalArgumentException("interval " + (i + 1) + " ends at " + ends[i] + " with " + counts[i]
                        + " events; ends must rise from above 0 and counts be 0 or more");
            }
        }
    }

    private static GroupedPowerLaw failed(RateStatus status, String cause) {
        return new GroupedPowerLaw(status, cause, Double.NaN, Double.NaN, List.of(), Double.NaN, 0);
    }
}
