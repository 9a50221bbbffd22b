package sensorrounds.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sensorrounds.review.CohortComparison.Cohort;
import sensorrounds.review.CohortComparison.Status;
import sensorrounds.survival.Lifetime;

class CohortComparerTest {
    /** Weibull lives of shape 2.5 seen at visits about every 270 days for three years from an entry age. */
    private static LifeCells fleet(long seed, int units, double scaleDays, int latestEntry) {
        Random random = new Random(seed);
        LifeCells cells = new LifeCells();
        int lives = 0;
        // Counted here: the cells would add themselves up anew at each step.
        while (lives < units) {
            double life = scaleDays * Math.pow(-Math.log(1 - random.nextDouble()), 1 / 2.5);
            int entry = latestEntry == 0 ? 0 : random.nextInt(latestEntry);
            if (life <= entry) {
                continue;
            }
            int last = entry;
            int next = entry + 200 + random.nextInt(140);
            while (next < life && next < entry + 1096) {
                last = next;
                next += 200 + random.nextInt(140);
            }
            // What a visit after the follow-up would have found is not known of any.
            boolean failed = next < entry + 1096;
            if (failed || last > entry) {
                cells.add(
                        failed ? Lifetime.interval(entry, last, next) : Lifetime.censored(entry, last),
                        failed ? EndCause.BATTERY : null,
                        1);
                lives++;
            }
        }
        return cells;
    }

    private static CohortComparison compare(Map<String, LifeCells> cohorts) {
        return CohortComparer.compare(CohortBy.VEHICLE_CLASS, new TreeMap<>(cohorts));
    }

    @Test
    void aShorterLifeIsFound() {
        CohortComparison c = compare(Map.of("truck", fleet(1, 300, 1800, 2000), "van", fleet(2, 300, 2500, 2000)));
        assertThat(c.status()).isEqualTo(Status.TESTED);
        assertThat(c.degreesOfFreedom()).isEqualTo(1);
        assertThat(c.pValue()).isLessThan(0.001);
        assertThat(c.note()).isEmpty();
        Cohort truck = c.cohorts().get(0);
        assertThat(truck.name()).isEqualTo("truck");
        assertThat(truck.lives()).isEqualTo(300);
        assertThat(truck.failures()).isGreaterThan(truck.expected() + 20);
        assertThat(c.cohorts().stream().mapToDouble(Cohort::expected).sum())
                .isCloseTo(
                        c.cohorts().stream().mapToDouble(Cohort::failures).sum(),
                        org.assertj.core.api.Assertions.within(1e-6));
    }

    /**
     * One law, one fleet watched from new and one met at any age: the grid must not make a difference. Of 200 comparisons
     * at 5 % 10 are expected to be called different, standard deviation 3.1.
     */
    @Test
    void fleetsWatchedDifferentlyAreNotCalledDifferent() {
        int called = 0;
        for (int i = 0; i < 200; i++) {
            CohortComparison c =
                    compare(Map.of("new", fleet(1000 + i, 700, 2500, 0), "met", fleet(5000 + i, 700, 2500, 2200)));
            called += c.pValue() < 0.05 ? 1 : 0;
        }
        assertThat(called).isBetween(1, 19);
    }

    /** In large fleets a grid that moved failures by half a per cent would show; standard error of the mean 0.22. */
    @Test
    void norAreLargeFleets() {
        double z = 0;
        for (int i = 0; i < 20; i++) {
            CohortComparison c =
                    compare(Map.of("met", fleet(70 + i, 60_000, 2500, 2200), "new", fleet(700 + i, 60_000, 2500, 0)));
            assertThat(c.note()).isEmpty();
            Cohort met = c.cohorts().get(0);
            z += Math.copySign(Math.sqrt(c.chiSquare()), met.failures() - met.expected()) / 20;
        }
        assertThat(z).isBetween(-0.66, 0.66);
    }

    @Test
    void sensorsOfNoKnownCohortTakeNoPart() {
        CohortComparison c = compare(Map.of("van", fleet(1, 50, 2000, 0), CohortBy.NOT_KNOWN, fleet(2, 50, 900, 0)));
        assertThat(c.status()).isEqualTo(Status.ONE_COHORT);
        assertThat(c.cohorts()).extracting(Cohort::name).containsExactly("van");
        assertThat(c.pValue()).isNaN();
        assertThat(c.note()).isEqualTo("a comparison needs two cohorts or more");
        assertThat(compare(Map.of()).status()).isEqualTo(Status.ONE_COHORT);
    }

