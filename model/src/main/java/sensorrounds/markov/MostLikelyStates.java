package sensorrounds.markov;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The most likely sequence of true states at the sightings of one subject: Viterbi (1967), IEEE Trans. Inf. 13:260. */
public final class MostLikelyStates {
    private MostLikelyStates() {}

    /**
     * One state per sighting; of equally likely ones the lowest.
     *
     * @throws IllegalArgumentException when the sightings cannot happen under the model
     */
    public static List<Integer> of(MarkovModel model, Path path) {
        List<Sighting> seen = path.sightings();
        if (seen.isEmpty()) {
            return List.of();
        }
        int n = model.states();
        int[][] cameFrom = new int[seen.size()][n];
        double[] best = new double[n];
        Sighting first = seen.get(0);
        for (int s = 0; s < n; s++) {
            best[s] = model.hidden() && first.kind() == Sighting.Kind.SNAPSHOT
                    ? Math.log(model.initial(s) * model.emission().chance(s, first.state()))
                    : s == first.state() ? 0 : Double.NEGATIVE_INFINITY;
        }
        for (int j = 1; j < seen.size(); j++) {
            double[] next = new double[n];
            for (int s = 0; s < n; s++) {
                next[s] = Double.NEGATIVE_INFINITY;
                for (int r = 0; r < n; r++) {
                    double p = best[r] + Math.log(chance(model, seen.get(j - 1), seen.get(j), r, s));
                    if (p > next[s]) {
                        next[s] = p;
                        cameFrom[j][s] = r;
                    }
                }
            }
            best = next;
        }
        int state = 0;
        for (int s = 1; s < n; s++) {
            state = best[s] > best[state] ? s : state;
        }
        if (!(best[state] > Double.NEGATIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "the sightings of subject " + path.id() + " cannot happen under the model");
        }
        Integer[] states = new Integer[seen.size()];
        for (int j = seen.size() - 1; j >= 0; j--) {
            states[j] = state;
            state = cameFrom[j][state];
        }
        return new ArrayList<>(Arrays.asList(states));
    }

    private static double chance(MarkovModel model, Sighting from, Sighting to, int r, int s) {
        IntensityMatrix q = model.intensities(from.covariates());
        double time = to.time() - from.time();
        return switch (to.kind()) {
            case SNAPSHOT -> q.transition(time)[r][s] * model.emission().chance(s, to.state());
            case CERTAIN -> s == to.state() ? q.transition(time)[r][s] : 0;
            case EXACT_ENTRY -> {
                double density = 0;
                double[][] p = q.transition(time);
                for (int k = 0; k < q.states(); k++) {
                    density += k == to.state() ? 0 : p[r][k] * q.rate(k, to.state());
                }
                yield s == to.state() ? density : 0;
            }
            case EXACT_MOVE -> s == to.state() ? Math.exp(-q.exitRate(r) * time) * (r == s ? 1 : q.rate(r, s)) : 0;
        };
    }
}
