package sensorrounds.markov;

import java.io.Serializable;

/**
 * Intensities of a Markov process in continuous time: entry (r, s) is the rate of moving from state r to s, per unit of
 * time; the diagonal makes rows sum to 0. States count from 0. Immutable. Source: Cox and Miller (1965), The Theory of
 * Stochastic Processes, ch. 4.
 */
public final class IntensityMatrix implements Serializable {
    private static final long serialVersionUID = 1;

    private final double[][] q;

    private IntensityMatrix(double[][] q) {
        this.q = q;
    }

    /**
     * @param rates rates off the diagonal, 0 where a move is not allowed; the diagonal is not read
     * @throws IllegalArgumentException when it is not square, or a rate is negative or not finite
     */
    public static IntensityMatrix of(double[][] rates) {
        int n = rates.length;
        double[][] q = new double[n][n];
        for (int r = 0; r < n; r++) {
            if (rates[r].length != n) {
                throw new IllegalArgumentException("row " + r + " of the intensities has " + rates[r].length
                        + " entries, expected " + n + ": one per state");
            }
            for (int s = 0; s < n; s++) {
                if (r != s) {
                    if (!(rates[r][s] >= 0 && rates[r][s] < Double.POSITIVE_INFINITY)) {
                        throw new IllegalArgumentException("intensity from state " + r + " to " + s + " is "
                                + rates[r][s] + "; expected 0 (not allowed) or a positive rate");
                    }
                    q[r][s] = rates[r][s];
                    q[r][r] -= rates[r][s];
                }
            }
        }
        return new IntensityMatrix(q);
    }

    public int states() {
        return q.length;
    }

    /** Rate from one state to another, 0 when not allowed; minus the rate of leaving on the diagonal. */
    public double rate(int from, int to) {
        return q[from][to];
    }

    /** Rate of leaving the state by any move. */
    public double exitRate(int state) {
        return -q[state][state];
    }

    /** Mean time spent in the state at one go; infinite for an absorbing one. */
    public double meanSojourn(int state) {
        return 1 / exitRate(state);
    }

    /** P(t) = exp(Q t): entry (r, s) is the chance to be in s a time t after being in r. */
    public double[][] transition(double time) {
        if (!(time >= 0 && time < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("chances over a time of " + time + "; expected a time from 0 up");
        }
        double[][] p = MatrixExponential.of(SmallMatrix.times(q, time));
        for (double[] row : p) {
            for (int s = 0; s < row.length; s++) {
                // Rounding can leave the chance of an impossible move a hair under 0.
                row[s] = Math.max(0, row[s]);
            }
        }
        return p;
    }

    /** A copy of the rows. */
    public double[][] rows() {
        double[][] copy = new double[q.length][];
        for (int r = 0; r < q.length; r++) {
            copy[r] = q[r].clone();
        }
        return copy;
    }
}
