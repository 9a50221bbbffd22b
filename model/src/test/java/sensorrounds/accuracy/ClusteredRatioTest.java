package sensorrounds.accuracy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import sensorrounds.numeric.WilsonInterval;
import sensorrounds.survival.Estimate;

class ClusteredRatioTest {
    /** On paper: 2 of 5 failed; cluster totals off by .2, .6, -.8; error sqrt(3/2 (.04 + .36 + .64)) / 5. */
    @Test
    void threeVehiclesOnPaper() {
        ClusteredRatio ratio = new ClusteredRatio.Sum()
                .add("A", 1, 1, 1)
                .add("A", 1, 0, 1)
                .add("B", 1, 1, 1)
                .add("C", 1, 0, 1)
                .add("C", 1, 0, 1)
                .add("D", 0, 1, 1)
                .ratio();
        assertThat(ratio.value()).isEqualTo(0.4);
        assertThat(ratio.clusters()).isEqualTo(3);
        assertThat(ratio.units()).isEqualTo(5);
        assertThat(ratio.standardError()).isCloseTo(Math.sqrt(1.56) / 5, within(1e-15));
        double trials = 0.24 / (1.56 / 25);
        WilsonInterval wilson = WilsonInterval.of(0.4 * trials, trials, 0.95);
        assertThat(ratio.share().lower()).isCloseTo(wilson.lower(), within(1e-12));
        assertThat(ratio.share().upper()).isCloseTo(wilson.upper(), within(1e-12));
        assertThat(ratio.plain().upper()).isCloseTo(0.4 + 1.959964 * Math.sqrt(1.56) / 5, within(1e-6));
    }

    /** The error of strangers is that of a plain mean with n - 1, sqrt(p (1 - p) / (n - 1)). */
    @Test
    void strangersHaveTheErrorOfAShare() {
        ClusteredRatio.Sum sum = new ClusteredRatio.Sum();
        for (int i = 0; i < 50; i++) {
            sum.add(i, 1, i < 10 ? 1 : 0, 1);
        }
        assertThat(sum.ratio().standardError()).isCloseTo(Math.sqrt(0.2 * 0.8 / 49), within(1e-15));
    }

    /** A weight is a repetition for the value, and a common factor of all weights changes nothing. */
    @Test
    void weightsCountForTheValueAndTheirScaleForNothing() {
        ClusteredRatio one = new ClusteredRatio.Sum()
                .add(1, 3, 1, 2)
                .add(2, 1, 0, 1)
                .add(3, 2, 1, 1)
                .ratio();
        ClusteredRatio tenfold = new ClusteredRatio.Sum()
                .add(1, 30, 1, 2)
                .add(2, 10, 0, 1)
                .add(3, 20, 1, 1)
                .ratio();
        assertThat(one.value()).isCloseTo(5 / 9.0, within(1e-15));
        assertThat(tenfold.standardError()).isCloseTo(one.standardError(), within(1e-15));
        assertThat(tenfold.units()).isCloseTo(36 / 14.0, within(1e-12));
    }

    @Test
    void whereNothingFailedTheUnitsCountAsStrangers() {
        ClusteredRatio.Sum sum = new ClusteredRatio.Sum();
        for (int i = 0; i < 40; i++) {
            sum.add(i / 4, 1, 0, 1);
        }
        Estimate share = sum.ratio().share();
        assertThat(share.value()).isZero();
        assertThat(share.lower()).isZero();
        assertThat(share.upper()).isCloseTo(WilsonInterval.of(0, 40, 0.95).upper(), within(1e-15));
    }

    @Test
    void withoutUnitsThereIsNoFigure() {
        ClusteredRatio none = new ClusteredRatio.Sum().ratio();
        assertThat(none.value()).isNaN();
        assertThat(none.share().upper()).isNaN();
        assertThatThrownBy(() -> new ClusteredRatio.Sum().add("A", -1, 0, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("-1.0");
    }

    /** Four sensors of each of 80 vehicles share a chance drawn for the vehicle; seed 7. */
    @Test
    void limitsHoldWhereSensorsOfAVehicleShareTheirFateAndWouldNotIfTheyWereTakenForStrangers() {
        Random dice = new Random(7);
        int covered = 0;
        int naive = 0;
        for (int fleet = 0; fleet < 1000; fleet++) {
            ClusteredRatio.Sum sum = new ClusteredRatio.Sum();
            int failed = 0;
            for (int vehicle = 0; vehicle < 80; vehicle++) {
                double chance = dice.nextDouble() < 0.25 ? 0.7 : 0.1;
                for (int sensor = 0; sensor < 4; sensor++) {
                    int failure = dice.nextDouble() < chance ? 1 : 0;
                    failed += failure;
                    sum.add(vehicle, 1, failure, 1);
                }
            }
            Estimate share = sum.ratio().share();
            covered += share.lower() <= 0.25 && 0.25 <= share.upper() ? 1 : 0;
            WilsonInterval strangers = WilsonInterval.of(failed, 320, 0.95);
            naive += strangers.lower() <= 0.25 && 0.25 <= strangers.upper() ? 1 : 0;
        }
        assertThat(covered).isBetween(930, 970);
        assertThat(naive).isLessThan(880);
    }
}
