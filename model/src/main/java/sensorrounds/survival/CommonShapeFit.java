package sensorrounds.survival;

import java.io.Serializable;

/**
 * What came of a {@link CommonShapeFitter}. Asking a failed fit for its shape throws.
 *
 * @param status as of any fit
 * @param cause why there is no shape, in words; empty when there is one
 * @param cohorts cohorts whose lives tell something about the shape
 * @param failures failures in those cohorts
 * @param logShapeOrNaN log of the common shape; NaN when the fit failed
 * @param varianceOrNaN variance of log shape; NaN when the fit failed
 * @param iterations Newton steps
 */
public record CommonShapeFit(
        FitStatus status,
        String cause,
        int cohorts,
        double failures,
        double logShapeOrNaN,
        double varianceOrNaN,
        int iterations)
        implements Serializable {
    static CommonShapeFit failed(FitStatus status, int cohorts, double failures, int iterations, String cause) {
        return new CommonShapeFit(status, cause, cohorts, failures, Double.NaN, Double.NaN, iterations);
    }

    public boolean converged() {
        return status == FitStatus.CONVERGED;
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
                    "there is no common shape: " + status + ", " + cause + "; ask converged() first");
        }
    }
}
