package sensorrounds.survival;

import java.util.Arrays;
import java.util.stream.DoubleStream;
import sensorrounds.numeric.Objective;

/**
 * Log-likelihood of lives under two competing Weibull hazards, given alive at entry, with first and second derivatives in
 * (log early scale, log early shape, log wear scale, log wear shape). A life in (lower, upper] entered at e adds
 * w (H(e) - H(lower) + log(1 - exp(-(H(upper) - H(lower))))); an exact one w (H(e) - H(t) + log h(t)). Each hazard is
 * v = exp(z), z = shape (log t - log scale), dz = (-shape, z), d2z = (0, -shape, z), so that v, z v and z^2 v give all its
 * derivatives; they are worked out once for each distinct age. Likelihood: Klein and Moeschberger (2003), 3.5.
 */
final class EarlyWearLikelihood {
    static final int SIZE = 4;

    private static final int HAZARDS = 2;
    /** v, z v, z^2 v of the early hazard, then of wear-out. */
    private static final int PARTS = 3 * HAZARDS;
    /** From here on 1 - exp(-D) is 1 to the last bit, and exp(D) may overflow. */
    private static final double CERTAIN = 40;

    /** Logs of the distinct ages above 0, ascending, centred. */
    private final double[] logAge;
    /** Weight of H at each age: that of the lives that entered there less that of those last known good there. */
    private final double[] linear;
    /** Places in logAge of the ends of the failure intervals; -1 for an age of 0. */
    private final int[] from;

    private final int[] to;
    private final double[] failed;
    private final int[] exactAt;
    private final double[] exactFailed;

    /** Times are in units of exp(centre). */
    EarlyWearLikelihood(LifetimeSample sample, double centre) {
        LifeTerms terms = sample.terms();
        double[] ages = DoubleStream.concat(
                        Arrays.stream(terms.entry),
                        DoubleStream.concat(Arrays.stream(terms.lower), Arrays.stream(terms.upper)))
                .filter(age -> age > 0 && age < Double.POSITIVE_INFINITY)
                .sorted()
                .distinct()
                .toArray();
        logAge = Arrays.stream(ages).map(age -> Math.log(age) - centre).toArray();
        linear = new double[ages.length];
        for (int i = 0; i < terms.entry.length; i++) {
            linear[place(ages, terms.entry[i])] += terms.entryWeight[i];
        }
        int n = terms.weight.length;
        int[] lower = new int[n];
        int[] upper = new int[n];
        double[] within = new double[n];
        int[] exact = new int[n];
        double[] at = new double[n];
        int intervals = 0;
        int exacts = 0;
        for (int i = 0; i < n; i++) {
            int low = place(ages, terms.lower[i]);
            if (low >= 0) {
                linear[low] -= terms.weight[i];
            }
            if (terms.exact(i)) {
                exact[exacts] = low;
                at[exacts++] = terms.weight[i];
            } else if (terms.failed(i)) {
                lower[intervals] = low;
                upper[intervals] = place(ages, terms.upper[i]);
                within[intervals++] = terms.weight[i];
            }
        }
        from = Arrays.copyOf(lower, intervals);
        to = Arrays.copyOf(upper, intervals);
        failed = Arrays.copyOf(within, intervals);
        exactAt = Arrays.copyOf(exact, exacts);
        exactFailed = Arrays.copyOf(at, exacts);
    }

    private static int place(double[] ages, double age) {
        return age > 0 ? Arrays.binarySearch(ages, age) : -1;
    }

    /** What is summed over lives: a value, weights of the parts of H, and products of first derivatives. */
    private static final class Sums {
        double value;
        final double[] parts = new double[PARTS];
        final double[] slopes = new double[SIZE];
        final double[][] products = new double[SIZE][SIZE];

        /** Adds a function of a hazard of these parts, by its value and its first and second derivative there. */
        void addChained(double weight, double f, double first, double second, double[] hazard, double[] shapes) {
            value += weight * f;
            for (int p = 0; p < PARTS; p++) {
                parts[p] += weight * first * hazard[p];
            }
            for (int h = 0; h < HAZARDS; h++) {
                slopes[2 * h] = -shapes[h] * hazard[3 * h];
                slopes[2 * h + 1] = hazard[3 * h + 1];
            }
            for (int i = 0; i < SIZE; i++) {
                double row = weight * second * slopes[i];
                for (int j = i; j < SIZE; j++) {
                    products[i][j] += row * slopes[j];
                }
            }
        }

