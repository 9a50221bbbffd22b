package sensorrounds.recurrent;

import sensorrounds.numeric.StandardNormal;

/**
 * Difference of two mean cumulative functions at one time.
 *
 * @param difference events of a unit of the first group more than of the second
 * @param standardError from the robust variances
 * @param lower normal limit
 * @param upper normal limit
 */
public record MeanDifference(double time, double difference, double standardError, double lower, double upper) {
    /** Two-sided p-value of no difference at this one time; NaN when neither group had an event. */
    public double pValue() {
        if (!(standardError > 0)) {
            return Double.NaN;
        }
        return 2 * Math.exp(StandardNormal.logSurvival(Math.abs(difference / standardError)));
    }
}
