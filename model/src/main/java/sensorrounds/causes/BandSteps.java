package sensorrounds.causes;

import java.util.stream.IntStream;
import sensorrounds.numeric.Maximum;
import sensorrounds.numeric.NewtonMaximizer;
import sensorrounds.numeric.Objective;

/**
 * Maximum over rates by cause and band. The EM algorithm (failures by cause and band over time at risk by band, both as expected
 * given the rates) also finds rates whose best value is 0; Newton's method then runs on the logs of the others. A rate at 0 is
 * taken back if the likelihood rises from there.
 */
final class BandSteps {
    private static final int EM_STEPS = 200;
    private static final int ROUNDS = 20;
    private static final double NEXT_TO_NONE = 1e-7;

    private final CauseModel model;
    private final CauseLikelihood likelihood;
    private final double[] edges;

    /** @param free parameters whose rate is above 0 */
    record Answer(Maximum maximum, double[] point, int[] free) {}

    BandSteps(CauseModel model, CauseLikelihood likelihood, double[] edges) {
        this.model = model;
        this.likelihood = likelihood;
        this.edges = edges;
    }

    Answer maximum(double[] start) {
        double[] point = start.clone();
        Answer answer = null;
        for (int round = 0; round < ROUNDS; round++) {
            for (int step = 0; step < EM_STEPS; step++) {
                point = step(point);
            }
            dropped(point);
            double[] all = point;
            int[] free = IntStream.range(0, all.length)
                    .filter(p -> all[p] > Double.NEGATIVE_INFINITY)
                    .toArray();
            Maximum maximum = NewtonMaximizer.withDefaults()
                    .maximize(
                            objective(all, free),
                            IntStream.of(free).mapToDouble(p -> all[p]).toArray());
            for (int i = 0; i < free.length; i++) {
                all[free[i]] = maximum.point()[i];
            }
            answer = new Answer(maximum, all.clone(), free);
            if (!takenBack(all)) {
                break;
            }
        }
        return answer;
    }

    private double overlap(int band, double from, double to) {
        return Math.max(0, Math.min(edges[band + 1], to) - Math.max(edges[band], from));
    }

    private double[] survived() {
        double[] time = new double[edges.length - 1];
        for (int i = 0; i < likelihood.lives(); i++) {
            for (int b = 0; b < time.length; b++) {
                time[b] += likelihood.weight(i) * overlap(b, likelihood.entry(i), likelihood.lower(i));
            }
        }
        return time;
    }

    /** Failures by parameter, then time at risk by band, as expected. */
    double[][] expected(double[] point) {
        double[] failures = new double[point.length];
        double[] time = survived();
        likelihood.expected(point, (life, age, cause, weight) -> {
            int band = 0;
            while (age > edges[band + 1]) {
                band++;
            }
            failures[model.offset(cause) + band] += weight;
            for (int b = 0; b <= band; b++) {
                time[b] += weight * overlap(b, likelihood.lower(life), age);
            }
        });
        return new double[][] {failures, time};
    }

    private double[] step(double[] point) {
        double[][] expected = expected(point);
        double[] next = new double[point.length];
        for (int p = 0; p < next.length; p++) {
            next[p] = Math.log(expected[0][p] / expected[1][p % (edges.length - 1)]);
            next[p] = Double.isNaN(next[p]) ? Double.NEGATIVE_INFINITY : next[p];
        }
        return next;
    }

    private void dropped(double[] point) {
        double[] failures = expected(point)[0];
        double all = IntStream.range(0, failures.length)
                .mapToDouble(p -> failures[p])
                .sum();
        for (int p = 0; p < point.length; p++) {
            point[p] = failures[p] > NEXT_TO_NONE * all ? point[p] : Double.NEGATIVE_INFINITY;
        }
    }

    private boolean takenBack(double[] point) {
        double[] time = expected(point)[1];
        boolean any = false;
        for (int p = 0; p < point.length; p++) {
            double atRisk = time[p % (edges.length - 1)];
            if (point[p] == Double.NEGATIVE_INFINITY && atRisk > 0) {
                double[] tried = point.clone();
                tried[p] = Math.log(1e-9 / atRisk);
                // d/d log r = r d/dr: its sign at a rate next to 0.
                if (likelihood.at(tried).gradient()[p] > 1e-7 * 1e-9) {
                    point[p] = Math.log(1e-3 / atRisk);
                    any = true;
                }
            }
        }
        return any;
    }

    private Objective objective(double[] all, int[] free) {
        return values -> {
            double[] point = all.clone();
            for (int i = 0; i < free.length; i++) {
                point[free[i]] = values[i];
            }
            Objective.Evaluation at = likelihood.at(point);
            double[] gradient = new double[free.length];
            double[][] hessian = new double[free.length][free.length];
            for (int i = 0; i < free.length; i++) {
                gradient[i] = at.gradient()[free[i]];
                for (int j = 0; j < free.length; j++) {
                    hessian[i][j] = at.hessian()[free[i]][free[j]];
                }
            }
            return new Objective.Evaluation(at.value(), gradient, hessian);
        };
    }
}
