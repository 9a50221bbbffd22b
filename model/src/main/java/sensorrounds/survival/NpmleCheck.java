package sensorrounds.survival;

import java.io.Serializable;

/**
 * What came of the nonparametric maximum likelihood estimate that stands beside a cohort's law, for the tables.
 *
 * @param status whether there is a curve
 * @param fromDays lowest age at which the data can place a failure, days; NaN when there is none
 * @param uniqueness whether other masses fit as well
 * @param note why there is no curve, or on what grid of ages it stands; empty when nothing
 */
public record NpmleCheck(String status, double fromDays, String uniqueness, String note) implements Serializable {
    /** Nobody asked for one. */
    public static final NpmleCheck NOT_RUN = new NpmleCheck("NOT_RUN", Double.NaN, "", "");
}
