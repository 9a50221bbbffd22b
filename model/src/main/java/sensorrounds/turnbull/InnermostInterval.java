package sensorrounds.turnbull;

import java.io.Serializable;

/**
 * A stretch of age that may carry probability in the nonparametric estimate, with what the estimate puts there. Ages in
 * (lower, upper], or the single age {@code lower == upper}; where inside the stretch the failures lie is not known. The
 * last one may reach to infinity: failures after everything observed.
 *
 * @param hazard increment of the cumulative hazard, -log of the chance of outliving the stretch given alive before it;
 *     infinite where nobody outlives it
 * @param mass probability of failing in it
 * @param survivalAfter probability of outliving it
 * @param outlived weight of lives that were under observation before it and are known to have outlived it; small numbers
 *     here mean a shaky curve from here on, and with delayed entry they may rise with age
 */
public record InnermostInterval(
        double lower, double upper, double hazard, double mass, double survivalAfter, double outlived)
        implements Serializable {
    public boolean exact() {
        return lower == upper;
    }

    /** Whether this is the open end: failures after the last age observed. */
    public boolean beyondData() {
        return upper == Double.POSITIVE_INFINITY;
    }
}
