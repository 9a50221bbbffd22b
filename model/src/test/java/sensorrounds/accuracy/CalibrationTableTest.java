package sensorrounds.accuracy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class CalibrationTableTest {
    /** Exponential lives of hazard .1 exp(x), watched for up to 3 years, predicted at a factor of their true hazard. */
    private static CalibrationTable table(double factor, boolean late) {
        Random random = new Random(20261125);
        int n = 20_000;
        double[] entry = new double[n];
        double[] exit = new double[n];
        boolean[] failed = new boolean[n];
        double[] risk = new double[n];
        double[] expected = new double[n];
        for (int i = 0; i < n; i++) {
            double hazard = 0.1 * Math.exp(random.nextGaussian());
            entry[i] = late ? random.nextDouble() : 0;
            double life = entry[i] - Math.log(1 - random.nextDouble()) / hazard;
            double last = entry[i] + 0.5 + 2.5 * random.nextDouble();
            exit[i] = Math.min(life, last);
            failed[i] = life <= last;
            risk[i] = -Math.expm1(-factor * hazard * 2);
            expected[i] = factor * hazard * (exit[i] - entry[i]);
        }
        return CalibrationTable.of(10, 2, FollowUp.of(entry, exit, failed), risk, expected);
    }

    @Test
    void aTrueForecastIsBorneOutInEveryGroup() {
        CalibrationTable table = table(1, false);
        assertThat(table.groups()).hasSize(10);
        int within = 0;
        for (CalibrationTable.Group group : table.groups()) {
            assertThat(group.lives()).isEqualTo(2000);
            assertThat(group.observed().value()).isCloseTo(group.predicted(), within(0.04));
            boolean covered = group.observed().lower() <= group.predicted()
                    && group.predicted() <= group.observed().upper();
            boolean counted = group.count().ratio().lower() <= 1
                    && 1 <= group.count().ratio().upper();
            within += (covered ? 1 : 0) + (counted ? 1 : 0);
        }
        // Twenty limits at 95 %: three misses or more happen once in 13.
        assertThat(within).isGreaterThanOrEqualTo(17);
        assertThat(table.overall().count().ratio().value()).isCloseTo(1, within(0.04));
        assertThat(table.groups()).isSortedAccordingTo((a, b) -> Double.compare(a.predicted(), b.predicted()));
    }

    @Test
    void aForecastTooHighByHalfShowsItsRatio() {
        ObservedExpected count = table(1.5, false).overall().count();
        assertThat(count.ratio().value()).isCloseTo(1 / 1.5, within(0.03));
        assertThat(count.ratio().upper()).isLessThan(0.75);
    }

    @Test
    void unitsThatEnteredLateAreCountedButGiveNoShare() {
        CalibrationTable table = table(1, true);
        assertThat(table.overall().count().ratio().value()).isCloseTo(1, within(0.04));
        assertThat(table.overall().observed().value()).isNaN();
    }

    @Test
    void equalPredictionsStayTogether() {
        FollowUp units =
                FollowUp.of(new double[4], new double[] {1, 2, 3, 4}, new boolean[] {true, false, true, false});
        CalibrationTable table =
                CalibrationTable.of(4, 3, units, new double[] {0.2, 0.2, 0.2, 0.7}, new double[] {1, 1, 1, 1});
        assertThat(table.groups()).extracting(CalibrationTable.Group::lives).containsExactly(3.0, 1.0);
        // 1 - 2/3 x 0; and a group of one, not watched to its failure.
        assertThat(table.groups().get(0).observed().value()).isEqualTo(1);
        assertThat(table.groups().get(1).observed().value()).isZero();
    }

    @Test
    void aHorizonNobodyWasWatchedToGivesNoShare() {
        FollowUp units = FollowUp.of(new double[2], new double[] {1, 2}, new boolean[] {true, false});
        double[] half = {0.5, 0.5};
        assertThat(CalibrationTable.of(1, 3, units, half, half)
                        .overall()
                        .observed()
                        .value())
                .isNaN();
        assertThatThrownBy(() -> CalibrationTable.of(1, 3, units, new double[] {0.5, 2}, half))
                .hasMessageContaining("unit 1");
        assertThatThrownBy(() -> CalibrationTable.of(0, 3, units, half, half)).hasMessageContaining("0 groups");
    }

    /**
     * Garwood (1936). Closed forms: no failure, upper -log .025; one failure, lower -log .975. Ten failures: 4.80 to
     * 18.39, as tables print it (from memory).
     */
    @Test
    void limitsOfACount() {
        assertThat(ObservedExpected.of(0, 1).ratio().upper()).isCloseTo(-Math.log(0.025), within(1e-10));
        assertThat(ObservedExpected.of(0, 1).ratio().lower()).isZero();
        assertThat(ObservedExpected.of(1, 1).ratio().lower()).isCloseTo(-Math.log(0.975), within(1e-10));
        assertThat(ObservedExpected.of(10, 1).ratio().lower()).isCloseTo(4.80, within(5e-3));
        assertThat(ObservedExpected.of(10, 1).ratio().upper()).isCloseTo(18.39, within(5e-3));
        assertThat(ObservedExpected.of(10, 4).ratio().value()).isEqualTo(2.5);
        assertThat(ObservedExpected.of(3, 0).ratio().value()).isNaN();
        assertThatThrownBy(() -> ObservedExpected.of(-1, 1)).hasMessageContaining("-1.0");
        double[] wide = Arrays.stream(new double[] {1000, 100_000})
                .map(o -> ObservedExpected.of(o, o).ratio().upper() - 1)
                .toArray();
        assertThat(wide[0]).isCloseTo(1.96 / Math.sqrt(1000), within(0.003));
        assertThat(wide[1]).isCloseTo(1.96 / Math.sqrt(100_000), within(1e-4));
    }
}
