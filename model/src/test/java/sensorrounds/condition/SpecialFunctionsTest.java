package sensorrounds.condition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sensorrounds.numeric.GammaFunction;

class SpecialFunctionsTest {
    /** SciPy 1.17.1, scipy.special gammaln, digamma, polygamma(1, x). */
    @ParameterizedTest
    @CsvSource({
        "0.001, 6.907178885383853, -1000.5755719318103",
        "0.5, 0.5723649429247, -1.9635100260214235",
        "3.7, 1.428072326665388, 1.1671535393615113",
        "14.9, 24.924132002217277, 2.667428976216042",
        "200, 857.9336698258575, 5.295815283219911"
    })
    void logGammaAndDigamma(double x, double logGamma, double digamma) {
        assertThat(GammaFunction.logGamma(x)).isCloseTo(logGamma, within(1e-12));
        assertThat(Polygamma.digamma(x)).isCloseTo(digamma, Percentage.withPercentage(1e-11));
    }

    /** Abramowitz and Stegun (1964) 6.4.2 and 6.4.4: trigamma(1) = pi^2/6, trigamma(1/2) = pi^2/2. */
    @Test
    void trigammaAtOneAndOneHalf() {
        assertThat(Polygamma.trigamma(1)).isCloseTo(Math.PI * Math.PI / 6, within(1e-13));
        assertThat(Polygamma.trigamma(0.5)).isCloseTo(Math.PI * Math.PI / 2, within(1e-13));
    }

    @Test
    void logGammaOfFactorials() {
        assertThat(GammaFunction.logGamma(1)).isCloseTo(0, within(1e-14));
        assertThat(GammaFunction.logGamma(2)).isCloseTo(0, within(1e-14));
        assertThat(GammaFunction.logGamma(11)).isCloseTo(Math.log(3628800), within(1e-13));
        assertThatThrownBy(() -> GammaFunction.logGamma(0)).hasMessageContaining("x > 0");
    }

    /**
     * SciPy 1.17.1, scipy.special.betainc; the last is 11/16 by hand: Beta(2,3) at 1/2. With parameters near a hundred
     * thousand log gamma is near a million, and its rounding leaves nine digits.
     */
    @ParameterizedTest
    @CsvSource({
        "0.3, 4, 0.01, 0.41023606739596147",
        "120, 8, 0.95, 0.6970234248368006",
        "100000, 20000, 0.833, 0.3777505227785174",
        "2, 3, 0.5, 0.6875"
    })
    void incompleteBeta(double a, double b, double x, double expected) {
        assertThat(new BetaDistribution(a, b).cdf(x)).isCloseTo(expected, Percentage.withPercentage(1e-7));
    }

    /** Clopper–Pearson limits are beta quantiles; R 4.2.2 binom.test on a grid with its edges. */
    @Test
    void quantilesGiveClopperPearsonLimits() {
        JsonNode c = References.check("wake-tries.json", "ci-grid");
        JsonNode data = c.at("/data/inline");
        for (int i = 0; i < data.get("x").size(); i++) {
            int x = data.get("x").get(i).asInt();
            int n = data.get("n").get(i).asInt();
            double lower = x == 0 ? 0 : new BetaDistribution(x, n - x + 1).quantile(0.025);
            double upper = x == n ? 1 : new BetaDistribution(x + 1, n - x).quantile(0.975);
            assertThat(lower)
                    .as("%d of %d", x, n)
                    .isCloseTo(c.at("/expected/cp_lower").get(i).asDouble(), within(1e-9));
            assertThat(upper)
                    .as("%d of %d", x, n)
                    .isCloseTo(c.at("/expected/cp_upper").get(i).asDouble(), within(1e-9));
        }
    }

    @Test
    void betaLawKeepsItsMoments() {
        BetaDistribution law = BetaDistribution.ofMoments(0.8, 0.01);
        assertThat(law.mean()).isCloseTo(0.8, within(1e-14));
        assertThat(law.alpha()).isCloseTo(12, within(1e-12));
        assertThat(law.beta()).isCloseTo(3, within(1e-12));
        assertThat(law.cdf(law.quantile(0.3))).isCloseTo(0.3, within(1e-13));
    }
}
