package sensorrounds.replacement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.BitSet;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SharedStopTest {
    /** All subsets of up to ten sensors, many of them cheap alone and dear together. */
    @Test
    void noSubsetIsBetter() {
        Random random = new Random(20260930);
        int joined = 0;
        for (int round = 0; round < 3000; round++) {
            int n = 1 + random.nextInt(10);
            double[] gains = new double[n];
            double[] dead = new double[n];
            for (int i = 0; i < n; i++) {
                gains[i] = 60 * random.nextGaussian() - 40;
                dead[i] = random.nextInt(3) == 0 ? 0 : Math.pow(random.nextDouble(), 2);
            }
            double breakdown = 300 * random.nextDouble();
            double best = 0;
            for (int mask = 1; mask < 1 << n; mask++) {
                best = Math.max(best, value(BitSet.valueOf(new long[] {mask}), gains, dead, breakdown));
            }
            SharedStop.Choice choice = SharedStop.best(gains, dead, breakdown);
            assertThat(choice.value()).isCloseTo(best, within(1e-9));
            assertThat(value(choice.chosen(), gains, dead, breakdown)).isCloseTo(best, within(1e-9));
            joined += choice.chosen().stream().anyMatch(i -> gains[i] < 0) ? 1 : 0;
        }
        // Cases that a rule of each by itself would get wrong.
        assertThat(joined).isGreaterThan(300);
    }

    /**
     * On paper: two sensors, each dead already with chance 1/2, own gains -40, breakdown 160. One of them: -40 + 160 (1/2 -
     * 1/4) = 0. Both: -80 + 160 (1 - 1/4) = 40.
     */
    @Test
    void twoThatAreProbablyDeadPayTogether() {
        SharedStop.Choice choice = SharedStop.best(new double[] {-40, -40}, new double[] {0.5, 0.5}, 160);
        assertThat(choice.chosen().cardinality()).isEqualTo(2);
        assertThat(choice.value()).isCloseTo(40, within(1e-12));
    }

    @Test
    void withoutDeadOnesEachStandsByItself() {
        SharedStop.Choice choice = SharedStop.best(new double[] {5, -1, 3, 0}, new double[4], 250);
        assertThat(choice.chosen().toString()).isEqualTo("{0, 2}");
        assertThat(choice.value()).isEqualTo(8);
    }

    @Test
    void aSensorThatMayNotTakePartIsLeftOut() {
        SharedStop.Choice choice =
                SharedStop.best(new double[] {Double.NEGATIVE_INFINITY, 2}, new double[] {0, 0.1}, 250);
        assertThat(choice.chosen().toString()).isEqualTo("{1}");
        assertThat(SharedStop.best(new double[] {Double.NEGATIVE_INFINITY}, new double[1], 250)
                        .chosen()
                        .isEmpty())
                .isTrue();
    }

    private static double value(BitSet chosen, double[] gains, double[] dead, double breakdown) {
        double value = 0;
        double others = 1;
        double all = 1;
        for (int i = 0; i < gains.length; i++) {
            all *= 1 - dead[i];
            if (chosen.get(i)) {
                value += gains[i];
            } else {
                others *= 1 - dead[i];
            }
        }
        return value + breakdown * (others - all);
    }
}
