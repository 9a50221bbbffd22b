package sensorrounds.regression;

/**
 * Scores of lives for errors that allow for likeness within clusters: the middle of the sandwich A^-1 B A^-1, B the sum
 * over clusters of the outer product of the cluster's score. Source: Lin and Wei (1989), JASA 84:1074-1078; Liang and
 * Zeger (1986), Biometrika 73:13-22. No small-sample factor is applied.
 */
final class ClusterScores {
    private final Design design;
    private final double[] point;
    private final LifeKernel kernel;
    private final LifeKernel[] around;
    private final double[] answer = new double[LifeKernel.SIZE];
    private final double[] v;
    private final double[] u;

    ClusterScores(Design design, double[] point) {
        this.design = design;
        this.point = point;
        boolean own = design.family().hasOwnParameter();
        double q = own ? point[design.slopes()] : Double.NaN;
        kernel = design.family().kernel(q);
        around = new LifeKernel[own ? FivePoints.OFFSETS.length : 0];
        for (int i = 0; i < around.length; i++) {
            around[i] = design.family().kernel(q + FivePoints.STEP * FivePoints.OFFSETS[i]);
        }
        v = new double[design.scales()];
        u = new double[design.shapes()];
    }

    /** Adds the weighted score of one life to the sum of its cluster. */
    void addTo(double[] sum, double logEntry, double logLower, double logUpper, double w, double[] x, int offset) {
        design.standardise(x, offset, v, u);
        double m = design.centre();
        for (int i = 0; i < v.length; i++) {
            m += point[i] * v[i];
        }
        double k = 0;
        for (int i = 0; i < u.length; i++) {
            k += point[v.length + i] * u[i];
        }
        kernel.at(logEntry, logLower, logUpper, m, k, answer);
        for (int i = 0; i < v.length; i++) {
            sum[i] += w * answer[LifeKernel.M] * v[i];
        }
        for (int i = 0; i < u.length; i++) {
            sum[v.length + i] += w * answer[LifeKernel.K] * u[i];
        }
        for (int i = 0; i < around.length; i++) {
            around[i].at(logEntry, logLower, logUpper, m, k, answer);
            sum[design.slopes()] += w * FivePoints.FIRST[i] / FivePoints.STEP * answer[LifeKernel.VALUE];
        }
    }

    /** Sum of outer products; clusters without lives are null. */
    static double[][] products(double[][] byCluster, int parameters) {
        double[][] products = new double[parameters][parameters];
        for (double[] score : byCluster) {
            for (int i = 0; score != null && i < parameters; i++) {
                for (int j = 0; j < parameters; j++) {
                    products[i][j] += score[i] * score[j];
                }
            }
        }
        return products;
    }
}
