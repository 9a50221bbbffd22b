package sensorrounds.review;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import sensorrounds.ranktest.ComparisonResult;
import sensorrounds.ranktest.Group;
import sensorrounds.ranktest.HazardScoreTest;
import sensorrounds.review.CohortComparison.Cohort;
import sensorrounds.review.CohortComparison.Status;
import sensorrounds.survival.Counted;

/**
 * Compares cohorts as far as their data carry it. Sensors of which the dividing column is not known take no part, nor do
 * cohorts with less than one failure expected; and without five failures to a cohort on average there is no test, since
 * the chi-square law does not hold for so few (rule of thumb after Cochran 1954, Biometrics 10:417, from memory).
 */
final class CohortComparer {
    /** More cohorts than this are not compared; the work grows with the square of their number. */
    static final int MOST = 50;

    private static final double LEAST_EXPECTED = 1;
    private static final double FEW_EXPECTED = 5;

    /** The law of the statistic needs ages on a grid; wider steps are for data that leave it open on narrower ones. */
    private static final List<AgeGrid> GRIDS =
            List.of(AgeGrid.WEEKS, AgeGrid.FOUR_WEEKS, AgeGrid.QUARTERS, AgeGrid.HALF_YEARS, AgeGrid.YEARS);

    /** Distinct lives from which weeks are worth their work: so many failures could tell wider steps from none. */
    private static final int MANY = 10_000;

    private final CohortBy by;
    private final List<String> notes = new ArrayList<>();
    private final SortedSet<String> leftOut = new TreeSet<>();

    private CohortComparer(CohortBy by) {
        this.by = by;
    }

    /** One comparison for each way of dividing the sensors. */
    static List<CohortComparison> compare(FleetCounts counts) {
        return Stream.of(CohortBy.values())
                .map(by -> compare(by, counts.cohorts(by)))
                .toList();
    }

    static CohortComparison compare(CohortBy by, SortedMap<String, LifeCells> cohorts) {
        return new CohortComparer(by).compare(cohorts);
    }

    private CohortComparison compare(SortedMap<String, LifeCells> all) {
        SortedMap<String, LifeCells> cohorts = largest(all);
        while (cohorts.size() > 1) {
            int cells = cohorts.values().stream().mapToInt(LifeCells::size).sum();
            int at = cells > MANY ? 0 : 1;
            ComparisonResult result = test(cohorts, GRIDS.get(at));
            while (result.status() == ComparisonResult.Status.NOT_DETERMINED && at + 1 < GRIDS.size()) {
                result = test(cohorts, GRIDS.get(++at));
            }
            if (!result.tested()) {
                return untested(Status.valueOf(result.status().name()), cohorts, result.cause());
            }
            List<String> least = result.rows().stream()
                    .filter(r -> r.expected() < LEAST_EXPECTED)
                    .map(ComparisonResult.Row::name)
                    .toList();
            if (least.isEmpty()) {
                return tested(result, cohorts, GRIDS.get(at));
            }
            leftOut.addAll(least);
            least.forEach(cohorts::remove);
        }
        return untested(Status.ONE_COHORT, cohorts, "a comparison needs two cohorts or more");
    }

    private CohortComparison tested(ComparisonResult result, SortedMap<String, LifeCells> cohorts, AgeGrid grid) {
        double failures = result.rows().stream()
                .mapToDouble(ComparisonResult.Row::observed)
                .sum();
        if (failures < FEW_EXPECTED * cohorts.size()) {
            return untested(
                    Status.TOO_FEW_FAILURES,
                    cohorts,
                    Counted.failures(Math.round(failures)) + " in " + Counted.cohorts(cohorts.size())
                            + ", and a comparison needs 5 to a cohort on average");
        }
        List<Cohort> rows = result.rows().stream()
                .map(r -> new Cohort(r.name(), cohorts.get(r.name()).lives(), r.observed(), r.expected()))
                .toList();
        long few = rows.stream().filter(c -> c.expected() < FEW_EXPECTED).count();
        if (few > 0) {
            notes.add("fewer than 5 failures expected in " + few + " of " + rows.size()
                    + " cohorts: take the p-value as rough");
        }
        if (grid.compareTo(AgeGrid.FOUR_WEEKS) > 0) {
            notes.add("ages in " + grid.words() + ", since narrower steps leave the statistic open");
        }
        return new CohortComparison(
                by, Status.TESTED, rows, result.chiSquare(), result.degreesOfFreedom(), result.pValue(), notes());
    }

    private CohortComparison untested(Status status, SortedMap<String, LifeCells> cohorts, String cause) {
        List<Cohort> rows = cohorts.entrySet().stream()
                .map(e -> new Cohort(
                        e.getKey(), e.getValue().lives(), e.getValue().sample().failures(), Double.NaN))
                .toList();
        notes.add(0, cause);
        return new CohortComparison(by, status, rows, Double.NaN, 0, Double.NaN, notes());
    }

    private String notes() {
        if (!leftOut.isEmpty()) {
            notes.add("left out, with less than one failure expected: " + String.join(", ", leftOut));
        }
        return String.join("; ", notes);
    }

    private static ComparisonResult test(SortedMap<String, LifeCells> cohorts, AgeGrid grid) {
        return HazardScoreTest.withDefaults()
                .test(cohorts.entrySet().stream()
                        .map(e -> Group.of(e.getKey(), e.getValue().on(grid).sample()))
                        .toList());
    }

    private SortedMap<String, LifeCells> largest(SortedMap<String, LifeCells> all) {
        SortedMap<String, LifeCells> known = new TreeMap<>(all);
        known.remove(CohortBy.NOT_KNOWN);
        if (known.size() <= MOST) {
            return known;
        }
        notes.add("the " + MOST + " largest of " + known.size() + " cohorts");
        SortedMap<String, LifeCells> kept = new TreeMap<>();
        known.entrySet().stream()
                .sorted(Comparator.comparingLong((Map.Entry<String, LifeCells> e) ->
                                -e.getValue().lives())
                        .thenComparing(Map.Entry::getKey))
                .limit(MOST)
                .forEach(e -> kept.put(e.getKey(), e.getValue()));
        return kept;
    }
}
