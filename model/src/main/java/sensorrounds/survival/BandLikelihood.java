package sensorrounds.survival;

import java.util.Arrays;
import sensorrounds.numeric.Objective;

/**
 * Log-likelihood of a hazard that is constant within bands of ages, given alive at entry. With A the time survived and B
 * the time within the failure interval by band, a life adds w (-sum r A + log(1 - exp(-sum r B))), or log r of the band of
 * an exact age in place of the last term. Source: Friedman (1982), Ann. Statist. 10:101-113; Lindsey and Ryan (1998),
 * Statist. Med. 17:219-238, for intervals.
 */
final class BandLikelihood {
    private final double[] edges;
    private final LifetimeSample sample;

    /** @param edges from 0 to infinity */
    BandLikelihood(double[] edges, LifetimeSample sample) {
        this.edges = edges;
        this.sample = sample;
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
        double[] time = new double[bands()];
        for (int i = 0; i < sample.size(); i++) {
            for (int j = 0; j < time.length; j++) {
                time[j] += sample.weight(i) * overlap(j, sample.entry(i), sample.lower(i));
            }
        }
        return time;
    }

    /** Time within failure intervals, by band. */
    double[] inDoubt() {
        double[] time = new double[bands()];
        for (int i = 0; i < sample.size(); i++) {
            for (int j = 0; sample.failed(i) && j < time.length; j++) {
                time[j] += sample.weight(i) * overlap(j, sample.lower(i), sample.upper(i));
            }
        }
        return time;
    }

    /**
     * One step of the EM algorithm (Dempster, Laird and Rubin 1977, J. R. Statist. Soc. B 39:1-38): failures and time at
     * risk by band, as expected under the rates.
     *
     * @return failures, time at risk
     */
    double[][] expected(double[] rates) {
        double[] failures = new double[bands()];
        double[] time = survived();
        for (int i = 0; i < sample.size(); i++) {
            double w = sample.weight(i);
            if (sample.exact(i)) {
                failures[bandOf(sample.lower(i))] += w;
            } else if (sample.failed(i)) {
                double[] inside = new double[bands()];
                double total = 0;
                for (int j = 0; j < inside.length; j++) {
                    inside[j] = overlap(j, sample.lower(i), sample.upper(i));
                    total += rates[j] * inside[j];
                }
                double failed = -Math.expm1(-total);
                double before = 0;
                for (int j = 0; j < inside.length && failed > 0; j++) {
                    double hazard = rates[j] * inside[j];
                    double here = Math.exp(-before) * -Math.expm1(-hazard) / failed;
                    before += hazard;
                    double later = Math.max(0, (Math.exp(-before) - Math.exp(-total)) / failed);
                    failures[j] += w * here;
                    time[j] += w * (later * inside[j] + here * timeToFailure(rates[j], inside[j]));
                }
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
        double[] share = new double[n];
        double[] survived = survived();
        for (int j = 0; j < n; j++) {
            value -= rates[j] * survived[j];
            gradient[j] -= rates[j] * survived[j];
        }
        for (int i = 0; i < sample.size(); i++) {
            double w = sample.weight(i);
            if (sample.exact(i)) {
                int band = bandOf(sample.lower(i));
                value += w * Math.log(rates[band]);
                gradient[band] += w;
                // log r is straight in itself.
                hessian[band][band] -= w;
            } else if (sample.failed(i)) {
                Arrays.fill(share, 0);
                double total = 0;
                for (int j = 0; j < n; j++) {
                    share[j] = rates[j] * overlap(j, sample.lower(i), sample.upper(i));
                    total += share[j];
                }
                double first = 1 / Math.expm1(total);
                double second = -first * (1 + first);
                value += w * Math.log(-Math.expm1(-total));
                for (int j = 0; j < n; j++) {
                    gradient[j] += w * first * share[j];
                    for (int k = 0; k < n; k++) {
                        hessian[j][k] += w * second * share[j] * share[k];
                    }
                }
            }
        }
        for (int j = 0; j < n; j++) {
            hessian[j][j] += gradient[j];
        }
        return new Objective.Evaluation(value, gradient, hessian);
    }
}
