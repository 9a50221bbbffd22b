package sensorrounds.markov;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sensorrounds.numeric.SlopeObjective;

/**
 * Log-likelihood of panel data with its derivatives, by the forward algorithm with scaling and its transpose backwards
 * (Rabiner 1989, Proc. IEEE 77:257; Kalbfleisch and Lawless 1985, JASA 80:863). A model without errors is the case in
 * which the emission matrix is the identity. Chances of equal times and covariates are computed once, and their
 * derivatives in all intensities together by the adjoint of the matrix exponential, so that the cost does not grow with
 * the number of parameters.
 *
 * <p>What a sighting of state s after a time t multiplies, given the states a before: SNAPSHOT a P(t) with the column of
 * s in the emission matrix, CERTAIN a P(t) at s, EXACT_ENTRY sum over r other than s of (a P(t))(r) q(r, s), EXACT_MOVE
 * a(r) exp(q(r, r) t) times q(r, s) if the state changed.
 */
final class MarkovLikelihood implements SlopeObjective {
    /** Chances over one length of time at one pattern of covariates, and the sum of weights on their derivatives. */
    private record Span(double time, int pattern) {}

    private final MarkovModel model;
    private final List<Path> paths;
    private final List<List<Double>> patterns = new ArrayList<>();
    private final List<Span> spans = new ArrayList<>();
    /** For each path, for each sighting: pattern and span since the one before. */
    private final int[][] patternOf;

    private final int[][] spanOf;
    private final int n;

    MarkovLikelihood(MarkovModel model, List<Path> paths) {
        this.model = model;
        this.paths = List.copyOf(paths);
        this.n = model.states();
        Map<List<Double>, Integer> patternIndex = new HashMap<>();
        Map<Span, Integer> spanIndex = new LinkedHashMap<>();
        patternOf = new int[paths.size()][];
        spanOf = new int[paths.size()][];
        for (int p = 0; p < paths.size(); p++) {
            List<Sighting> seen = paths.get(p).sightings();
            patternOf[p] = new int[seen.size()];
            spanOf[p] = new int[seen.size()];
            for (int j = 0; j < seen.size(); j++) {
                require(paths.get(p), seen.get(j));
                if (j == 0) {
                    continue;
                }
                Sighting before = seen.get(j - 1);
                int pattern = patternIndex.computeIfAbsent(before.covariates(), z -> {
                    patterns.add(z);
                    return patterns.size() - 1;
                });
                patternOf[p][j] = pattern;
                spanOf[p][j] = seen.get(j).kind() == Sighting.Kind.EXACT_MOVE
                        ? -1
                        : spanIndex.computeIfAbsent(new Span(seen.get(j).time() - before.time(), pattern), s -> {
                            spans.add(s);
                            return spans.size() - 1;
                        });
            }
        }
    }

    private void require(Path path, Sighting s) {
        if (s.state() >= n || s.covariates().size() != model.covariates()) {
            throw new IllegalArgumentException("subject " + path.id() + " at time " + s.time() + ": state " + s.state()
                    + " with " + s.covariates().size() + " covariates; the model has states 0 to " + (n - 1) + " and "
                    + model.covariates() + " covariates");
        }
    }

    /** Everything that belongs to one point. */
    private final class Pass {
        private final MarkovModel at;
        private final double[][] emission;
        private final double[][][] q;
        private final double[][][] chances;
        private final double[][][] chanceWeights;
        private final double[][][] rateWeights;
        private final double[][] seenAs = new double[n][n];
        private double value;
        private String impossible;

        Pass(double[] point) {
            at = model.at(point);
            emission = at.emission().rows();
            q = new double[patterns.size()][][];
            for (int z = 0; z < q.length; z++) {
                q[z] = at.intensities(patterns.get(z)).rows();
            }
            chances = new double[spans.size()][][];
            for (int i = 0; i < chances.length; i++) {
                chances[i] = IntensityMatrix.of(q[spans.get(i).pattern()])
                        .transition(spans.get(i).time());
            }
            chanceWeights = new double[spans.size()][n][n];
            rateWeights = new double[patterns.size()][n][n];
            for (int p = 0; p < paths.size() && impossible == null; p++) {
                add(p);
            }
        }

        /** What the sighting multiplies: the matrix from the states at the last sighting to those at this one. */
        private double[][] factor(int p, int j) {
            Sighting s = paths.get(p).sightings().get(j);
            double[][] rates = q[patternOf[p][j]];
            double[][] m = new double[n][n];
            if (s.kind() == Sighting.Kind.EXACT_MOVE) {
                double t = s.time() - paths.get(p).sightings().get(j - 1).time();
                for (int r = 0; r < n; r++) {
                    m[r][s.state()] = Math.exp(rates[r][r] * t) * (r == s.state() ? 1 : rates[r][s.state()]);
                }
                return m;
            }
            double[][] chance = chances[spanOf[p][j]];
            for (int r = 0; r < n; r++) {
                for (int k = 0; k < n; k++) {
                    switch (s.kind()) {
                        case SNAPSHOT -> m[r][k] = chance[r][k] * emission[k][s.state()];
                        case EXACT_ENTRY -> m[r][s.state()] += k == s.state() ? 0 : chance[r][k] * rates[k][s.state()];
                        default -> m[r][k] = k == s.state() ? chance[r][k] : 0;
                    }
                }
            }
            return m;
        }

