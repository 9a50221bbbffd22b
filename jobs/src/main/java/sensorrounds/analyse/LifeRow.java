package sensorrounds.analyse;

import java.io.Serializable;
import java.util.Arrays;

/**
 * One life with covariates on its way through the cluster: alive at {@code entry}, failed in {@code (lower, upper]}, as in
 * {@link sensorrounds.regression.CovariateLives}.
 *
 * @param vehicle whose lives are alike; null when that is not known
 * @param upper positive infinity when no failure was seen
 * @param covariates in the order of the columns; not to be changed afterwards
 */
public record LifeRow(String vehicle, double entry, double lower, double upper, double weight, double[] covariates)
        implements Serializable {
    public LifeRow {
        boolean ordered = 0 <= entry && entry <= lower && lower <= upper && entry < upper;
        boolean finite = lower < Double.POSITIVE_INFINITY
                && weight < Double.POSITIVE_INFINITY
                && Arrays.stream(covariates).allMatch(Double::isFinite);
        if (!(ordered && finite && weight > 0)) {
            throw new IllegalArgumentException("not a life of vehicle " + vehicle + ": entry " + entry + ", lower "
                    + lower + ", upper " + upper + ", weight " + weight + ", covariates "
                    + Arrays.toString(covariates) + "; needs 0 <= entry <= lower <= upper, entry < upper, finite"
                    + " lower and covariates, weight > 0");
        }
    }
}
