package sensorrounds.review;

import java.io.Serializable;
import java.util.List;
import sensorrounds.ranktest.HazardScoreTest;

/**
 * Whether the survival curves of the cohorts differ by more than chance: the score test of proportional hazards for lives
 * known to intervals, with delayed entry ({@link HazardScoreTest}), on a grid of ages.
 *
 * @param by what divides the sensors into cohorts
 * @param cohorts the cohorts compared, by name
 * @param chiSquare NaN unless tested, as the p-value
 * @param degreesOfFreedom 0 unless tested
 * @param pValue chance of so large a statistic if the cohorts did not differ
 * @param note why there is no test, or what to know about it; empty when nothing
 */
public record CohortComparison(
        CohortBy by,
        Status status,
        List<Cohort> cohorts,
        double chiSquare,
        int degreesOfFreedom,
        double pValue,
        String note)
        implements Serializable {
    /** What came of a comparison. */
    public enum Status {
        TESTED,
        /** There is one cohort to compare, or none. */
        ONE_COHORT,
        /** Nobody failed. */
        NO_FAILURES,
        /** Too few failures for the number of cohorts: the law of the statistic does not hold. */
        TOO_FEW_FAILURES,
        /** At no age with failures were two cohorts under observation. */
        NOT_COMPARABLE,
        /** The estimate of all cohorts together that the test needs has failed. */
        NO_POOLED_ESTIMATE,
        /** The data leave the statistic open, on the widest steps of age too. */
        NOT_DETERMINED
    }

    /**
     * One of the cohorts compared.
     *
     * @param expected failures if the cohorts did not differ; NaN where that could not be reckoned
     */
    public record Cohort(String name, long lives, double failures, double expected) implements Serializable {}

    public CohortComparison {
        cohorts = List.copyOf(cohorts);
    }
}
