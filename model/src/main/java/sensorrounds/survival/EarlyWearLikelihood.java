package sensorrounds.survival;

import java.util.Arrays;
import sensorrounds.numeric.Objective;

/**
 * Log-likelihood of lives under two competing Weibull hazards, given alive at entry, with first and second derivatives in
 * (log early scale, log early shape, log wear scale, log wear shape). A life in (lower, upper] entered at e adds
 * w (H(e) - H(lower) + log(1 - exp(-(H(upper) - H(lower))))); an exact one w (H(e) - H(t) + log h(t)). Each hazard is
 * exp(z), z = shape (log t - log scale), dz = (-shape, z), d2z = (0, -shape, z). Likelihood: Klein and Moeschberger
 * (2003), 3.5.
 */
final class EarlyWearLikelihood {
    static final int SIZE = 4;

    private final LifetimeSample sample;
    private final double centre;

    /** Times are in units of exp(centre). */
    EarlyWearLikelihood(LifetimeSample sample, double centre) {
        this.sample = sample;
        this.centre = centre;
    }

    /** A value with its gradient and Hessian (upper triangle). */
    private static final class Jet {
        double value;
        final double[] g = new double[SIZE];
        final double[][] h = new double[SIZE][SIZE];

        void clear() {
            value = 0;
            for (int i = 0; i < SIZE; i++) {
                g[i] = 0;
                Arrays.fill(h[i], 0);
            }
        }

        /** Adds factor times another. */
        void add(double factor, Jet o) {
            value += factor * o.value;
            for (int i = 0; i < SIZE; i++) {
                g[i] += factor * o.g[i];
                for (int j = i; j < SIZE; j++) {
                    h[i][j] += factor * o.h[i][j];
                }
            }
        }

        /** Adds a function of another, by its value and its first and second derivative there. */
        void addChained(double factor, double f, double first, double second, Jet o) {
            value += factor * f;
            for (int i = 0; i < SIZE; i++) {
                g[i] += factor * first * o.g[i];
                for (int j = i; j < SIZE; j++) {
                    h[i][j] += factor * (first * o.h[i][j] + second * o.g[i] * o.g[j]);
                }
            }
        }
    }

    Objective.Evaluation at(double[] p) {
        Jet total = new Jet();
        Jet entry = new Jet();
        Jet lower = new Jet();
        Jet upper = new Jet();
        for (int i = 0; i < sample.size(); i++) {
            double w = sample.weight(i);
            if (sample.entry(i) > 0) {
                hazard(p, sample.entry(i), entry);
                total.add(w, entry);
            }
            hazard(p, sample.lower(i), lower);
            total.add(-w, lower);
            if (sample.exact(i)) {
                rate(p, sample.lower(i), upper);
                double r = upper.value;
                total.addChained(w, Math.log(r), 1 / r, -1 / (r * r), upper);
            } else if (sample.failed(i)) {
                hazard(p, sample.upper(i), upper);
                upper.add(-1, lower);
                double odds = 1 / Math.expm1(upper.value);
                total.addChained(w, Math.log(-Math.expm1(-upper.value)), odds, -odds * (1 + odds), upper);
            }
        }
        for (int i = 0; i < SIZE; i++) {
            for (int j = 0; j < i; j++) {
                total.h[i][j] = total.h[j][i];
            }
        }
        return new Objective.Evaluation(total.value, total.g, total.h);
    }

    private void hazard(double[] p, double age, Jet out) {
        out.clear();
        if (age > 0) {
            addHazard(p, 0, age, out);
            addHazard(p, 2, age, out);
        }
    }

    private void addHazard(double[] p, int at, double age, Jet out) {
        double shape = Math.exp(p[at + 1]);
        double z = shape * (Math.log(age) - centre - p[at]);
        double v = Math.exp(z);
        out.value += v;
        addTerm(out, at, v, shape, z, z);
    }

    /** Hazard rate per unit of scaled time. */
    private void rate(double[] p, double age, Jet out) {
        out.clear();
        for (int at = 0; at < SIZE; at += 2) {
            double shape = Math.exp(p[at + 1]);
            double logTime = Math.log(age) - centre;
            double z = shape * (logTime - p[at]);
            double v = Math.exp(z + p[at + 1] - logTime);
            out.value += v;
            addTerm(out, at, v, shape, z, z + 1);
        }
    }

    /** v exp-linked to z: gradient v (-shape, slope), Hessian v (d d' + d2z). */
    private static void addTerm(Jet out, int at, double v, double shape, double z, double slope) {
        if (!(v > 0)) {
            return;
        }
        out.g[at] += v * -shape;
        out.g[at + 1] += v * slope;
        out.h[at][at] += v * shape * shape;
        out.h[at][at + 1] += v * (-shape * slope - shape);
        out.h[at + 1][at + 1] += v * (slope * slope + z);
    }
}
