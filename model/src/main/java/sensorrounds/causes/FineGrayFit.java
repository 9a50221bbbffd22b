package sensorrounds.causes;

import java.util.List;

/** What came of a {@link FineGray} regression; asking a failed one for its numbers throws. */
public final class FineGrayFit {
    private final List<String> columns;
    private final Status status;
    private final String why;
    private final double[] values;
    private final double[][] covariance;

    /** What came of a fit. */
    public enum Status {
        CONVERGED,
        /** No life ended by the cause. */
        NO_FAILURES,
        /** A column says nothing of its own. */
        COLLINEAR,
        /** The data leave a coefficient undetermined. */
        FLAT_LIKELIHOOD,
        /** The search ended without a maximum. */
        NOT_CONVERGED
    }

    private FineGrayFit(List<String> columns, Status status, String why, double[] values, double[][] covariance) {
        this.columns = List.copyOf(columns);
        this.status = status;
        this.why = why;
        this.values = values;
        this.covariance = covariance;
    }

    static FineGrayFit failed(List<String> columns, Status status, String why) {
        return new FineGrayFit(columns, status, why, null, null);
    }

    static FineGrayFit of(List<String> columns, Subdistribution likelihood, double[] beta, double[][] inverse) {
        int p = beta.length;
        double[][] spread = likelihood.scoreCovariance(beta);
        double[] values = new double[p];
        double[][] covariance = new double[p][p];
        for (int j = 0; j < p; j++) {
            values[j] = beta[j] / likelihood.scale(j);
            for (int k = 0; k < p; k++) {
                double sum = 0;
                for (int a = 0; a < p; a++) {
                    for (int b = 0; b < p; b++) {
                        sum += inverse[j][a] * spread[a][b] * inverse[b][k];
                    }
                }
                covariance[j][k] = sum / (likelihood.scale(j) * likelihood.scale(k));
            }
        }
        return new FineGrayFit(columns, Status.CONVERGED, "", values, covariance);
    }

    public Status status() {
        return status;
    }

    public boolean converged() {
        return status == Status.CONVERGED;
    }

    /** Why there are no numbers, in words; empty when there are. */
    public String why() {
        return why;
    }

    public List<String> columns() {
        return columns;
    }

    /** Log ratios of the incidence's hazard for one unit more, in the order of the columns. */
    public double[] values() {
        requireConverged();
        return values.clone();
    }

    public double standardError(int column) {
        requireConverged();
        return Math.sqrt(covariance[column][column]);
    }

    private void requireConverged() {
        if (!converged()) {
            throw new IllegalStateException(
                    "the regression has no numbers: " + status + ", " + why + "; ask converged() first");
        }
    }
}
