package sensorrounds.causes;

import java.util.List;
import sensorrounds.survival.FitReport;

/** What came of a {@link FineGray} regression; asking a failed one for its numbers throws. */
public final class FineGrayFit {
    private final List<String> columns;
    private final FitReport report;
    private final double[] values;
    private final double[][] covariance;

    private FineGrayFit(List<String> columns, FitReport report, double[] values, double[][] covariance) {
        this.columns = List.copyOf(columns);
        this.report = report;
        this.values = values;
        this.covariance = covariance;
    }

    static FineGrayFit failed(List<String> columns, FitReport report) {
        return new FineGrayFit(columns, report, null, null);
    }

    static FineGrayFit of(
            List<String> columns, FitReport report, Subdistribution likelihood, double[] beta, double[][] inverse) {
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
        return new FineGrayFit(columns, report, values, covariance);
    }

    /** What it says of itself, as every fit does; its failures are ends by any cause. */
    public FitReport report() {
        return report;
    }

    public boolean converged() {
        return report.converged();
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
            throw new IllegalStateException("the regression has no numbers: " + report.status() + ", " + report.cause()
                    + "; ask converged() first");
        }
    }
}
