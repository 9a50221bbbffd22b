package sensorrounds.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import org.junit.jupiter.api.Test;
import sensorrounds.survival.CohortLadder.Rung;

class CohortLadderTest {
    private static final LifetimeSample LARGE = LifetimeSample.of(SimulatedRounds.simulate(7, 400, 2.5, 7, 6, 3));
    private static final LifetimeSample SMALL = LifetimeSample.of(SimulatedRounds.simulate(8, 24, 2.5, 5, 4, 3));
    private static final LifetimeSample ALIVE = LifetimeSample.of(List.of(new Lifetime(0, 900, Lifetime.NEVER, 12)));
    private static final LifetimeSample EMPTY = LifetimeSample.of(List.of());

    private static Map<String, LifetimeSample> fleet() {
        Map<String, LifetimeSample> cohorts = new LinkedHashMap<>();
        cohorts.put("part B", SMALL);
        cohorts.put("part D", EMPTY);
        cohorts.put("part A", LARGE);
        cohorts.put("part C", ALIVE);
        return cohorts;
    }

    @Test
    void eachCohortStandsOnTheHighestRungItsDataCarry() {
        SortedMap<String, CohortLife> fits = CohortLadder.withDefaults().fit(fleet(), Map.of("part A", 0.25));
        assertThat(fits.keySet()).containsExactly("all", "part A", "part B", "part C", "part D");
        assertThat(fits.get("all").rung()).isEqualTo(Rung.OWN_FIT);
        assertThat(fits.get("part A").rung()).isEqualTo(Rung.OWN_FIT);
        assertThat(fits.get("part A").fit().preventiveShare()).isEqualTo(0.25);
        assertThat(fits.get("part A").fit().note()).startsWith("a single Weibull: ");
        assertThat(fits.get("part A").fit().law().form()).isEqualTo(CohortFit.Form.WEIBULL);
        assertThat(fits.get("part A").fit().logLikelihood()).isNegative();

        CohortFit small = fits.get("part B").fit();
        assertThat(small.failures()).isBetween(2L, 19L);
        assertThat(small.rung()).isEqualTo("POOLED_SHAPE");
        assertThat(small.note())
                .contains(small.failures() + " failures, an own fit needs 20")
                .contains("weight of 5");
        assertThat(small.preventiveShare()).isNaN();
        CommonShapeFit common = CommonShapeFitter.withDefaults().fit(fleet().values());
        assertThat(small.shape()).isCloseTo(common.shape(), within(1e-12));
        assertThat(fits.get("part B").weibull().orElseThrow().varLogShape())
                .isCloseTo(common.varLogShape(), within(1e-12));
        assertThat(small.note()).contains("an early hazard and wear-out common to all, with the declared prior");
        assertThat(small.law().form()).isEqualTo(CohortFit.Form.EARLY_AND_WEAR);
        assertThat(small.scaleLower()).isLessThan(small.scaleDays());
        assertThat(small.scaleUpper()).isGreaterThan(small.scaleDays());

        CohortFit alive = fits.get("part C").fit();
        assertThat(alive.rung()).isEqualTo("POOLED_SHAPE");
        assertThat(alive.status()).isEqualTo("NO_FAILURES");
        assertThat(alive.scaleDays()).isGreaterThan(fits.get("all").fit().scaleDays());

        CohortFit empty = fits.get("part D").fit();
        assertThat(empty.rung()).isEqualTo("POOLED");
        assertThat(empty.scaleDays()).isEqualTo(fits.get("all").fit().scaleDays());
        assertThat(empty.note()).contains("no lives");
    }

    @Test
    void theShrunkScaleLiesBetweenOwnExperienceAndThePool() {
        SortedMap<String, CohortLife> fits = CohortLadder.withDefaults().fit(fleet());
        ParametricFitter common = ParametricFitter.of(Family.WEIBULL)
                .withShape(
                        CommonShapeFitter.withDefaults().fit(fleet().values()).shape(), 0);
        double pool =
                common.fit(LifetimeSample.pooled(fleet().values())).scale().value();
        double alone = common.fit(SMALL).scale().value();
        double shrunk = fits.get("part B").fit().scaleDays();
        assertThat(alone).isLessThan(0.95 * pool);
        assertThat(shrunk).isBetween(alone, pool);
        // A prior of next to no weight leaves the cohort its own scale.
        double free = CohortLadder.withDefaults()
                .with(new CohortLadder.Settings(20, 5, 1e-6))
                .fit(fleet())
                .get("part B")
                .fit()
                .scaleDays();
        assertThat(free).isCloseTo(alone, within(0.01));
    }

    @Test
    void theOrderOfCohortsDoesNotMatter() {
        Map<String, LifetimeSample> reversed = new LinkedHashMap<>();
        List.copyOf(fleet().keySet()).stream()
                .sorted(java.util.Comparator.reverseOrder())
                .forEach(name -> reversed.put(name, fleet().get(name)));
        assertThat(CohortLadder.withDefaults().fit(reversed))
                .isEqualTo(CohortLadder.withDefaults().fit(fleet()));
    }

    @Test
    void withTooFewFailuresInAllThereIsNoLawAndAReason() {
        SortedMap<String, CohortLife> fits = CohortLadder.withDefaults()
                .fit(Map.of("part C", ALIVE, "part E", LifetimeSample.of(List.of(Lifetime.exact(0, 400)))));
        for (CohortLife life : fits.values()) {
            assertThat(life.rung()).isEqualTo(Rung.NONE);
            assertThat(life.life()).isEmpty();
            assertThat(life.fit().scaleDays()).isNaN();
            assertThat(life.fit().note()).contains("1 failure; a law of life needs 5");
        }
    }

    @Test
    void thePoolKeepsItsName() {
        assertThatThrownBy(() -> CohortLadder.withDefaults().fit(Map.of("all", ALIVE)))
                .hasMessageContaining("another name");
        assertThatThrownBy(() -> new CohortLadder.Settings(20, 5, 0)).hasMessageContaining("positive prior weight");
    }
}
