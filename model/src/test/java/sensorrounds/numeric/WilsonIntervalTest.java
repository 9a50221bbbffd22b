package sensorrounds.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WilsonIntervalTest {
    /** Newcombe (1998), Stat. Med. 17:857, table I: .2553 to .3662 and .0624 to .1605; more digits from R 4.2.2. */
    @ParameterizedTest
    @CsvSource({"81, 263, 0.255288519878274, 0.3662095769828", "15, 148, 0.0623863995307363, 0.160487241723308"})
    void newcombe(int successes, int trials, double lower, double upper) {
        WilsonInterval w = WilsonInterval.of(successes, trials, 0.95);
        assertThat(w.share()).isEqualTo((double) successes / trials);
        assertThat(w.lower()).isCloseTo(lower, within(1e-9 * lower));
        assertThat(w.upper()).isCloseTo(upper, within(1e-9 * upper));
    }

    /** None of n: the upper limit is z^2 / (n + z^2), the other end mirrors it. */
    @Test
    void noneAndAll() {
        double z = 1.959963984540054;
        WilsonInterval none = WilsonInterval.of(0, 10, 0.95);
        assertThat(none.lower()).isZero();
        assertThat(none.upper()).isCloseTo(z * z / (10 + z * z), within(1e-12));
        WilsonInterval all = WilsonInterval.of(10, 10, 0.95);
        assertThat(all.upper()).isEqualTo(1);
        assertThat(all.lower()).isCloseTo(1 - none.upper(), within(1e-12));
        WilsonInterval nothing = WilsonInterval.of(0, 0, 0.95);
        assertThat(nothing.share()).isNaN();
        assertThat(nothing.lower()).isZero();
        assertThat(nothing.upper()).isEqualTo(1);
    }

    @Test
    void refusesWhatIsNoShare() {
        assertThatThrownBy(() -> WilsonInterval.of(3, 2, 0.95))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("3.0 of 2.0");
        assertThatThrownBy(() -> WilsonInterval.of(Double.NaN, 2, 0.95)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> WilsonInterval.of(1, 2, 1)).isInstanceOf(IllegalArgumentException.class);
    }
}
