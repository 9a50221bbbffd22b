package sensorrounds.survival;

import java.io.Serializable;

/**
 * What came of a {@link CommonShapeFitter}. Asking a failed fit for its shape throws.
 *
 * @param report what it says of itself; lives, failures and time watched are those of all cohorts given
 * @param cohorts cohorts whose lives tell something about the shape
 * @param logShapeOrNaN log of the common shape; NaN when the fit failed
 * @param varianceOrNaN variance of log shape; NaN when the fit failed
 */
public record CommonShapeFit(FitReport report, int cohorts, double logShapeOrNaN, double varianceOrNaN)
        implements Serializable {
    static CommonShapeFit failed(FitReport report, int cohorts) {
        return new CommonShapeFit(report, cohorts, Double.NaN, Double.NaN);
    }

    public boolean converged() {
        return report.converged();
    }

    /** The shape all cohorts have in common. */
    public double shape() {
        requireConverged();
        return Math.exp(logShapeOrNaN);
    }

    /** Variance of log shape, the scales of the cohorts being unknown. */
    public double varLogShape() {
        requireConverged();
        return varianceOrNaN;
    }

    private void requireConverged() {
        if (!converged()) {
            throw new IllegalStateException(
                    "there is no common shape: " + report.status() + ", " + report.cause() + "; ask converged() first");
        }
    }
}