        /** First derivatives of the parts: v by log scale is -shape v, by log shape z v; and so on. */
        Objective.Evaluation evaluation(double[] shapes) {
            double[] gradient = new double[SIZE];
            double[][] hessian = new double[SIZE][SIZE];
            for (int i = 0; i < SIZE; i++) {
                for (int j = i; j < SIZE; j++) {
                    hessian[i][j] = products[i][j];
                }
            }
            for (int h = 0; h < HAZARDS; h++) {
                double k = shapes[h];
                double v = parts[3 * h];
                double zv = parts[3 * h + 1];
                double zzv = parts[3 * h + 2];
                int s = 2 * h;
                gradient[s] = -k * v;
                gradient[s + 1] = zv;
                hessian[s][s] += k * k * v;
                hessian[s][s + 1] -= k * (zv + v);
                hessian[s + 1][s + 1] += zzv + zv;
            }
            for (int i = 0; i < SIZE; i++) {
                for (int j = 0; j < i; j++) {
                    hessian[i][j] = hessian[j][i];
                }
            }
            return new Objective.Evaluation(value, gradient, hessian);
        }
    }

    Objective.Evaluation at(double[] p) {
        double[] shapes = {Math.exp(p[1]), Math.exp(p[3])};
        double[][] hazards = hazards(p, shapes);
        Sums sums = new Sums();
        for (int a = 0; a < hazards.length; a++) {
            sums.value += linear[a] * (hazards[a][0] + hazards[a][3]);
            for (int part = 0; part < PARTS; part++) {
                sums.parts[part] += linear[a] * hazards[a][part];
            }
        }
        double[] between = new double[PARTS];
        for (int i = 0; i < failed.length; i++) {
            double[] end = hazards[to[i]];
            for (int part = 0; part < PARTS; part++) {
                between[part] = from[i] < 0 ? end[part] : end[part] - hazards[from[i]][part];
            }
            double d = between[0] + between[3];
            double grown = Math.expm1(d);
            double odds = 1 / grown;
            double log = d > CERTAIN ? -Math.exp(-d) : Math.log(grown / (1 + grown));
            sums.addChained(failed[i], log, odds, -odds * (1 + odds), between, shapes);
        }
        for (int i = 0; i < exactAt.length; i++) {
            addExact(sums, p, shapes, i);
        }
        return sums.evaluation(shapes);
    }

    private double[][] hazards(double[] p, double[] shapes) {
        double[][] hazards = new double[logAge.length][PARTS];
        for (int a = 0; a < logAge.length; a++) {
            for (int h = 0; h < HAZARDS; h++) {
                double z = shapes[h] * (logAge[a] - p[2 * h]);
                fill(hazards[a], 3 * h, Math.exp(z), z);
            }
        }
        return hazards;
    }

    private static void fill(double[] parts, int at, double v, double z) {
        // What underflowed adds nothing, though z may be without bound.
        parts[at] = v;
        parts[at + 1] = v > 0 ? z * v : 0;
        parts[at + 2] = v > 0 ? z * z * v : 0;
    }

    /**
     * log h(t): each rate is r = exp(z + log shape - log t), whose derivatives are those of exp(y) with y = z but for a 1 more by
     * log shape, and whose curvature there is z + (z + 1)^2.
     */
    private void addExact(Sums sums, double[] p, double[] shapes, int i) {
        double log = logAge[exactAt[i]];
        double w = exactFailed[i];
        double[] r = new double[HAZARDS];
        double[] z = new double[HAZARDS];
        for (int h = 0; h < HAZARDS; h++) {
            z[h] = shapes[h] * (log - p[2 * h]);
            r[h] = Math.exp(z[h] + p[2 * h + 1] - log);
        }
        double rate = r[0] + r[1];
        sums.value += w * Math.log(rate);
        double[] slopes = new double[SIZE];
        for (int h = 0; h < HAZARDS; h++) {
            double share = r[h] / rate;
            if (share > 0) {
                slopes[2 * h] = -shapes[h] * share;
                slopes[2 * h + 1] = (z[h] + 1) * share;
                // As parts: v, then what makes z v the slope and z^2 v + z v the curvature by log shape.
                sums.parts[3 * h] += w * share;
                sums.parts[3 * h + 1] += w * (z[h] + 1) * share;
                sums.parts[3 * h + 2] += w * ((z[h] + 1) * (z[h] + 1) - 1) * share;
            }
        }
        for (int a = 0; a < SIZE; a++) {
            for (int b = a; b < SIZE; b++) {
                sums.products[a][b] -= w * slopes[a] * slopes[b];
            }
        }
    }
}
