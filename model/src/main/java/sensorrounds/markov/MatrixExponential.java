package sensorrounds.markov;

/**
 * exp(A) of a small dense matrix by scaling, a Pade approximant and squaring: Higham (2005), SIAM J. Matrix Anal. Appl.
 * 26:1179-1193, algorithm 2.3 with its bounds on the norm and its degrees. No eigenvalues are used, so repeated ones, as
 * progressive models have them, do no harm.
 *
 * <p>Its directional derivative L(A, E) = lim (exp(A + hE) - exp(A)) / h is the upper right block of the exponential of
 * [[A, E], [0, A]] (Van Loan 1978, IEEE Trans. Autom. Control 23:395); the adjoint of E -> L(A, E) is W -> L(A', W)
 * (Higham 2008, Functions of Matrices, 3.2), so one block exponential gives the derivatives in every entry of A.
 */
public final class MatrixExponential {
    private static final double[] NORM_BOUNDS = {
        1.495585217958292e-2, 2.539398330063230e-1, 9.504178996162932e-1, 2.097847961257068e0
    };
    private static final double NORM_BOUND_13 = 5.371920351148152;
    private static final double[][] COEFFICIENTS = {
        {120, 60, 12, 1},
        {30240, 15120, 3360, 420, 30, 1},
        {17297280, 8648640, 1995840, 277200, 25200, 1512, 56, 1},
        {17643225600.0, 8821612800.0, 2075673600, 302702400, 30270240, 2162160, 110880, 3960, 90, 1}
    };
    private static final double[] COEFFICIENTS_13 = {
        64764752532480000.0,
        32382376266240000.0,
        7771770303897600.0,
        1187353796428800.0,
        129060195264000.0,
        10559470521600.0,
        670442572800.0,
        33522128640.0,
        1323241920,
        40840800,
        960960,
        16380,
        182,
        1
    };

    private MatrixExponential() {}

    /**
     * exp(A).
     *
     * @throws IllegalArgumentException when an entry is not a finite number
     */
    public static double[][] of(double[][] a) {
        double norm = SmallMatrix.oneNorm(a);
        if (!(norm < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("exp of a matrix with norm " + norm + "; every entry must be finite");
        }
        for (int i = 0; i < NORM_BOUNDS.length; i++) {
            if (norm <= NORM_BOUNDS[i]) {
                return pade(a, COEFFICIENTS[i]);
            }
        }
        int squarings = norm <= NORM_BOUND_13 ? 0 : Math.getExponent(norm / NORM_BOUND_13) + 1;
        double[][] result = pade(SmallMatrix.times(a, Math.scalb(1.0, -squarings)), COEFFICIENTS_13);
        for (int i = 0; i < squarings; i++) {
            result = SmallMatrix.product(result, result);
        }
        return result;
    }

    /** Sum over i, j of w[i][j] times the derivative of exp(A)[i][j] in every entry of A: L(A', W). */
    public static double[][] adjointDerivative(double[][] a, double[][] w) {
        int n = a.length;
        double[][] block = new double[2 * n][2 * n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                block[i][j] = a[j][i];
                block[n + i][n + j] = a[j][i];
                block[i][n + j] = w[i][j];
            }
        }
        double[][] exponential = of(block);
        double[][] result = new double[n][n];
        for (int i = 0; i < n; i++) {
            System.arraycopy(exponential[i], n, result[i], 0, n);
        }
        return result;
    }

    /** q(A)^-1 p(A) with p = V + U, q = V - U; U odd and V even in A. */
    private static double[][] pade(double[][] a, double[] b) {
        int n = a.length;
        double[][] square = SmallMatrix.product(a, a);
        double[][] odd = new double[n][n];
        double[][] even = new double[n][n];
        double[][] power = SmallMatrix.identity(n);
        for (int k = 0; k < b.length; k += 2) {
            if (k > 0) {
                power = SmallMatrix.product(power, square);
            }
            SmallMatrix.add(even, b[k], power);
            SmallMatrix.add(odd, b[k + 1], power);
        }
        odd = SmallMatrix.product(a, odd);
        double[][] numerator = new double[n][n];
        double[][] denominator = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                numerator[i][j] = even[i][j] + odd[i][j];
                denominator[i][j] = even[i][j] - odd[i][j];
            }
        }
        return SmallMatrix.solve(denominator, numerator);
    }
}
