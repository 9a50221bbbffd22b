package sensorrounds.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

class LifetimeSampleTest {
    private static final double NEVER = Double.POSITIVE_INFINITY;

    @Test
    void mergesIdenticalLivesAndAddsUp() {
        LifetimeSample sample = LifetimeSample.of(List.of(
                Lifetime.censored(10, 50),
                Lifetime.interval(0, 20, 40),
                Lifetime.censored(10, 50),
                new Lifetime(5, 25, 25, 3)));
        assertThat(sample.size()).isEqualTo(3);
        assertThat(sample.lives()).isEqualTo(6);
        assertThat(sample.failures()).isEqualTo(4);
        // 2 * 40 censored, 30 to the midpoint, 3 * 20 exact.
        assertThat(sample.exposure()).isEqualTo(170);
        assertThat(sample.lastAge()).isEqualTo(50);
        assertThat(sample.weight(2)).isEqualTo(2);
        assertThat(sample.upper(2)).isEqualTo(NEVER);
        assertThat(sample.exactFailures()).isFalse();
        assertThat(sample.atMidpoints().exactFailures()).isTrue();
        assertThat(sample.atMidpoints().lower(0)).isEqualTo(30);
    }

    @Test
    void theOrderOfLivesAndTheSplitIntoPartsDoNotMatter() {
        List<Lifetime> lives = List.of(
                Lifetime.exact(0, 7), Lifetime.censored(3, 9), Lifetime.interval(1, 4, 8), Lifetime.exact(0, 7));
        LifetimeSample whole = LifetimeSample.of(lives);
        LifetimeSample parts = LifetimeSample.pooled(List.of(
                LifetimeSample.of(lives.subList(2, 4)),
                LifetimeSample.of(List.of()),
                LifetimeSample.of(lives.subList(0, 2))));
        assertThat(parts).usingRecursiveComparison().isEqualTo(whole);
    }

    @Test
    void refusesWhatIsNoLifeAndSaysWhere() {
        double[] one = {1, 1};
        double[] zero = {0, 0};
        assertThatThrownBy(() -> LifetimeSample.of(zero, new double[] {1, 5}, new double[] {2, 4}, one))
                .hasMessageContaining("index 1")
                .hasMessageContaining("lower 5.0");
        assertThatThrownBy(() -> LifetimeSample.of(zero, one, new double[] {2, Double.NaN}, one))
                .hasMessageContaining("upper NaN");
        assertThatThrownBy(() -> LifetimeSample.of(zero, zero, zero, one)).hasMessageContaining("index 0");
        assertThatThrownBy(() -> LifetimeSample.of(zero, one, one, zero)).hasMessageContaining("weight > 0");
        assertThatThrownBy(() -> LifetimeSample.of(zero, one, one, new double[1]))
                .hasMessageContaining("one length");
        assertThatThrownBy(() -> LifetimeSample.of(zero, new double[] {1, NEVER}, new double[] {NEVER, NEVER}, one))
                .hasMessageContaining("finite lower");
    }
}
