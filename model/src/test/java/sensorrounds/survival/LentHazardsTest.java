package sensorrounds.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sensorrounds.survival.CohortLadder.Rung;
import sensorrounds.survival.EarlyWearFitter.Early;
import sensorrounds.survival.ParametricFitter.ScalePrior;

/** Small fleets with two hazards: levels solved by hand, and the bias by age that a single Weibull has and this has not. */
class LentHazardsTest {
    private static final LifeLaw LEVEL = new WeibullLife(1, 1000, 0, 0, 0);
    private static final EarlyWearLife TRUTH = new EarlyWearLife(1, 36_525, 4, 3800, new double[4][4]);

    /** Exact ages: (n + d) / (n + E), here (5 + 2) / (5 + 0.9 + 1.4 + 0.5), gamma-Poisson. */
    @Test
    void theLevelOfExactAgesIsThatOfTheGammaPosterior() {
        HazardLevel level = new HazardLevel(
                LifetimeSample.of(
                        List.of(Lifetime.exact(0, 900), Lifetime.exact(100, 1500), Lifetime.censored(200, 700))),
                LEVEL);
        assertThat(level.expected()).isCloseTo(2.8, within(1e-12));
        assertThat(level.estimate(5)).isCloseTo(7 / 7.8, within(1e-9));
    }

    /** For a Weibull law the level is the scale in another dress: level = (scale given / scale fitted)^shape. */
    @Test
    void theLevelUnderIntervalsIsTheScaleOfTheWeibullFit() {
        LifetimeSample sample = LifetimeSample.of(SimulatedRounds.simulate(8, 60, 2.5, 7, 6, 3));
        HazardLevel level = new HazardLevel(sample, new WeibullLife(2.5, 3000, 0, 0, 0));
        ParametricFitter fitter = ParametricFitter.of(Family.WEIBULL).withShape(2.5, 0);
        assertThat(level.estimate(0))
                .isCloseTo(Math.pow(3000 / fitter.fit(sample).scale().value(), 2.5), withinPercentage(1e-6));
        assertThat(level.estimate(4))
                .isCloseTo(
                        Math.pow(
                                3000
                                        / fitter.with(new ScalePrior(3000, 4))
                                                .fit(sample)
                                                .scale()
                                                .value(),
                                2.5),
                        withinPercentage(1e-6));
    }

    @Test
    void aLawTimesAFactorHasThatHazardAtEveryAgeAndItsVariance() {
        EarlyWearLife twice = TRUTH.times(2, 0.09);
        for (double age : new double[] {10, 800, 3000}) {
            assertThat(twice.cumulativeHazard(age)).isCloseTo(2 * TRUTH.cumulativeHazard(age), withinPercentage(1e-9));
            double[] slope = twice.hazardGradient(age);
            double variance = 0;
            for (int i = 0; i < 4; i++) {
                for (int j = 0; j < 4; j++) {
                    variance += slope[i] * slope[j] * twice.covariance()[i][j];
                }
            }
            assertThat(Math.sqrt(variance) / twice.cumulativeHazard(age)).isCloseTo(0.3, within(1e-9));
        }
    }

    /** Without failures the prior speaks; with many it does not. */
    @Test
    void thePriorGivesWayToData() {
        LifetimeSample large = fleet(new Random(1), 6000);
        ParametricFit plain = ParametricFitter.of(Family.WEIBULL).fit(large);
        EarlyWearLife with = EarlyWearFitter.of(Early.CONSTANT)
                .with(TwoHazardPrior.declared())
                .fit(large, plain)
                .law()
                .orElseThrow();
        EarlyWearLife without =
                EarlyWearFitter.of(Early.CONSTANT).fit(large, plain).law().orElseThrow();
        assertThat(with.wearShape()).isCloseTo(without.wearShape(), withinPercentage(1));
        assertThat(with.wearScaleDays()).isCloseTo(without.wearScaleDays(), withinPercentage(1));
        assertThatThrownBy(() -> new TwoHazardPrior(0.05, 0.001, 1.5, 8)).hasMessageContaining("rising");
    }

    /** A prior that is all but certain of the shape gives that shape to a cohort that borrows, whatever its few failures say. */
    @Test
    void theLadderBorrowsByTheLimitsItIsGiven() {
        SortedMap<String, LifetimeSample> cohorts = new TreeMap<>();
        Random random = new Random(5);
        for (String name : List.of("a", "b", "c", "d")) {
            cohorts.put(name, fleet(random, 60));
        }
        CohortLadder ladder = CohortLadder.withDefaults();
        assertThat(shape(ladder.with(new TwoHazardPrior(0.001, 0.05, 2, 2.02)), cohorts))
                .isCloseTo(2.01, withinPercentage(1));
        assertThat(shape(ladder, cohorts)).isGreaterThan(2.5);
    }

    private static double shape(CohortLadder ladder, SortedMap<String, LifetimeSample> cohorts) {
        return ((EarlyWearLife) ladder.fit(cohorts).get("a").life().orElseThrow()).wearShape();
    }

    /**
     * Four cohorts of 60 lives each, over and over: what the laws expect within a year comes true at three and at eight years of
     * age, where one Weibull is a tenth too low for the old. (The limits were set with the figures known: 0.97 and 1.02 of the
     * truth against 1.04 and 0.91.)
     */
    @Test
    void expectedFailuresComeTrueAtEveryAge() {
        double[] ages = {1095, 2920};
        double[] lent = new double[ages.length];
        double[] single = new double[ages.length];
        int fleets = 60;
        Random random = new Random(20_261_125);
        for (int f = 0; f < fleets; f++) {
            SortedMap<String, LifetimeSample> cohorts = new TreeMap<>();
            for (String name : List.of("a", "b", "c", "d")) {
                cohorts.put(name, fleet(random, 60));
            }
            LifetimeSample pool = LifetimeSample.pooled(cohorts.values());
            ParametricFit plain = ParametricFitter.of(Family.WEIBULL).fit(pool);
            EarlyWearLife all = LentHazards.common(pool, plain, TwoHazardPrior.declared())
                    .law()
                    .orElseThrow();
            LentHazards two = LentHazards.of(cohorts, all, new CohortLadder.Settings(20, 5, 5));
            assertThat(two.rung()).isEqualTo(Rung.PARTLY_POOLED);
            for (int i = 0; i < ages.length; i++) {
                lent[i] += two.law(cohorts.get("a")).life().failureWithin(ages[i], 365, 1) / fleets;
                single[i] += plain.life().failureWithin(ages[i], 365, 1) / fleets;
            }
        }
        for (int i = 0; i < ages.length; i++) {
            assertThat(lent[i]).isCloseTo(TRUTH.failureWithin(ages[i], 365, 1), withinPercentage(6));
        }
        assertThat(single[1]).isLessThan(0.94 * TRUTH.failureWithin(ages[1], 365, 1));
    }

    /** Lives met at an age up to six years, visited every half year for four years. */
    private static LifetimeSample fleet(Random random, int lives) {
        List<Lifetime> all = new ArrayList<>();
        while (all.size() < lives) {
            int entry = random.nextInt(2190);
            double dies = TRUTH.quantile(random.nextDouble());
            if (dies > entry) {
                int good = entry;
                int next = entry + 120 + random.nextInt(120);
                while (next < dies && next <= entry + 1461) {
                    good = next;
                    next += 120 + random.nextInt(120);
                }
                all.add(
                        next <= entry + 1461
                                ? Lifetime.interval(entry, good, next)
                                : Lifetime.censored(entry, Math.max(good, entry + 1)));
            }
        }
        return LifetimeSample.of(all);
    }
}
