package sensorrounds.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sensorrounds.survival.CohortLadder.Rung;
import sensorrounds.survival.CohortSpread.Criterion;

class CohortSpreadTest {
    /**
     * Failures of ten pumps and their thousands of hours: Gaver and O'Muircheartaigh (1987), Technometrics 29:1, whose gamma law
     * (from memory) has shape 0.82 and rate 1.27; data as printed in the OpenBUGS manual, example Pumps.
     */
    private static final double[] FAILURES = {5, 1, 5, 14, 3, 19, 1, 1, 4, 22};

    private static final double[] HOURS = {94.3, 15.7, 62.9, 126, 5.24, 31.4, 1.05, 1.05, 2.1, 10.5};

    private static final double YEAR = 365.25;

    /** Reference: R 4.2.2, dnbinom maximised by nlm at gradient tolerance 1e-12. */
    @Test
    void tenPumps() {
        CohortSpread spread = CohortSpread.of(FAILURES, HOURS, Criterion.LIKELIHOOD);
        assertThat(spread.shape()).isCloseTo(0.8229649601, within(1e-6));
        assertThat(spread.mean()).isCloseTo(0.6522909897, within(1e-6));
        assertThat(spread.shape() / spread.mean()).isCloseTo(1.27, within(0.01));
        assertThat(CohortSpread.logLikelihood(FAILURES, HOURS, spread.shape(), spread.mean()))
                .isCloseTo(-32.2578363033, within(1e-8));
        double[] rates = {
            0.060934117,
            0.107475666,
            0.090754597,
            0.116476288,
            0.587998912,
            0.606918605,
            0.788597972,
            0.788597972,
            1.434700367,
            1.940455541
        };
        for (int i = 0; i < rates.length; i++) {
            assertThat(spread.relativeHazard(FAILURES[i], HOURS[i])).isCloseTo(rates[i], within(1e-6));
        }
        CohortSpread kept = CohortSpread.of(FAILURES, HOURS, Criterion.KEPT_FROM_ZERO);
        assertThat(kept.shape()).isCloseTo(0.74836046, within(1e-5));
        assertThat(kept.mean()).isCloseTo(0.65863097, within(1e-5));
    }

    /** (2 + 9) / (2 / 0.5 + 6) = 11/10: six tenths its own 9/6, four tenths the mean 1/2; and with nothing of its own the mean. */
    @Test
    void aCohortIsDrawnByItsWeight() {
        CohortSpread spread = new CohortSpread(2, 0.5, 0.1, 5);
        assertThat(spread.ownWeight(6)).isEqualTo(0.6);
        assertThat(spread.relativeHazard(9, 6)).isCloseTo(11.0 / 10, within(1e-15));
        assertThat(spread.relativeHazard(0, 0)).isEqualTo(0.5);
    }

    @Test
    void cohortsThatAreAlikeAreTakenAsOneByLikelihoodOnly() {
        double[] failures = {4, 8, 2, 6};
        double[] expected = {4, 8, 2, 6};
        CohortSpread plain = CohortSpread.of(failures, expected, Criterion.LIKELIHOOD);
        assertThat(plain.shape()).isInfinite();
        assertThat(plain.relativeHazard(4, 4)).isEqualTo(1);
        CohortSpread kept = CohortSpread.of(failures, expected, Criterion.KEPT_FROM_ZERO);
        assertThat(kept.shape()).isBetween(5.0, 200.0);
        assertThat(kept.mean()).isCloseTo(1, within(1e-9));
    }

    @Test
    void whatCannotBeSaidIsRefused() {
        assertThatThrownBy(() -> CohortSpread.of(new double[2], new double[] {1, 2}, Criterion.LIKELIHOOD))
                .hasMessageContaining("no cohort has a failure");
        assertThatThrownBy(() -> CohortSpread.of(new double[] {1}, new double[] {0}, Criterion.LIKELIHOOD))
                .hasMessageContaining("cohort 0 has 1.0 failures for 0.0 expected");
    }

    static Map<String, LifetimeSample> fleet(Random random, double[] scales) {
        return fleet(random, scales, 0.5);
    }

