package sensorrounds.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import sensorrounds.reference.ReferenceCase;

/** Values from 256-bit convolution, see reference/stock/counts-stock.json; tolerances are the file's. */
class PoissonBinomialTest {
    private static ReferenceCase reference(String id) {
        return ReferenceCase.load("stock/counts-stock.json", id);
    }

    private static CountDistribution ofEach(double[] numerators, double denominator) {
        double[] p = Arrays.stream(numerators).map(n -> n / denominator).toArray();
        long[] ones = new long[p.length];
        Arrays.fill(ones, 1);
        return PoissonBinomial.of(p, ones);
    }

    @Test
    void tenUnits() {
        ReferenceCase c = reference("pb-small");
        CountDistribution one = ofEach(c.data("p"), 1);
        CountDistribution grouped =
                PoissonBinomial.of(new double[] {0.1, 0.2, 0.3, 0.4, 0.5}, new long[] {2, 2, 2, 2, 2});
        for (CountDistribution d : new CountDistribution[] {one, grouped}) {
            meets(d, c, 1e-12, 1e-15);
            assertThat(d.mean()).isCloseTo(3, within(1e-12));
            assertThat(d.variance()).isCloseTo(1.9, within(1e-12));
        }
    }

    @Test
    void sixtyUnits() {
        ReferenceCase c = reference("pb-60");
        CountDistribution d = ofEach(c.data("numerator"), 101);
        meets(d, c, 1e-12, 1e-15);
        // The normal and Poisson approximations would not do: at 20 they are 11 % and a factor 38 off.
        assertThat(c.expected("refined_normal_cdf")[20]).isNotCloseTo(d.upTo(20), within(1e-5));
        assertThat(c.expected("poisson_cdf")[20]).isNotCloseTo(d.upTo(20), within(1e-2));
    }

    @Test
    void aThousandRareFailures() {
        ReferenceCase c = reference("pb-1000-rare");
        CountDistribution d = PoissonBinomial.of(c.data("p_unique"), new long[] {200, 200, 200, 200, 200});
        assertThat(d.mean()).isCloseTo(3.8, within(1e-11));
        double[] cdf = c.expected("cdf_0_to_20");
        for (int k = 0; k <= 20; k++) {
            assertThat(d.upTo(k)).isCloseTo(cdf[k], within(1e-11 * cdf[k] + 1e-16));
        }
        double[] tail = c.expected("upper_tail_after_k/prob");
        for (int i = 0; i < tail.length; i++) {
            int k = (int) c.expected("upper_tail_after_k/k")[i];
            assertThat(d.beyond(k)).isCloseTo(tail[i], within(1e-11 * tail[i] + 1e-16));
        }
        quantiles(d, c);
    }

    @Test
    void certainAndImpossibleFailures() {
        ReferenceCase c = reference("pb-degenerate");
        CountDistribution d = ofEach(c.data("numerator"), 1000);
        for (int k = 0; k < 15; k++) {
            double expected = c.expected("pmf")[k];
            assertThat(d.probability(k)).isCloseTo(expected, within(1e-11 * expected + 1e-15));
        }
        assertThat(d.quantile(1e-9)).isEqualTo(3);
        assertThat(PoissonBinomial.of(new double[] {0, 1}, new long[] {5, 3}).quantile(0.5))
                .isEqualTo(3);
        assertThat(PoissonBinomial.of(new double[0], new long[0]).quantile(0.95))
                .isZero();
    }

    @Test
    void largeBinomialKeepsItsMomentsAndItsMass() {
        CountDistribution d = PoissonBinomial.of(new double[] {0.003, 0.9}, new long[] {2_000_000, 100_000});
        assertThat(d.mean()).isCloseTo(96_000, within(1e-6));
        assertThat(d.variance()).isCloseTo(2_000_000 * 0.003 * 0.997 + 100_000 * 0.09, within(1e-4));
        assertThat(d.upTo(200_000)).isCloseTo(1, within(1e-11));
    }

    @Test
    void refusesWhatIsNoProbability() {
        assertThatThrownBy(() -> PoissonBinomial.of(new double[] {0.1, Double.NaN}, new long[] {1, 1}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("group 1 has probability NaN");
    }

    @Test
    void baseStockAndFillRate() {
        ReferenceCase c = reference("base-stock");
        double[] levels = c.data("alpha");
        for (JsonNode row : c.node().at("/expected/poisson")) {
            double mean = row.get("lambda").asDouble();
            CountDistribution demand = poisson(mean);
            for (int i = 0; i < levels.length; i++) {
                int pieces = demand.quantile(levels[i]);
                assertThat(pieces).isEqualTo(row.get("S").get(i).asInt());
                assertThat(demand.upTo(pieces))
                        .isCloseTo(row.get("achieved").get(i).asDouble(), within(1e-10));
                assertThat(1 - demand.expectedShort(pieces) / mean)
                        .isCloseTo(row.get("fill_rate").get(i).asDouble(), within(1e-10));
            }
        }
    }

    @Test
    void newsvendorQuantile() {
        for (JsonNode row : reference("newsvendor").node().at("/expected/cases")) {
            assertThat(poisson(12).quantile(row.get("ratio").asDouble()))
                    .isEqualTo(row.get("poisson_12").asInt());
        }
    }

    private static CountDistribution poisson(double mean) {
        double[] pmf = new double[200];
        pmf[0] = Math.exp(-mean);
        for (int k = 1; k < pmf.length; k++) {
            pmf[k] = pmf[k - 1] * mean / k;
        }
        return new CountDistribution(0, pmf);
    }

    private static void meets(CountDistribution d, ReferenceCase c, double relative, double absolute) {
        double[] pmf = c.expected("pmf");
        double[] cdf = c.expected("cdf");
        for (int k = 0; k < pmf.length; k++) {
            assertThat(d.probability(k)).isCloseTo(pmf[k], within(relative * pmf[k] + absolute));
            assertThat(d.upTo(k)).isCloseTo(cdf[k], within(relative * cdf[k] + absolute));
        }
        quantiles(d, c);
    }

    private static void quantiles(CountDistribution d, ReferenceCase c) {
        double[] levels = c.expected("quantile/alpha");
        for (int i = 0; i < levels.length; i++) {
            assertThat((double) d.quantile(levels[i])).isEqualTo(c.expected("quantile/k")[i]);
        }
    }
}
