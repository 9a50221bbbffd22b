package sensorrounds.survival;

import java.io.Serializable;

/**
 * What every fit says of itself, in the same words and units whichever estimator it came from; the cohort is known to who asked
 * for the fit.
 *
 * @param status the code
 * @param cause why there is no answer, in words; empty when there is one
 * @param column the covariate to blame; empty where none is
 * @param lives sum of weights that took part
 * @param failures sum of weights that failed, by any cause
 * @param exposure unit-time under observation, failures to the middle of their interval; in the sample's unit
 * @param iterations steps of the search that is reported; 0 when none was needed or none began
 * @param gradientNorm largest derivative in standard units, per failure, where the search stopped; NaN when it never
 *     began, and where what certifies the maximum is something else
 * @param condition one-norm condition of the information in standard units; infinite when it is not positive definite,
 *     NaN when no search began
 */
public record FitReport(
        FitStatus status,
        String cause,
        String column,
        double lives,
        double failures,
        double exposure,
        int iterations,
        double gradientNorm,
        double condition)
        implements Serializable {
    public FitReport {
        if ((status == FitStatus.CONVERGED) != cause.isEmpty()) {
            throw new IllegalArgumentException(
                    "a fit that is " + status + " " + (cause.isEmpty() ? "must say why" : "has no cause: " + cause));
        }
    }

    public boolean converged() {
        return status == FitStatus.CONVERGED;
    }

    /** Of a fit that has an answer. */
    public static FitReport of(
            double lives, double failures, double exposure, int iterations, double gradientNorm, double condition) {
        return new FitReport(
                FitStatus.CONVERGED, "", "", lives, failures, exposure, iterations, gradientNorm, condition);
    }

    /** Of a search over a sample, however it ended. */
    static FitReport of(
            LifetimeSample sample,
            FitStatus status,
            String cause,
            int iterations,
            double gradientNorm,
            double condition) {
        return new FitReport(
                status,
                cause,
                "",
                sample.lives(),
                sample.failures(),
                sample.exposure(),
                iterations,
                gradientNorm,
                condition);
    }

    /** Of a fit that ended before any search. */
    public static FitReport refused(
            FitStatus status, String cause, String column, double lives, double failures, double exposure) {
        return new FitReport(status, cause, column, lives, failures, exposure, 0, Double.NaN, Double.NaN);
    }
}