        private void add(int p) {
            List<Sighting> seen = paths.get(p).sightings();
            if (seen.isEmpty()) {
                return;
            }
            double[][] forward = new double[seen.size()][n];
            double[] scale = new double[seen.size()];
            double[][][] factors = new double[seen.size()][][];
            Sighting first = seen.get(0);
            boolean withError = model.hidden() && first.kind() == Sighting.Kind.SNAPSHOT;
            for (int r = 0; r < n; r++) {
                forward[0][r] = withError ? at.initial(r) * emission[r][first.state()] : r == first.state() ? 1 : 0;
            }
            for (int j = 0; j < seen.size(); j++) {
                if (j > 0) {
                    factors[j] = factor(p, j);
                    for (int r = 0; r < n; r++) {
                        for (int k = 0; k < n; k++) {
                            forward[j][k] += forward[j - 1][r] * factors[j][r][k];
                        }
                    }
                }
                for (double a : forward[j]) {
                    scale[j] += a;
                }
                if (!(scale[j] > 0)) {
                    impossible = "subject " + paths.get(p).id() + " cannot be seen in state "
                            + seen.get(j).state() + " at time " + seen.get(j).time() + " after what was seen before";
                    value = Double.NEGATIVE_INFINITY;
                    return;
                }
                for (int k = 0; k < n; k++) {
                    forward[j][k] /= scale[j];
                }
                value += Math.log(scale[j]);
            }
            backward(p, seen, forward, scale, factors, withError);
        }

        private void backward(
                int p,
                List<Sighting> seen,
                double[][] forward,
                double[] scale,
                double[][][] factors,
                boolean withError) {
            double[] after = new double[n];
            Arrays.fill(after, 1);
            for (int j = seen.size() - 1; j > 0; j--) {
                Sighting s = seen.get(j);
                countSeen(s, forward[j], after);
                weigh(p, j, s, forward[j - 1], after, scale[j]);
                double[] before = new double[n];
                for (int r = 0; r < n; r++) {
                    for (int k = 0; k < n; k++) {
                        before[r] += factors[j][r][k] * after[k] / scale[j];
                    }
                }
                after = before;
            }
            if (withError) {
                countSeen(seen.get(0), forward[0], after);
            }
        }

        /** Chance, given all that was seen, that each true state was the one seen as this. */
        private void countSeen(Sighting s, double[] forward, double[] after) {
            if (s.kind() == Sighting.Kind.SNAPSHOT) {
                for (int k = 0; k < n; k++) {
                    seenAs[k][s.state()] += forward[k] * after[k];
                }
            }
        }

        /** Adds the derivatives of the log-likelihood in the chances and intensities of one sighting. */
        private void weigh(int p, int j, Sighting s, double[] forward, double[] after, double scale) {
            double[][] rates = q[patternOf[p][j]];
            double[][] rateWeight = rateWeights[patternOf[p][j]];
            int to = s.state();
            if (s.kind() == Sighting.Kind.EXACT_MOVE) {
                double t = s.time() - paths.get(p).sightings().get(j - 1).time();
                for (int r = 0; r < n; r++) {
                    double held = forward[r] * Math.exp(rates[r][r] * t) * after[to] / scale;
                    rateWeight[r][r] += t * held * (r == to ? 1 : rates[r][to]);
                    rateWeight[r][to] += r == to ? 0 : held;
                }
                return;
            }
            double[][] chance = chances[spanOf[p][j]];
            double[][] weight = chanceWeights[spanOf[p][j]];
            for (int k = 0; k < n; k++) {
                double onward = switch (s.kind()) {
                    case SNAPSHOT -> emission[k][to] * after[k];
                    case EXACT_ENTRY -> k == to ? 0 : rates[k][to] * after[to];
                    default -> k == to ? after[k] : 0;
                };
                double arrived = 0;
                for (int r = 0; r < n; r++) {
                    weight[r][k] += forward[r] * onward / scale;
                    arrived += forward[r] * chance[r][k];
                }
                if (s.kind() == Sighting.Kind.EXACT_ENTRY && k != to) {
                    rateWeight[k][to] += arrived * after[to] / scale;
                }
            }
        }

        double[] gradient() {
            double[] gradient = new double[model.parameters()];
            for (int i = 0; i < chances.length; i++) {
                double t = spans.get(i).time();
                int z = spans.get(i).pattern();
                double[][] derivative =
                        MatrixExponential.adjointDerivative(SmallMatrix.times(q[z], t), chanceWeights[i]);
                SmallMatrix.add(rateWeights[z], t, derivative);
            }
            for (int m = 0; m < model.moves().size(); m++) {
                int from = model.moves().get(m).from();
                int to = model.moves().get(m).to();
                for (int z = 0; z < q.length; z++) {
                    // Raising a rate lowers the diagonal by as much; the parameter is its log.
                    double slope = q[z][from][to] * (rateWeights[z][from][to] - rateWeights[z][from][from]);
                    gradient[m] += slope;
                    for (int k = 0; k < model.covariates(); k++) {
                        gradient[(k + 1) * model.moves().size() + m] +=
                                slope * patterns.get(z).get(k);
                    }
                }
            }
            for (int e = 0; e < model.errors().size(); e++) {
                int from = model.errors().get(e).from();
                int to = model.errors().get(e).to();
                double seen = 0;
                for (double count : seenAs[from]) {
                    seen += count;
                }
                gradient[model.errorsFrom() + e] = seenAs[from][to] - seen * emission[from][to];
            }
            return gradient;
        }
    }

    @Override
    public Evaluation at(double[] point) {
        for (double x : point) {
            if (!(Math.abs(x) < 300)) {
                return new Evaluation(Double.NEGATIVE_INFINITY, new double[point.length], null);
            }
        }
        Pass pass = new Pass(point);
        double[] gradient = pass.impossible == null ? pass.gradient() : new double[point.length];
        return new Evaluation(pass.value, gradient, null);
    }

    /** Why the data cannot happen under the model at this point; null when they can. */
    String impossible(double[] point) {
        return new Pass(point).impossible;
    }
}
