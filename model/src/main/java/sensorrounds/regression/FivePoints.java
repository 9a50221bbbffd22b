package sensorrounds.regression;

import sensorrounds.numeric.Objective;

/**
 * Derivatives in the parameter of the law of W by central differences on five points (Abramowitz and Stegun 1964,
 * 25.3.6 and 25.3.24), errors of order step^4: derivatives of the incomplete gamma function in its shape have no simple
 * form. All other derivatives are analytic.
 */
final class FivePoints {
    static final double STEP = 0.01;
    static final int[] OFFSETS = {-2, -1, 1, 2};
    static final double[] FIRST = {1 / 12.0, -8 / 12.0, 8 / 12.0, -1 / 12.0};
    private static final double[] SECOND = {-1 / 12.0, 16 / 12.0, 16 / 12.0, -1 / 12.0};
    private static final double SECOND_AT_CENTRE = -30 / 12.0;

    private FivePoints() {}

    /** The log-likelihood of some lives, the parameter of the law apart from the others. */
    interface Pass {
        LikelihoodSums at(double parameter, double[] slopes);
    }

    /** The log-likelihood at all parameters, that of the law last if there is one. */
    static Objective.Evaluation at(LifeSource lives, Design design, double[] point) {
        return at((parameter, slopes) -> lives.sums(design, parameter, slopes), design, point);
    }

    /** {@link #at(LifeSource, Design, double[])} of whatever lives the pass runs over. */
    static Objective.Evaluation at(Pass pass, Design design, double[] point) {
        if (!design.family().hasOwnParameter()) {
            return pass.at(Double.NaN, point).evaluation();
        }
        int n = design.slopes();
        double q = point[n];
        double[] slopes = java.util.Arrays.copyOf(point, n);
        Objective.Evaluation centre = pass.at(q, slopes).evaluation();
        double[] gradient = java.util.Arrays.copyOf(centre.gradient(), n + 1);
        double[][] hessian = new double[n + 1][n + 1];
        for (int i = 0; i < n; i++) {
            System.arraycopy(centre.hessian()[i], 0, hessian[i], 0, n);
        }
        hessian[n][n] = SECOND_AT_CENTRE * centre.value() / (STEP * STEP);
        for (int i = 0; i < OFFSETS.length; i++) {
            LikelihoodSums at = pass.at(q + STEP * OFFSETS[i], slopes);
            gradient[n] += FIRST[i] / STEP * at.value();
            hessian[n][n] += SECOND[i] / (STEP * STEP) * at.value();
            for (int j = 0; j < n; j++) {
                hessian[n][j] += FIRST[i] / STEP * at.gradient(j);
            }
        }
        for (int j = 0; j < n; j++) {
            hessian[j][n] = hessian[n][j];
        }
        return new Objective.Evaluation(centre.value(), gradient, hessian);
    }
}
