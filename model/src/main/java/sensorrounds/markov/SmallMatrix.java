package sensorrounds.markov;

/** Dense matrices of a few rows, as arrays of rows. Source of the solver: Golub and Van Loan (1996), algorithm 3.4.1. */
final class SmallMatrix {
    private SmallMatrix() {}

    static double[][] identity(int n) {
        double[][] one = new double[n][n];
        for (int i = 0; i < n; i++) {
            one[i][i] = 1;
        }
        return one;
    }

    static double[][] times(double[][] a, double factor) {
        int n = a.length;
        double[][] result = new double[n][n];
        add(result, factor, a);
        return result;
    }

    /** to += factor a. */
    static void add(double[][] to, double factor, double[][] a) {
        for (int i = 0; i < to.length; i++) {
            for (int j = 0; j < to.length; j++) {
                to[i][j] += factor * a[i][j];
            }
        }
    }

    static double[][] product(double[][] a, double[][] b) {
        int n = a.length;
        double[][] result = new double[n][n];
        for (int i = 0; i < n; i++) {
            double[] row = result[i];
            for (int k = 0; k < n; k++) {
                double factor = a[i][k];
                if (factor != 0) {
                    double[] other = b[k];
                    for (int j = 0; j < n; j++) {
                        row[j] += factor * other[j];
                    }
                }
            }
        }
        return result;
    }

    /** X with A X = B, by elimination with row exchange; overwrites both. */
    static double[][] solve(double[][] a, double[][] b) {
        int n = a.length;
        for (int c = 0; c < n; c++) {
            int pivot = c;
            for (int i = c + 1; i < n; i++) {
                pivot = Math.abs(a[i][c]) > Math.abs(a[pivot][c]) ? i : pivot;
            }
            swap(a, c, pivot);
            swap(b, c, pivot);
            for (int i = c + 1; i < n; i++) {
                double factor = a[i][c] / a[c][c];
                if (factor != 0) {
                    subtract(a[i], factor, a[c], c);
                    subtract(b[i], factor, b[c], 0);
                }
            }
        }
        for (int i = n - 1; i >= 0; i--) {
            for (int k = i + 1; k < n; k++) {
                subtract(b[i], a[i][k], b[k], 0);
            }
            for (int j = 0; j < n; j++) {
                b[i][j] /= a[i][i];
            }
        }
        return b;
    }

    static double oneNorm(double[][] a) {
        double largest = 0;
        for (int j = 0; j < a.length; j++) {
            double sum = 0;
            for (double[] row : a) {
                sum += Math.abs(row[j]);
            }
            largest = Math.max(largest, sum);
            if (Double.isNaN(sum)) {
                return Double.NaN;
            }
        }
        return largest;
    }

    private static void subtract(double[] from, double factor, double[] row, int start) {
        for (int j = start; j < from.length; j++) {
            from[j] -= factor * row[j];
        }
    }

    private static void swap(double[][] rows, int i, int j) {
        double[] held = rows[i];
        rows[i] = rows[j];
        rows[j] = held;
    }
}