    @Test
    void withoutFailuresOrOverlapThereIsNoTest() {
        LifeCells sound = new LifeCells().add(Lifetime.censored(0, 900), null, 9);
        assertThat(compare(Map.of("car", sound, "van", sound)).status()).isEqualTo(Status.NO_FAILURES);
        LifeCells early = new LifeCells()
                .add(Lifetime.interval(0, 100, 300), EndCause.BATTERY, 3)
                .add(Lifetime.censored(0, 400), null, 3);
        LifeCells late = new LifeCells()
                .add(Lifetime.interval(1000, 1100, 1300), EndCause.BATTERY, 3)
                .add(Lifetime.censored(1000, 1400), null, 3);
        CohortComparison apart = compare(Map.of("car", early, "van", late));
        assertThat(apart.status()).isEqualTo(Status.NOT_COMPARABLE);
        assertThat(apart.note()).contains("under observation together");
    }

    /** In quarters (0, 91] and (182, 273] may share the mass of (0, 273] in any way; in half-years they are one step. */
    @Test
    void whatNarrowStepsLeaveOpenIsTakenInWiderOnes() {
        LifeCells a = new LifeCells()
                .add(Lifetime.interval(0, 0, 273), EndCause.BATTERY, 12)
                .add(Lifetime.censored(91, 182), null, 1);
        LifeCells b = new LifeCells().add(Lifetime.censored(0, 1820), null, 9);
        CohortComparison c = compare(Map.of("car", a, "van", b));
        assertThat(c.status()).isEqualTo(Status.TESTED);
        assertThat(c.note()).contains("ages in half-years, since narrower steps leave the statistic open");
    }

    /** The same with steps of years between the two: no grid settles it. */
    @Test
    void whatStaysOpenIsSaidToBe() {
        LifeCells a = new LifeCells()
                .add(Lifetime.interval(0, 0, 1820), EndCause.BATTERY, 1)
                .add(Lifetime.censored(728, 1092), null, 1);
        LifeCells b = new LifeCells().add(Lifetime.censored(0, 3640), null, 1);
        CohortComparison c = compare(Map.of("car", a, "van", b));
        assertThat(c.status()).isEqualTo(Status.NOT_DETERMINED);
        assertThat(c.chiSquare()).isNaN();
        assertThat(c.note()).contains("other masses fit");
    }

    @Test
    void fewExpectedFailuresAreTold() {
        CohortComparison c = compare(Map.of("car", fleet(1, 30, 2500, 0), "van", fleet(2, 300, 2500, 0)));
        assertThat(c.status()).isEqualTo(Status.TESTED);
        assertThat(c.note()).contains("fewer than 5 failures expected in 1 of 2 cohorts");
    }

    @Test
    void aCohortTooSmallToTellIsLeftOutByName() {
        CohortComparison c = compare(Map.of(
                "car", fleet(1, 300, 2500, 0),
                "trailer", new LifeCells().add(Lifetime.censored(0, 400), null, 2),
                "van", fleet(2, 300, 2500, 0)));
        assertThat(c.status()).isEqualTo(Status.TESTED);
        assertThat(c.cohorts()).extracting(Cohort::name).containsExactly("car", "van");
        assertThat(c.degreesOfFreedom()).isEqualTo(1);
        assertThat(c.note()).isEqualTo("left out, with less than one failure expected: trailer");
    }

    /** Where a chi-square of any size would come from one failure. */
    @Test
    void withFewFailuresThereIsNoTest() {
        LifeCells few = new LifeCells()
                .add(Lifetime.interval(0, 300, 500), EndCause.BATTERY, 4)
                .add(Lifetime.censored(0, 900), null, 20);
        CohortComparison c = compare(Map.of("car", few, "van", few));
        assertThat(c.status()).isEqualTo(Status.TOO_FEW_FAILURES);
        assertThat(c.pValue()).isNaN();
        assertThat(c.note()).isEqualTo("8 failures in 2 cohorts, and a comparison needs 5 to a cohort on average");
    }

    @Test
    void manyCohortsAreCutToTheLargest() {
        Map<String, LifeCells> many = new TreeMap<>();
        for (int i = 0; i < CohortComparer.MOST + 7; i++) {
            many.put("part " + i, fleet(i, 60 + i % 5, 1500, 0));
        }
        CohortComparison c = compare(many);
        assertThat(c.status()).isEqualTo(Status.TESTED);
        assertThat(c.cohorts()).hasSize(CohortComparer.MOST);
        assertThat(c.note()).contains("the 50 largest of 57 cohorts");
    }
}
