package sensorrounds.review;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import sensorrounds.ranktest.ComparisonResult;
import sensorrounds.ranktest.Group;
import sensorrounds.ranktest.HazardScoreTest;

/**
 * Whether the survival curves of the cohorts differ by more than chance: the score test of proportional hazards for lives
 * known to intervals, with delayed entry ({@link HazardScoreTest}), ages in quarters of a year.
 *
 * @param by what divides the sensors into cohorts
 * @param cohorts the cohorts compared, by name; those of which the dividing column is not known take no part
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
    /** More cohorts than this are not compared; the work grows with the square of their number. */
    static final int MOST = 50;
    /** Failures expected in each cohort below which the law of the statistic is rough: Cochran (1954), Biometrics 10:417. */
    private static final double FEW_EXPECTED = 5;
    /** The law of the statistic needs ages on a grid; the wider steps are for data that leave it open. */
    private static final List<AgeGrid> GRIDS = List.of(AgeGrid.QUARTERS, AgeGrid.HALF_YEARS, AgeGrid.YEARS);

    /** What came of a comparison. */
    public enum Status {
        TESTED,
        /** There is one cohort, or none. */
        ONE_COHORT,
        /** Nobody failed. */
        NO_FAILURES,
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

    /** One comparison for each way of dividing the sensors. */
    static List<CohortComparison> of(FleetCounts counts) {
        return Stream.of(CohortBy.values())
                .map(by -> of(by, counts.cohorts(by)))
                .toList();
    }

    static CohortComparison of(CohortBy by, SortedMap<String, LifeCells> all) {
        SortedMap<String, LifeCells> known = new TreeMap<>(all);
        known.remove(CohortBy.NOT_KNOWN);
        List<String> notes = new ArrayList<>();
        SortedMap<String, LifeCells> compared = largest(known, notes);
        AgeGrid grid = GRIDS.get(0);
        List<Group> groups = groups(compared, grid);
        if (groups.size() < 2) {
            return untested(by, Status.ONE_COHORT, compared, "a comparison needs two cohorts or more");
        }
        ComparisonResult result = HazardScoreTest.withDefaults().test(groups);
        for (int i = 1; i < GRIDS.size() && result.status() == ComparisonResult.Status.NOT_DETERMINED; i++) {
            grid = GRIDS.get(i);
            groups = groups(compared, grid);
            result = HazardScoreTest.withDefaults().test(groups);
        }
        if (!result.tested()) {
            return untested(by, Status.valueOf(result.status().name()), compared, result.cause());
        }
        List<Cohort> cohorts = result.rows().stream()
                .map(r -> new Cohort(r.name(), compared.get(r.name()).lives(), r.observed(), r.expected()))
                .toList();
        long few = cohorts.stream().filter(c -> c.expected() < FEW_EXPECTED).count();
        if (few > 0) {
            notes.add("fewer than 5 failures expected in " + few + " of " + cohorts.size()
                    + " cohorts: take the p-value as rough");
        }
        if (grid != GRIDS.get(0)) {
            notes.add("ages in " + grid.words() + ", since narrower steps leave the statistic open");
        }
        return new CohortComparison(
                by,
                Status.TESTED,
                cohorts,
                result.chiSquare(),
                result.degreesOfFreedom(),
                result.pValue(),
                String.join("; ", notes));
    }

    private static CohortComparison untested(
            CohortBy by, Status status, SortedMap<String, LifeCells> compared, String cause) {
        List<Cohort> cohorts = compared.entrySet().stream()
                .map(e -> new Cohort(
                        e.getKey(), e.getValue().lives(), e.getValue().sample().failures(), Double.NaN))
                .toList();
        return new CohortComparison(by, status, cohorts, Double.NaN, 0, Double.NaN, cause);
    }

    private static List<Group> groups(SortedMap<String, LifeCells> cohorts, AgeGrid grid) {
        return cohorts.entrySet().stream()
                .map(e -> Group.of(e.getKey(), e.getValue().on(grid).sample()))
                .toList();
    }

    private static SortedMap<String, LifeCells> largest(SortedMap<String, LifeCells> known, List<String> notes) {
        if (known.size() <= MOST) {
            return known;
        }
        notes.add("the " + MOST + " largest of " + known.size() + " cohorts");
        SortedMap<String, LifeCells> kept = new TreeMap<>();
        known.entrySet().stream()
                .sorted(Comparator.comparingDouble((Map.Entry<String, LifeCells> e) ->
                                -e.getValue().lives())
                        .thenComparing(Map.Entry::getKey))
                .limit(MOST)
                .forEach(e -> kept.put(e.getKey(), e.getValue()));
        return kept;
    }
}
