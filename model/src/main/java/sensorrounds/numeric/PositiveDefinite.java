package sensorrounds.numeric;

import java.util.Optional;

/**
 * A symmetric positive definite matrix by its Cholesky factor. Source: Golub and Van Loan (1996), Matrix Computations,
 * algorithm 4.2.1.
 */
public final class PositiveDefinite {
    private final double[][] factor;

    private PositiveDefinite(double[][] factor) {
        this.factor = factor;
    }

    /** The factored matrix, or empty when it is not positive definite (NaN entries included). */
    public static Optional<PositiveDefinite> of(double[][] matrix) {
        int n = matrix.length;
        double[][] l = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = matrix[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= l[i][k] * l[j][k];
                }
                if (i != j) {
                    l[i][j] = sum / l[j][j];
                } else if (sum > 0 && sum < Double.POSITIVE_INFINITY) {
                    l[i][i] = Math.sqrt(sum);
                } else {
                    return Optional.empty();
                }
            }
        }
        return Optional.of(new PositiveDefinite(l));
    }

    /** x with A x = b. */
    public double[] solve(double[] b) {
        int n = factor.length;
        double[] x = b.clone();
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < i; k++) {
                x[i] -= factor[i][k] * x[k];
            }
            x[i] /= factor[i][i];
        }
        for (int i = n - 1; i >= 0; i--) {
            for (int k = i + 1; k < n; k++) {
                x[i] -= factor[k][i] * x[k];
            }
            x[i] /= factor[i][i];
        }
        return x;
    }

    /** The inverse, symmetric to the last bit. */
    public double[][] inverse() {
        int n = factor.length;
        double[][] inverse = new double[n][];
        for (int i = 0; i < n; i++) {
            double[] unit = new double[n];
            unit[i] = 1;
            inverse[i] = solve(unit);
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < i; j++) {
                inverse[i][j] = inverse[j][i];
            }
        }
        return inverse;
    }

    /** Largest column sum of absolute values. */
    public static double oneNorm(double[][] matrix) {
        double largest = 0;
        for (int j = 0; j < matrix.length; j++) {
            double sum = 0;
            for (double[] row : matrix) {
                sum += Math.abs(row[j]);
            }
            largest = Math.max(largest, sum);
        }
        return largest;
    }
}
