package sensorrounds.markov;

import java.util.List;

/**
 * A process seen at every moment: moves counted and time spent in each state, which are all the likelihood needs. The
 * intensity that maximises it is moves / time, its standard error that over the root of the moves (Albert 1962, Ann.
 * Math. Stat. 33:727). Mergeable.
 */
public final class JumpCounts {
    private final long[][] moves;
    private final double[] time;

    public JumpCounts(int states) {
        moves = new long[states][states];
        time = new double[states];
    }

    /**
     * Adds a subject; every sighting but the first must be of kind EXACT_MOVE.
     *
     * @throws IllegalArgumentException for another kind
     */
    public JumpCounts add(Path path) {
        List<Sighting> seen = path.sightings();
        for (int j = 1; j < seen.size(); j++) {
            if (seen.get(j).kind() != Sighting.Kind.EXACT_MOVE) {
                throw new IllegalArgumentException("subject " + path.id() + " at time "
                        + seen.get(j).time() + ": kind " + seen.get(j).kind()
                        + "; moves can be counted only from EXACT_MOVE, fit a MarkovModel instead");
            }
            int from = seen.get(j - 1).state();
            int to = seen.get(j).state();
            time[from] += seen.get(j).time() - seen.get(j - 1).time();
            moves[from][to] += from == to ? 0 : 1;
        }
        return this;
    }

    public JumpCounts merge(JumpCounts other) {
        for (int r = 0; r < time.length; r++) {
            time[r] += other.time[r];
            for (int s = 0; s < time.length; s++) {
                moves[r][s] += other.moves[r][s];
            }
        }
        return this;
    }

    public long moves(int from, int to) {
        return moves[from][to];
    }

    /** Time spent in the state, over all subjects. */
    public double time(int state) {
        return time[state];
    }

    /** Moves / time; 0 for a state in which no time was spent and that was never left. */
    public IntensityMatrix intensities() {
        double[][] q = new double[time.length][time.length];
        for (int r = 0; r < q.length; r++) {
            for (int s = 0; s < q.length; s++) {
                q[r][s] = moves[r][s] == 0 ? 0 : moves[r][s] / time[r];
            }
        }
        return IntensityMatrix.of(q);
    }

    /** Standard error of {@link #intensities}; infinite relative to a rate of 0, so NaN there. */
    public double standardError(int from, int to) {
        return moves[from][to] == 0 ? Double.NaN : Math.sqrt(moves[from][to]) / time[from];
    }

    /** Sum of moves log q - q time; minus infinity when a move was made whose intensity is 0. */
    public double logLikelihood(IntensityMatrix q) {
        double sum = 0;
        for (int r = 0; r < time.length; r++) {
            sum -= time[r] == 0 ? 0 : q.exitRate(r) * time[r];
            for (int s = 0; s < time.length; s++) {
                sum += moves[r][s] == 0 ? 0 : moves[r][s] * Math.log(q.rate(r, s));
            }
        }
        return sum;
    }
}