    /**
     * Parts whose hazards have this spread on the log, shape 2.5, a few failures each; two large ones among them. Visits every 180
     * days for three such spans.
     */
    static Map<String, LifetimeSample> fleet(Random random, double[] scales, double spread) {
        Map<String, LifetimeSample> cohorts = new TreeMap<>();
        for (int part = 0; part < scales.length; part++) {
            scales[part] = 8 * YEAR * Math.exp(spread / 2.5 * random.nextGaussian());
            int lives = part < 2 ? 250 : 25 + 10 * (part % 8);
            List<Lifetime> all = new ArrayList<>();
            while (all.size() < lives) {
                int entry = (int) (5 * YEAR * random.nextDouble());
                double dies = scales[part] * Math.pow(-Math.log(1 - random.nextDouble()), 1 / 2.5);
                if (dies <= entry) {
                    continue;
                }
                int last = entry + 3 * 180;
                int good = entry + 180 * (int) ((Math.min(dies, last) - entry) / 180);
                all.add(
                        dies < last
                                ? Lifetime.interval(entry, good, good + 180)
                                : Lifetime.censored(entry, Math.max(good, entry + 1)));
            }
            cohorts.put("part " + (char) ('A' + part), LifetimeSample.of(all));
        }
        return cohorts;
    }

    /**
     * Of 25 fleets: limits of the small parts' scales hold the truth as often as they say, and their error is below that of either
     * leaving each part alone or taking all as one.
     */
    @Test
    void smallPartsAreBetterOffAndTheirLimitsHold() {
        Random random = new Random(11);
        int held = 0;
        int counted = 0;
        double drawn = 0;
        double alone = 0;
        double asOne = 0;
        for (int run = 0; run < 25; run++) {
            double[] scales = new double[8];
            Map<String, LifetimeSample> cohorts = fleet(random, scales);
            SortedMap<String, CohortLife> fits = CohortLadder.withDefaults().fit(cohorts);
            double shape =
                    CommonShapeFitter.withDefaults().fit(cohorts.values()).shape();
            ParametricFitter given = ParametricFitter.of(Family.WEIBULL).withShape(shape, 0);
            double pooled =
                    given.fit(LifetimeSample.pooled(cohorts.values())).scale().value();
            for (int part = 2; part < scales.length; part++) {
                String name = "part " + (char) ('A' + part);
                CohortLife life = fits.get(name);
                ParametricFit own = given.fit(cohorts.get(name));
                if (life.rung() != Rung.PARTLY_POOLED || !own.converged()) {
                    continue;
                }
                CohortFit fit = life.fit();
                counted++;
                held += fit.scaleLower() < scales[part] && scales[part] < fit.scaleUpper() ? 1 : 0;
                drawn += Math.pow(Math.log(fit.scaleDays() / scales[part]), 2);
                alone += Math.pow(Math.log(own.scale().value() / scales[part]), 2);
                asOne += Math.pow(Math.log(pooled / scales[part]), 2);
                CohortFit.Shares shares = fit.law().shares();
                assertThat(shares.own()).isBetween(0.02, 0.98);
                assertThat(shares.own() + shares.others() + shares.prior()).isCloseTo(1, within(1e-12));
                assertThat(fit.note())
                        .contains("the typical of 8 cohorts")
                        .contains(Math.round(100 * shares.own()) + " % of it its own experience");
            }
        }
        assertThat(counted).isGreaterThan(90);
        // A share of .95 of so many, six to a fleet, is known to about .03.
        assertThat((double) held / counted).isBetween(0.9, 1.0);
        assertThat(drawn).isLessThan(0.8 * alone).isLessThan(0.9 * asOne);
    }

    @Test
    void fewerThanFourCohortsGoByTheDeclaredStrength() {
        Map<String, LifetimeSample> cohorts = fleet(new Random(3), new double[3]);
        CohortLife small = CohortLadder.withDefaults().fit(cohorts).get("part C");
        assertThat(small.rung()).isEqualTo(Rung.POOLED_SHAPE);
        assertThat(small.fit().law().shares().own()).isBetween(0.05, 0.95);
        assertThat(small.fit().note()).contains("with the weight of 5 failures: ");
    }
}
