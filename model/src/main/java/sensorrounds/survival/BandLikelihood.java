package sensorrounds.survival;

import java.util.LinkedHashMap;
import java.util.Map;
import sensorrounds.numeric.Objective;

/**
 * Log-likelihood of a hazard that is constant within bands of ages, given alive at entry. With A the time survived and B
 * the time within the failure interval by band, a life adds w (-sum r A + log(1 - exp(-sum r B))), or log r of the band of
 * an exact age in place of the last term. The sum of A over lives is taken once, and failures with the same B are one of
 * their joint weight. Source: Friedman (1982), Ann. Statist. 10:101-113; Lindsey and Ryan (1998), Statist. Med.
 * 17:219-238, for intervals.
 */
final class BandLikelihood {
    private final double[] edges;
    private final double[] survived;
    private final double[] inDoubt;
    private final double[] exact;
    private final Within[] within;

    /** Where a failure interval lies: time in its first band, all of the bands between, time in its last. */
    private record Where(int first, int last, double inFirst, double inLast) {}

    /** Failures whose intervals lie alike. */
    private static final class Within {
        final int first;
        final double[] time;
        double weight;

        Within(int first, double[] time) {
            this.first = first;
            this.time = time;
        }
    }

    /** @param edges from 0 to infinity */
    BandLikelihood(double[] edges, LifetimeSample sample) {
        this.edges = edges;
        survived = new double[bands()];
        inDoubt = new double[bands()];
        exact = new double[bands()];
        Map<Where, Within> alike = new LinkedHashMap<>();
        for (int i = 0; i < sample.size(); i++) {
            double w = sample.weight(i);
            int exit = sample.lower(i) > sample.entry(i) ? bandOf(sample.lower(i)) : -1;
            for (int j = exit < 0 ? 0 : bandOf(sample.entry(i)); j <= exit; j++) {
                survived[j] += w * overlap(j, sample.entry(i), sample.lower(i));
            }
            if (sample.exact(i)) {
                exact[bandOf(sample.lower(i))] += w;
            } else if (sample.failed(i)) {
                Within here = alike.computeIfAbsent(where(sample.lower(i), sample.upper(i)), this::within);
                here.weight += w;
            }
        }
        within = alike.values().toArray(Within[]::new);
        for (Within failures : within) {
            for (int j = 0; j < failures.time.length; j++) {
                inDoubt[failures.first + j] += failures.weight * failures.time[j];
            }
        }
    }

    private Where where(double lower, double upper) {
        int first = bandOf(lower);
        // Bands are closed above: what begins at an edge lies in the next band.
        first += lower == edges[first + 1] ? 1 : 0;
        int last = bandOf(upper);
        return new Where(first, last, overlap(first, lower, upper), overlap(last, lower, upper));
    }

    private Within within(Where where) {
        double[] time = new double[where.last - where.first + 1];
        for (int j = 0; j < time.length; j++) {
            time[j] = edges[where.first + j + 1] - edges[where.first + j];
        }
        time[0] = where.inFirst;
        time[time.length - 1] = where.inLast;
        return new Within(where.first, time);
    }

    int bands() {
        return edges.length - 1;
    }

    /** Age between two bands; 0 first, infinity last. */
    double edge(int place) {
        return edges[place];
    }

    private double overlap(int band, double from, double to) {
        return Math.max(0, Math.min(edges[band + 1], to) - Math.max(edges[band], from));
    }

    /** Band an exact age falls into; bands are open below and closed above. */
    private int bandOf(double age) {
        int band = 0;
        while (age > edges[band + 1]) {
            band++;
        }
        return band;
    }

    /** Time survived under observation, by band. */
    double[] survived() {
        return survived.clone();
    }

    /** Time within failure intervals, by band. */
    double[] inDoubt() {
        return inDoubt.clone();
    }

    /**
     * One step of the EM algorithm (Dempster, Laird and Rubin 1977, J. R. Statist. Soc. B 39:1-38): failures and time at
     * risk by band, as expected under the rates.
     *
     * @return failures, time at risk
     */
    double[][] expected(double[] rates) {
        double[] failures = exact.clone();
        double[] time = survived.clone();
        for (Within f : within) {
            double total = 0;
            for (int j = 0; j < f.time.length; j++) {
                total += rates[f.first + j] * f.time[j];
            }
            double failed = -Math.expm1(-total);
            double before = 0;
            for (int j = 0; j < f.time.length && failed > 0; j++) {
                double rate = rates[f.first + j];
                double hazard = rate * f.time[j];
                double here = Math.exp(-before) * -Math.expm1(-hazard) / failed;
                before += hazard;
                double later = Math.max(0, (Math.exp(-before) - Math.exp(-total)) / failed);
                failures[f.first + j] += f.weight * here;
                time[f.first + j] += f.weight * (later * f.time[j] + here * timeToFailure(rate, f.time[j]));
            }
        }
        return new double[][] {failures, time};
    }

    /** Mean time to failure of those that fail within the span: 1/r - s / (exp(r s) - 1), near s/2 for small r s. */
    private static double timeToFailure(double rate, double span) {
        double hazard = rate * span;
        return hazard < 1e-4 ? span * (0.5 - hazard / 12) : 1 / rate - span / Math.expm1(hazard);
    }

    /** Value and derivatives in the log rates; a rate of 0 has none. */
    Objective.Evaluation at(double[] rates) {
        int n = bands();
        double value = 0;
        double[] gradient = new double[n];
        double[][] hessian = new double[n][n];
        for (int j = 0; j < n; j++) {
            value -= rates[j] * survived[j];
            gradient[j] -= rates[j] * survived[j];
            if (exact[j] > 0) {
                value += exact[j] * Math.log(rates[j]);
                gradient[j] += exact[j];
                // log r is straight in itself.
                hessian[j][j] -= exact[j];
            }
        }
        double[] share = new double[n];
        for (Within f : within) {
            double total = 0;
            for (int j = 0; j < f.time.length; j++) {
                share[j] = rates[f.first + j] * f.time[j];
                total += share[j];
            }
            double first = 1 / Math.expm1(total);
            double second = -first * (1 + first);
            value += f.weight * Math.log(-Math.expm1(-total));
            for (int j = 0; j < f.time.length; j++) {
                gradient[f.first + j] += f.weight * first * share[j];
                for (int k = 0; k < f.time.length; k++) {
                    hessian[f.first + j][f.first + k] += f.weight * second * share[j] * share[k];
                }
            }
        }
        for (int j = 0; j < n; j++) {
            hessian[j][j] += gradient[j];
        }
        return new Objective.Evaluation(value, gradient, hessian);
    }
}
