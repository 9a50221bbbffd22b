package sensorrounds.survival;

import java.io.Serializable;

/**
 * One point of a survival curve for the tables.
 *
 * @param cohort name of the cohort
 * @param method estimator
 * @param ageDays age in days
 * @param survival S(age)
 * @param lower lower 95 % limit; NaN where none is known, as upper
 * @param upper upper 95 % limit
 * @param atRisk units under observation at that age; may rise with age when entry is delayed
 * @param failures failures up to that age, weights added
 */
public record CurvePoint(
        String cohort,
        Method method,
        int ageDays,
        double survival,
        double lower,
        double upper,
        double atRisk,
        double failures)
        implements Serializable {
    /** Estimator behind the point. */
    public enum Method {
        KAPLAN_MEIER,
        /** The law in use, of whatever form. */
        FITTED_LAW,
        /** The Weibull fitted beside a law of another form. */
        WEIBULL,
        /** Kaplan-Meier with every preventive replacement counted as a failure: the curve cannot lie lower. */
        PESSIMISTIC,
        /**
         * Nonparametric maximum likelihood estimate from the failure intervals. Between two points of unequal share the
         * curve falls somewhere; between two of equal share it is flat.
         */
        TURNBULL
    }
}
