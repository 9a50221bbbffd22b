package sensorrounds.markov;

import java.io.Serializable;

/**
 * Chances of what is seen given the true state: entry (r, s) is the chance that state r is seen as s. Rows sum to 1.
 * Immutable. Source: Jackson et al. (2003), The Statistician 52:193-209.
 */
public final class EmissionMatrix implements Serializable {
    private static final long serialVersionUID = 1;
    private static final double SUM_TOLERANCE = 1e-9;

    private final double[][] e;

    private EmissionMatrix(double[][] e) {
        this.e = e;
    }

    /** Nothing is seen wrongly. */
    public static EmissionMatrix certain(int states) {
        return new EmissionMatrix(SmallMatrix.identity(states));
    }

    /**
     * @param chances rows that sum to 1, the diagonal positive
     * @throws IllegalArgumentException otherwise
     */
    public static EmissionMatrix of(double[][] chances) {
        double[][] e = new double[chances.length][];
        for (int r = 0; r < chances.length; r++) {
            double sum = 0;
            for (double chance : chances[r]) {
                sum += chance >= 0 ? chance : Double.NaN;
            }
            if (chances[r].length != chances.length || !(Math.abs(sum - 1) <= SUM_TOLERANCE) || !(chances[r][r] > 0)) {
                throw new IllegalArgumentException("row " + r + " of the emission matrix has " + chances[r].length
                        + " chances with sum " + sum + "; expected " + chances.length
                        + " chances from 0 to 1 with sum 1, that of seeing the state right above 0");
            }
            e[r] = chances[r].clone();
        }
        return new EmissionMatrix(e);
    }

    public int states() {
        return e.length;
    }

    /** Chance that a true state is seen as another. */
    public double chance(int truth, int seen) {
        return e[truth][seen];
    }

    /** A copy of the rows. */
    public double[][] rows() {
        double[][] copy = new double[e.length][];
        for (int r = 0; r < e.length; r++) {
            copy[r] = e[r].clone();
        }
        return copy;
    }
}
