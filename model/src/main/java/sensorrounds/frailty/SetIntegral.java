package sensorrounds.frailty;

import java.util.Arrays;
import sensorrounds.numeric.LogGammaLaw;

/**
 * What a vehicle's lives say about its frailty w, gamma distributed with mean 1 and shape a = 1 / variance: the integral
 * of the gamma density times w^exact exp(-survived w) prod(1 - exp(-D w)) over w, D being the cumulative hazard within
 * each failure interval. Multiplying the product out gives the alternating sum over corners of the Laplace transform (1 +
 * s / a)^-a, which loses all digits where intervals are narrow; every term of this sum is positive.
 *
 * <p>By the trapezoid rule in y = log w, where the integrand is entire, log-concave, and falls off doubly exponentially
 * to the right: the error shrinks exponentially in 1 / step, here below 1e-12 of the integral (the test holds it to
 * closed forms). Source: Trefethen and Weideman (2014), SIAM Review 56:385-458, theorem 5.1.
 */
final class SetIntegral {
    private static final double STEP_IN_DEVIATIONS = 0.5;
    /** The transform of exp(n (y - e^y)) falls as exp(-pi omega / 2), whatever n. */
    private static final double LONGEST_STEP = 0.25;
    /** Terms below this share of the largest are left out. */
    private static final double LEAST_SHARE = 1e-16;
    /** Below this the series of (1 - e^-x) / x keeps the digits that subtracting would lose. */
    private static final double SERIES_BELOW = 0.35;

    private final double a;
    private final double survived;
    private final double failed;
    private final double[] intervals;

    private double[] y = new double[64];
    private double[] weight = new double[64];
    private double[] ratio;
    private int size;
    private final double logIntegral;

    /**
     * @param a 1 / variance of the frailty; infinite when every vehicle has frailty 1
     * @param survived sum of cumulative hazards the lives are known to have survived
     * @param exact number of failures at an exact age
     * @param intervals cumulative hazard within each failure interval; positive
     */
    SetIntegral(double a, double survived, int exact, double[] intervals) {
        this.a = a;
        this.survived = survived;
        this.failed = exact + intervals.length;
        this.intervals = intervals;
        ratio = new double[64 * intervals.length];
        boolean certain = a == Double.POSITIVE_INFINITY;
        double mode = certain ? 0 : mode();
        double step = certain ? 1 : stepAt(mode);
        double exponent = exponent(mode);
        double product = evaluate(mode);
        weight[0] = 1;
        double sum = 1;
        size = 1;
        if (!certain) {
            sum += walk(mode, step, exponent, product);
            sum += walk(mode, -step, exponent, product);
        }
        for (int q = 0; q < size; q++) {
            weight[q] /= sum;
        }
        double logDensity = certain ? 0 : LogGammaLaw.logDensity(a, 0);
        double logHazards = 0;
        for (double d : intervals) {
            logHazards += Math.log(d);
        }
        logIntegral = logDensity + exponent + Math.log(product) + logHazards + Math.log(sum * step);
    }

    /** Adds the points from the mode on, and gives the sum of their terms over that of the mode. */
    private double walk(double mode, double step, double exponent, double product) {
        double sum = 0;
        for (int i = 1; ; i++) {
            if (size == y.length) {
                y = Arrays.copyOf(y, 2 * size);
                weight = Arrays.copyOf(weight, 2 * size);
                ratio = Arrays.copyOf(ratio, 2 * size * intervals.length);
            }
            double at = mode + i * step;
            double term = Math.exp(exponent(at) - exponent) * evaluate(at) / product;
            if (!(term > LEAST_SHARE)) {
                return sum;
            }
            weight[size++] = term;
            sum += term;
        }
    }

    /** log of the integrand but for constants and for prod (1 - e^-x) / x, x = D w: each interval leaves a factor w. */
    private double exponent(double at) {
        double gamma = a == Double.POSITIVE_INFINITY ? 0 : a * LogGammaLaw.excess(at) * at * at;
        return failed * at - survived * Math.exp(at) - gamma;
    }

    /** Writes the point at the end of the list and gives prod (1 - e^-x) / x. */
    private double evaluate(double at) {
        y[size] = at;
        double w = Math.exp(at);
        double product = 1;
        for (int i = 0; i < intervals.length; i++) {
            double x = intervals[i] * w;
            double fading = Math.exp(-x);
            double share = share(x, fading);
            ratio[size * intervals.length + i] = fading / (x * share);
            product *= share;
        }
        return product;
    }

    /** (1 - e^-x) / x. */
    private static double share(double x, double fading) {
        if (x > SERIES_BELOW) {
            return (1 - fading) / x;
        }
        double sum = 1;
        for (int n = 13; n >= 2; n--) {
            sum = 1 - sum * x / n;
        }
        return sum;
    }

    /** Newton on the slope, which falls everywhere; steps are cut, since far to the left it is nearly flat. */
    private double mode() {
        double total = 0;
        for (double d : intervals) {
            total += Math.min(d, 2);
        }
        double at = Math.log((a + failed) / (a + survived + total / 2));
        for (int i = 0; i < 200; i++) {
            double step = -slope(at) / curvature(at);
            at += Math.max(-1, Math.min(1, step));
            // The rule needs no exact mode, only one well within its own step.
            if (step * step * -curvature(at) < 1e-4) {
                break;
            }
        }
        return at;
    }

    private double stepAt(double mode) {
        return Math.min(LONGEST_STEP, STEP_IN_DEVIATIONS / Math.sqrt(-curvature(mode)));
    }

    private double slope(double at) {
        double w = Math.exp(at);
        double sum = -a * Math.expm1(at) + failed - intervals.length - survived * w;
        for (double d : intervals) {
            double fading = Math.exp(-d * w);
            sum += fading / share(d * w, fading);
        }
        return sum;
    }

    private double curvature(double at) {
        double w = Math.exp(at);
        double sum = -(a + survived) * w;
        for (double d : intervals) {
            double x = d * w;
            double fading = Math.exp(-x);
            // s = x / (e^x - 1) has the slope s (1 - x - s) in y.
            double s = fading / share(x, fading);
            sum += s * (1 - x - s);
        }
        return sum;
    }

    /** log of the integral. */
    double logIntegral() {
        return logIntegral;
    }

    /** Number of points; the mode is the first. */
    int size() {
        return size;
    }

    /** log of the frailty at a point. */
    double y(int point) {
        return y[point];
    }

    /** 1 / (e^x - 1) for an interval at a point, x = D w. */
    double ratio(int point, int interval) {
        return ratio[point * intervals.length + interval];
    }

    /** Share of the posterior at a point; they add up to 1. */
    double weight(int point) {
        return weight[point];
    }
}
