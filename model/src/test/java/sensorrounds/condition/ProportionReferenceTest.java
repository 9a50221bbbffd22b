package sensorrounds.condition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sensorrounds.numeric.ChiSquareTest;
import sensorrounds.numeric.WilsonInterval;

/**
 * Limits of shares and the comparison of two, against R 4.2.2 (base formulas, binom.test, prop.test) and Newcombe (1998), Stat.
 * Med. 17:857, Table I; area 13, cases by id in reference/proportions.json. Limits that the engine does not use (Wald, mid-p,
 * Agresti–Coull, Fisher) are left out.
 */
class ProportionReferenceTest {
    private static final double TOLERANCE = 1e-9;

    @ParameterizedTest
    @ValueSource(strings = {"ci-newcombe-81-263", "ci-newcombe-15-148"})
    void limitsOfNewcombesShares(String id) {
        JsonNode check = References.check("proportions.json", id);
        double x = check.at("/data/inline/x").asDouble();
        double n = check.at("/data/inline/n").asDouble();
        JsonNode expected = check.get("expected");
        WilsonInterval wilson = WilsonInterval.of(x, n, 0.95);
        close(wilson.lower(), expected.at("/wilson/0"));
        close(wilson.upper(), expected.at("/wilson/1"));
        close(new BetaDistribution(x, n - x + 1).quantile(0.025), expected.at("/clopper_pearson/0"));
        close(new BetaDistribution(x + 1, n - x).quantile(0.975), expected.at("/clopper_pearson/1"));
        close(new BetaDistribution(x + 0.5, n - x + 0.5).quantile(0.025), expected.at("/jeffreys/0"));
        close(new BetaDistribution(x + 0.5, n - x + 0.5).quantile(0.975), expected.at("/jeffreys/1"));
    }

    /** Case ci-grid-90, with none and all among it. */
    @Test
    void limitsAtAnotherLevelWithNoneAndAll() {
        JsonNode check = References.check("proportions.json", "ci-grid-90");
        JsonNode expected = check.get("expected");
        for (int i = 0; i < check.at("/data/inline/x").size(); i++) {
            double x = check.at("/data/inline/x/" + i).asDouble();
            double n = check.at("/data/inline/n/" + i).asDouble();
            WilsonInterval wilson = WilsonInterval.of(x, n, 0.9);
            close(wilson.lower(), expected.at("/wilson_lower/" + i));
            close(wilson.upper(), expected.at("/wilson_upper/" + i));
            if (x > 0) {
                close(new BetaDistribution(x, n - x + 1).quantile(0.05), expected.at("/cp_lower/" + i));
            }
            if (x < n) {
                close(new BetaDistribution(x + 1, n - x).quantile(0.95), expected.at("/cp_upper/" + i));
            }
        }
    }

    /** Case lr-two-rates: 18 of 20 against 7 of 15, by the likelihood ratio. */
    @Test
    void twoRatesByTheLikelihoodRatio() {
        JsonNode expected = References.check("proportions.json", "lr-two-rates").get("expected");
        double statistic = 2 * (logLikelihood(18, 20) + logLikelihood(7, 15) - logLikelihood(25, 35));
        assertThat(statistic).isCloseTo(expected.get("lr").asDouble(), within(1e-9));
        assertThat(new ChiSquareTest(statistic, 1).pValue())
                .isCloseTo(expected.get("lr_p").asDouble(), within(1e-9));
    }

    private static double logLikelihood(double x, double n) {
        return x * Math.log(x / n) + (n - x) * Math.log(1 - x / n);
    }

    private static void close(double actual, JsonNode expected) {
        assertThat(expected.isNumber()).isTrue();
        assertThat(actual).isCloseTo(expected.asDouble(), within(TOLERANCE));
    }
}
