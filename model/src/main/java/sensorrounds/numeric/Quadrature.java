package sensorrounds.numeric;

import java.util.function.DoubleUnaryOperator;

/**
 * Gauss-Legendre quadrature with 16 points. Source: Abramowitz and Stegun (1964), 25.4.29 and 25.4.30; nodes are the
 * roots of the Legendre polynomial, found by Newton's method from the cosine start 22.16.6.
 */
public final class Quadrature {
    private static final int POINTS = 16;
    private static final int DEEPEST = 50;
    /** Each bisection must change the integral by less than this share of the first estimate of the whole. */
    private static final double SHARE = 1e-15;

    private static final double[] NODES = new double[POINTS];
    private static final double[] WEIGHTS = new double[POINTS];

    static {
        for (int i = 0; i < POINTS; i++) {
            double x = Math.cos(Math.PI * (i + 0.75) / (POINTS + 0.5));
            double slope = 0;
            for (int step = 0; step < 20; step++) {
                double below = 1;
                double at = x;
                for (int n = 2; n <= POINTS; n++) {
                    double next = ((2 * n - 1) * x * at - (n - 1) * below) / n;
                    below = at;
                    at = next;
                }
                slope = POINTS * (x * at - below) / (x * x - 1);
                x -= at / slope;
            }
            NODES[i] = x;
            WEIGHTS[i] = 2 / ((1 - x * x) * slope * slope);
        }
    }

    private Quadrature() {}

    /** One panel: exact for polynomials up to degree 31, enough for a smooth function over a short stretch. */
    public static double panel(DoubleUnaryOperator f, double from, double to) {
        return panel(at(f, from, to), from, to);
    }

    /** Values of a function at the points of a panel, for use in more than one integral. */
    public static double[] at(DoubleUnaryOperator f, double from, double to) {
        double[] values = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            values[i] = f.applyAsDouble((to + from) / 2 + (to - from) / 2 * NODES[i]);
        }
        return values;
    }

    /** Integral over a panel of the function with these values at its points. */
    public static double panel(double[] values, double from, double to) {
        double sum = 0;
        for (int i = 0; i < POINTS; i++) {
            sum += WEIGHTS[i] * values[i];
        }
        return (to - from) / 2 * sum;
    }

    /** Weights of the points of a panel; its points are {@code at(x -> x, from, to)}. */
    public static double[] weights(double from, double to) {
        double[] weights = WEIGHTS.clone();
        for (int i = 0; i < POINTS; i++) {
            weights[i] *= (to - from) / 2;
        }
        return weights;
    }

    /** Panels halved until halving changes nothing that matters; for a positive function. */
    public static double integral(DoubleUnaryOperator f, double from, double to) {
        if (!(to > from)) {
            return 0;
        }
        double whole = panel(f, from, to);
        return halved(f, from, to, whole, SHARE * whole, 0);
    }

    private static double halved(
            DoubleUnaryOperator f, double from, double to, double whole, double tolerance, int depth) {
        double middle = (from + to) / 2;
        double left = panel(f, from, middle);
        double right = panel(f, middle, to);
        boolean settled = Math.abs(left + right - whole) <= tolerance + 2e-15 * Math.abs(whole);
        if (settled || depth == DEEPEST) {
            return left + right;
        }
        return halved(f, from, middle, left, tolerance, depth + 1) + halved(f, middle, to, right, tolerance, depth + 1);
    }
}
