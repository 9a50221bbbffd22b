package sensorrounds.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class WeightedCountTest {
    /** Of none, half of exp(-m) is .025: m = -log .05 = 2.9957, in units of the weight. */
    @Test
    void noneSolvedByHand() {
        assertThat(new WeightedCount(0, 0, 1, 1).limit(0.975)).isCloseTo(-Math.log(0.05), within(1e-12));
        assertThat(new WeightedCount(0, 0, 0.1, 0.01).limit(0.975)).isCloseTo(-Math.log(0.05) / 10, within(1e-12));
        assertThat(new WeightedCount(0, 0, 1, 1).limit(0.025)).isZero();
    }

    /** Reference: R 4.2.2, uniroot on half of pgamma(x, 3) and half of pgamma(x, 4): the mid-P limits of a count of 3. */
    @Test
    void threeEventsOfWeightOne() {
        WeightedCount three = new WeightedCount(3, 3, 1, 1);
        assertThat(three.limit(0.025)).isCloseTo(0.7630962977977815, within(1e-10));
        assertThat(three.limit(0.975)).isCloseTo(8.1644692083683665, within(1e-10));
    }

    /** Mid-P by its definition: half the chance of 3 and all of that beyond it is .025 at the limit. */
    @Test
    void theLimitsAreThoseOfTheirDefinition() {
        WeightedCount three = new WeightedCount(3, 3, 1, 1);
        double low = three.limit(0.025);
        double atMost2 = Math.exp(-low) * (1 + low + low * low / 2);
        double exactly3 = Math.exp(-low) * low * low * low / 6;
        assertThat(1 - atMost2 - exactly3 / 2).isCloseTo(0.025, within(1e-12));
    }

    /** Reference: R as above, sum .2, variance .01, a further event of .02 in the mean and .003 in the mean square. */
    @Test
    void weightsThatDiffer() {
        assertThat(new WeightedCount(0.2, 0.01, 0.02, 0.003).limit(0.025)).isCloseTo(0.0553273085934095, within(1e-12));
    }

    @Test
    void manyEventsAreNormal() {
        WeightedCount many = new WeightedCount(1e6, 1e6, 1, 1);
        assertThat((many.limit(0.975) - 1e6) / 1e3).isCloseTo(1.96, within(0.01));
        assertThat((many.limit(0.025) - 1e6) / 1e3).isCloseTo(-1.96, within(0.01));
    }

    @Test
    void whatIsNoCountIsRefused() {
        assertThatThrownBy(() -> new WeightedCount(1, 0, 1, 1)).hasMessageContaining("both positive");
        assertThatThrownBy(() -> new WeightedCount(0, 0, 0, 1)).hasMessageContaining("weights of a further event");
        assertThatThrownBy(() -> new WeightedCount(0, 0, 1, 1).limit(1)).hasMessageContaining("0 < p < 1");
    }
}
