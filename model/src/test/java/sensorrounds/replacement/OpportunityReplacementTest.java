package sensorrounds.replacement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import sensorrounds.survival.WeibullLife;

class OpportunityReplacementTest {
    private static final double AT_ONCE = 1e-9;

    private static AgeingLaw weibull(double shape, double scale) {
        return new FittedAgeing(new WeibullLife(shape, scale, 0, 0, 0));
    }

    /** Life uniform on (0, 1). */
    private static final AgeingLaw UNIFORM = new AgeingLaw() {
        @Override
        public double survival(double age) {
            return Math.max(0, 1 - age);
        }

        @Override
        public double hazard(double age) {
            return age < 1 ? 1 / (1 - age) : 0;
        }

        @Override
        public double lastAge() {
            return 0.8;
        }
    };

    /**
     * On paper: life uniform on (0, 1), w = 1, B = 4, a stop every 0.2, failures called out for at once. Then Q = T + 0.1,
     * M = T - T^2/2 + (1 - T)/10 - 0.04/6, and B M = (w + B Q)(0.9 - T) comes to 2 T^2 + 1.4 T - 0.8866... = 0. Age
     * replacement, for which every moment is a stop, gives T = 0.5 and c = 8: a stop is taken about half a gap sooner.
     */
    @Test
    void uniformLifeIsSolvedOnPaper() {
        OpportunityReplacement policy = new OpportunityReplacement(UNIFORM, 1, 4, 0.2, AT_ONCE);
        double age = (-1.4 + Math.sqrt(1.96 + 8 * (1.26 - 0.4 + 0.16 / 6))) / 4;
        OpportunityReplacement.Optimum best = policy.optimum();
        assertThat(age).isCloseTo(0.4022190, within(1e-7));
        assertThat(best.age()).isCloseTo(age, within(1e-5));
        // The marginal condition in words: B Q' = c M', with Q' = 1 and M' = 0.9 - T.
        assertThat(best.costRate()).isCloseTo(4 / (0.9 - age), within(1e-5));
    }

    /** With a level hazard nothing is gained by age: c = (w + B q)/(1/l + D q), q the chance that no stop comes first. */
    @Test
    void levelHazardRunsToFailureAndStopsSpareSomeCallOuts() {
        OpportunityReplacement policy = new OpportunityReplacement(weibull(1, 1000), 100, 400, 180, 30);
        double q = 1 - 30.0 / 180 * (1 - Math.exp(-6));
        OpportunityReplacement.Optimum best = policy.optimum();
        assertThat(best.finite()).isFalse();
        assertThat(best.costRate()).isCloseTo((100 + 400 * q) / (1000 + 30 * q), within(1e-9));
    }

    /** Reference: T = 493.046957596634, shape 2.5, scale 1000, cf = 5 cp, R 4.2.2 (reference/replacement, area 11). */
    @Test
    void whenEveryMomentIsAStopItIsAgeReplacement() {
        AgeingLaw law = weibull(2.5, 1000);
        AgeReplacement.Optimum age = new AgeReplacement(law, 1, 5).optimum();
        for (double gap : new double[] {1, 0.01}) {
            OpportunityReplacement.Optimum best = new OpportunityReplacement(law, 1, 4, gap, AT_ONCE).optimum();
            assertThat(best.age()).isCloseTo(493.046957596634 - gap / 2, within(0.01 * gap + 1e-4));
            assertThat(best.costRate()).isCloseTo(age.costRate(), within(1e-6 * age.costRate()));
        }
    }

    @Test
    void withoutStopsItIsRunningToFailure() {
        AgeingLaw law = weibull(2.5, 1000);
        OpportunityReplacement none = new OpportunityReplacement(law, 1, 4, 1e7, AT_ONCE);
        assertThat(none.optimum().costRate()).isCloseTo(5 / law.mean(), within(1e-3 * 5 / law.mean()));
    }

    @Test
    void aPieceThatCostsNothingIsReplacedAtEveryStopWhenTheHazardRises() {
        OpportunityReplacement rising = new OpportunityReplacement(weibull(2.5, 1000), 1e-9, 4, 180, 30);
        assertThat(rising.optimum().age()).isLessThan(1);
        OpportunityReplacement falling = new OpportunityReplacement(weibull(0.8, 1000), 1e-9, 4, 180, 30);
        assertThat(falling.optimum().finite()).isFalse();
    }

    @Test
    void theOptimumIsTheLeastOfAllAges() {
        OpportunityReplacement policy = new OpportunityReplacement(weibull(4.2, 3600), 65, 250, 180, 30);
        OpportunityReplacement.Optimum best = policy.optimum();
        for (int age = 0; age < 6000; age += 50) {
            assertThat(policy.costRate(age)).isGreaterThanOrEqualTo(best.costRate());
        }
        assertThat(policy.costRate(best.age() + 1) - best.costRate()).isLessThan(1e-4 * best.costRate());
    }

    /** The formula against the policy itself, played for 40,000 lives; within four standard errors. */
    @Test
    void costRateIsThatOfThePolicyPlayed() {
        double gap = 300;
        double notice = 60;
        double control = 500;
        WeibullLife law = new WeibullLife(2.5, 1000, 0, 0, 0);
        SplittableRandom chance = new SplittableRandom(20_261_125);
        int lives = 40_000;
        double cost = 0;
        double days = 0;
        double squares = 0;
        double expected = new OpportunityReplacement(new FittedAgeing(law), 100, 400, gap, notice).costRate(control);
        for (int i = 0; i < lives; i++) {
            double firstStop = gap * chance.nextDouble();
            double planned = firstStop + gap * Math.max(0, Math.ceil((control - firstStop) / gap));
            double fails = 1000 * Math.pow(-Math.log(1 - chance.nextDouble()), 1 / 2.5);
            double called = fails - notice * Math.log(1 - chance.nextDouble());
            double found = firstStop + gap * Math.max(0, Math.ceil((fails - firstStop) / gap));
            boolean out = called < found && fails < planned;
            double paid = 100 + (out ? 400 : 0);
            double lived = fails >= planned ? planned : Math.min(called, found);
            cost += paid;
            days += lived;
            squares += (paid - expected * lived) * (paid - expected * lived);
        }
        assertThat(cost / days).isCloseTo(expected, within(4 * Math.sqrt(squares) / days));
        assertThat(4 * Math.sqrt(squares) / days).isLessThan(0.025 * expected);
    }

    @Test
    void refusesCostsOfNothing() {
        assertThatThrownBy(() -> new OpportunityReplacement(weibull(3, 1000), 0, 5, 180, 30))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("piece with its work 0.0")
                .hasMessageContaining("must be over 0");
    }
}
