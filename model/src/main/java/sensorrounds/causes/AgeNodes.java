package sensorrounds.causes;

import java.util.Arrays;
import sensorrounds.numeric.Quadrature;

/**
 * Ages and weights by which hazards are integrated over a stretch of age, piece by piece where hazards jump. A piece far from
 * age 0 by its own length takes 16 points of Gauss and Legendre (Abramowitz and Stegun 1964, 25.4.30: the error falls as 3^-32);
 * one that reaches near 0, where a Weibull hazard may have no derivative, takes the double exponential rule (Takahasi and Mori
 * 1974, Publ. RIMS 9:721-741; from memory).
 */
record AgeNodes(double[] ages, double[] weights) {
    private static final double STEP = 0.1;
    private static final double FROM = -4.2;
    private static final double TO = 3.2;
    /** A piece far from age 0 ends within so many times its beginning. */
    private static final double FAR = 4;
    /** Above this share of the end, pieces double: survival may fall fast there. */
    private static final double FURTHEST = 16;

    /** @param edges ascending ages at which hazards may jump */
    static AgeNodes between(double from, double to, double[] edges) {
        double[] ages = new double[0];
        double[] weights = new double[0];
        double start = from;
        for (int e = 0; e <= edges.length; e++) {
            double end = e < edges.length ? Math.min(edges[e], to) : to;
            if (end > start) {
                double cut = start;
                while (cut < end) {
                    double next = cut >= end / FURTHEST ? Math.min(end, 2 * cut) : end / FURTHEST;
                    AgeNodes piece = next <= FAR * cut ? gauss(cut, next) : doubleExponential(cut, next);
                    ages = joined(ages, piece.ages);
                    weights = joined(weights, piece.weights);
                    cut = next;
                }
                start = end;
            }
        }
        return new AgeNodes(ages, weights);
    }

    private static double[] joined(double[] a, double[] b) {
        double[] all = Arrays.copyOf(a, a.length + b.length);
        System.arraycopy(b, 0, all, a.length, b.length);
        return all;
    }

    private static AgeNodes gauss(double from, double to) {
        return new AgeNodes(Quadrature.at(age -> age, from, to), Quadrature.weights(from, to));
    }

    private static AgeNodes doubleExponential(double from, double to) {
        int points = (int) Math.round((TO - FROM) / STEP) + 1;
        double[] ages = new double[points];
        double[] weights = new double[points];
        for (int i = 0; i < points; i++) {
            double s = FROM + STEP * i;
            double u = Math.PI * Math.sinh(s);
            double share = 1 / (1 + Math.exp(-u));
            ages[i] = Math.min(to, from + (to - from) * share);
            weights[i] = (to - from) * STEP * Math.PI * Math.cosh(s) * share / (1 + Math.exp(u));
        }
        return new AgeNodes(ages, weights);
    }
}
