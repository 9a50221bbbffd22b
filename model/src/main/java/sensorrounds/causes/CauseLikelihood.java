package sensorrounds.causes;

import java.util.List;
import sensorrounds.numeric.Objective;

/**
 * Log-likelihood of lives with causes that may be masked, given alive at entry. A life adds w times minus the cumulative hazard
 * of all causes from entry to the age last known good and, if it failed by one of the causes A, log of the integral over
 * (lower, upper] of sum over A of h_k(t) exp(-(H(t) - H(lower))) dt, or log sum over A of h_k(t) at an exact age. That a cause
 * stayed unknown must not depend on which cause it was: then nothing else enters. Sources: Goetghebeur and Ryan (1995),
 * Biometrika 82:821-833; Craiu and Duchesne (2004), Biometrika 91:543-558 (both from memory); exact ages: Park (2005), IEEE
 * Trans. Reliability 54:282-290.
 */
final class CauseLikelihood {
    private final CauseModel model;
    private final double[] entry;
    private final double[] lower;
    private final double[] weight;
    private final int[][] candidates;
    /** Null for a life that did not fail; one age with weight 0 for an exact one. */
    private final AgeNodes[] nodes;

    private final boolean[] exact;

    /** Takes what a failure adds to expectations. */
    @FunctionalInterface
    interface Sink {
        /** @param weight share of the life's weight that failed at this age by this cause, given all that is known of it */
        void failed(int life, double age, int cause, double weight);
    }

    <C> CauseLikelihood(CauseModel model, MaskedSample<C> sample) {
        this.model = model;
        List<MaskedLife<C>> lives = sample.lives();
        int n = lives.size();
        entry = new double[n];
        lower = new double[n];
        weight = new double[n];
        candidates = new int[n][];
        nodes = new AgeNodes[n];
        exact = new boolean[n];
        for (int i = 0; i < n; i++) {
            MaskedLife<C> life = lives.get(i);
            entry[i] = life.entry();
            lower[i] = life.lower();
            weight[i] = life.weight();
            candidates[i] = life.candidates().stream()
                    .mapToInt(sample.causes()::indexOf)
                    .sorted()
                    .toArray();
            exact[i] = life.lower() == life.upper();
            if (life.failed()) {
                nodes[i] = exact[i]
                        ? new AgeNodes(new double[] {lower[i]}, new double[] {1})
                        : model.nodes(life.lower(), life.upper());
            }
        }
    }

    int lives() {
        return weight.length;
    }

    double entry(int life) {
        return entry[life];
    }

    double lower(int life) {
        return lower[life];
    }

    double weight(int life) {
        return weight[life];
    }

    Objective.Evaluation at(double[] point) {
        int p = model.parameters();
        double value = 0;
        double[] gradient = new double[p];
        double[][] hessian = new double[p][p];
        CauseModel.State start = model.state();
        CauseModel.State here = model.state();
        CauseWindow window = new CauseWindow(model);
        for (int i = 0; i < weight.length; i++) {
            double w = weight[i];
            start.fill(entry[i], point);
            here.fill(lower[i], point);
            value -= w * (here.cumulative - start.cumulative);
            for (int a = 0; a < p; a++) {
                gradient[a] -= w * (here.slope[a] - start.slope[a]);
            }
            here.addCumulativeCurve(-w, hessian);
            start.addCumulativeCurve(w, hessian);
            if (nodes[i] != null) {
                window.integrate(nodes[i], here, candidates[i], point);
                value += w * Math.log(window.value());
                for (int a = 0; a < p; a++) {
                    double slope = window.gradient()[a] / window.value();
                    gradient[a] += w * slope;
                    for (int b = 0; b < p; b++) {
                        hessian[a][b] += w * (window.hessian()[a][b] - slope * window.gradient()[b]) / window.value();
                    }
                }
            }
        }
        return new Objective.Evaluation(value, gradient, hessian);
    }

    /** Expectation step: when and by what each life failed, given the hazards at this point. */
    void expected(double[] point, Sink sink) {
        CauseModel.State from = model.state();
        CauseModel.State there = model.state();
        for (int i = 0; i < weight.length; i++) {
            if (nodes[i] == null) {
                continue;
            }
            from.fill(lower[i], point);
            double[] ages = nodes[i].ages();
            double[][] share = new double[ages.length][candidates[i].length];
            double all = 0;
            for (int n = 0; n < ages.length; n++) {
                there.fill(ages[n], point);
                double f = nodes[i].weights()[n] * Math.exp(from.cumulative - there.cumulative);
                for (int c = 0; c < candidates[i].length; c++) {
                    share[n][c] = f * there.of(candidates[i][c]).hazard;
                    all += share[n][c];
                }
            }
            for (int n = 0; n < ages.length && all > 0; n++) {
                for (int c = 0; c < candidates[i].length; c++) {
                    sink.failed(i, ages[n], candidates[i][c], weight[i] * share[n][c] / all);
                }
            }
        }
    }
}
