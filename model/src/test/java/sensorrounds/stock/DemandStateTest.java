package sensorrounds.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectOutputStream;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class DemandStateTest {
    @Test
    void anySplitAndAnyOrderGiveTheSameBytes() throws IOException {
        Random random = new Random(20260101);
        double[] p = random.doubles(3000).map(u -> Math.pow(u, 4)).toArray();
        p[7] = 0;
        p[8] = 1;
        DemandState whole = new DemandState();
        for (int i = 0; i < p.length; i++) {
            whole.add(p[i], sd(i));
        }
        for (int parts : new int[] {1, 2, 7, 50}) {
            DemandState[] split = new DemandState[parts + 1];
            Arrays.setAll(split, i -> new DemandState());
            for (int i = p.length - 1; i >= 0; i--) {
                split[random.nextInt(parts)].add(p[i], sd(i));
            }
            DemandState merged = new DemandState();
            for (int i = parts; i >= 0; i--) {
                merged.merge(split[i]);
            }
            assertThat(bytes(merged)).isEqualTo(bytes(whole));
        }
        assertThat(whole.sensors()).isEqualTo(3000);
    }

    private static double sd(int i) {
        return (i % 3) * 0.1;
    }

    @Test
    void theGridMovesAProbabilityByLessThanAThousandthOfItself() {
        Random random = new Random(3);
        for (int i = 0; i < 2000; i++) {
            double p = Math.exp(-20 * random.nextDouble());
            DemandState state = new DemandState();
            state.add(p, 0);
            assertThat(state.finish().mean()).isCloseTo(p, within(p * 0.001));
        }
    }

    @Test
    void withoutUncertaintyItIsThePoissonBinomial() {
        DemandState state = new DemandState();
        double[] p = {0.1, 0.2, 0.3, 0.4, 0.5, 1};
        for (double each : p) {
            state.add(each, 0);
        }
        state.add(0, 0);
        CountDistribution exact = PoissonBinomial.of(p, new long[] {1, 1, 1, 1, 1, 1});
        for (int k = 0; k <= 7; k++) {
            assertThat(state.finish().probability(k)).isCloseTo(exact.probability(k), within(1e-3));
        }
        assertThat(state.finish().quantile(0.5)).isEqualTo(exact.quantile(0.5));
        assertThat(state.sensors()).isEqualTo(7);
    }

    @Test
    void uncertaintySpreadsTheDemandByItsLognormalMoments() {
        // Rare failures: N | z is nearly Poisson(M e^{sz}), so Var N = E[M e^{sz}] + Var(M e^{sz}).
        DemandState state = new DemandState();
        for (int i = 0; i < 20_000; i++) {
            state.add(0.001, 0.25);
        }
        double mean = 20 * Math.exp(0.25 * 0.25 / 2);
        double variance = mean + mean * mean * Math.expm1(0.25 * 0.25);
        // Grid cut at |z| = 3.6 and p = 0.001 rather than 0 leave under 1 %.
        assertThat(state.finish().mean()).isCloseTo(mean, within(0.005 * mean));
        assertThat(state.finish().variance()).isCloseTo(variance, within(0.01 * variance));
        assertThat(state.given(0).variance()).isLessThan(0.55 * variance);
    }

    /**
     * Fits with an error of 0.2 on the log hazard, 400 fleets of 2,000 sensors, seed fixed: the 90 % prediction interval
     * must hold the true count in about 90 % of fleets (standard error 1.5 points; a count's interval is a little wider
     * than nominal), the plug-in interval in clearly fewer.
     */
    @Test
    void predictionIntervalsCoverAndPlugInIntervalsDoNot() {
        Random random = new Random(42);
        int covered = 0;
        int coveredPlugIn = 0;
        int fleets = 400;
        for (int f = 0; f < fleets; f++) {
            double error = Math.exp(0.2 * random.nextGaussian());
            DemandState state = new DemandState();
            int failures = 0;
            for (int i = 0; i < 2000; i++) {
                double hazard = 0.01 + 0.09 * (i % 10) / 9;
                state.add(-Math.expm1(-hazard), 0.2);
                failures += random.nextDouble() < -Math.expm1(-hazard * error) ? 1 : 0;
            }
            covered += within90(state.finish(), failures);
            coveredPlugIn += within90(state.given(0), failures);
        }
        assertThat(covered / (double) fleets).isBetween(0.86, 0.95);
        assertThat(coveredPlugIn / (double) fleets).isLessThan(0.80);
    }

    private static int within90(CountDistribution d, int count) {
        return count >= d.quantile(0.05) && count <= d.quantile(0.95) ? 1 : 0;
    }

    @Test
    void refusesWhatIsNoProbability() {
        assertThatThrownBy(() -> new DemandState().add(Double.NaN, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("probability NaN");
        assertThatThrownBy(() -> new DemandState().add(0.1, -1)).hasMessageContaining("deviation -1.0");
    }

    private static byte[] bytes(DemandState state) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ObjectOutputStream objects = new ObjectOutputStream(out)) {
            objects.writeObject(state);
        }
        return out.toByteArray();
    }
}
