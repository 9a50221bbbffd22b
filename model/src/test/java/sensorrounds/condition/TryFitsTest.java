package sensorrounds.condition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sensorrounds.numeric.GammaFunction;

/**
 * Fits to tries until the first success, against the cycles-to-conception data of Baird and Wilcox (1985), JAMA
 * 253:2979, with the beta-geometric law of Weinberg and Gladen (1986), Biometrics 42:547; R 4.2.2.
 */
class TryFitsTest {
    private static final JsonNode CYCLES = References.check("wake-tries.json", "attempts-fecundability");

    /** Censored geometric: 93 successes, 322 failures, p .224 for smokers (Dekking et al. 2005, table 21.1). */
    @ParameterizedTest
    @ValueSource(strings = {"smokers", "nonsmokers"})
    void censoredGeometricIsSuccessesOverTries(String group) {
        WakeCells cells = new WakeCells(0);
        WakeCells.Key key = new WakeCells.Key(group, false, false);
        JsonNode counts = CYCLES.at("/data/inline/" + group);
        for (int i = 0; i < counts.size(); i++) {
            cells.count(key, i + 1, true, counts.get(i).asLong());
        }
        cells.count(
                key,
                12,
                false,
                CYCLES.at("/data/inline/censored_after_12/" + group).asLong());
        WakeCells.Tries tries = cells.tries(key, 12);
        JsonNode expected = CYCLES.at("/expected/geometric/" + group);
        assertThat(tries.successes()).isEqualTo(expected.get("successes").asLong());
        assertThat(tries.failures()).isEqualTo(expected.get("failures").asLong());
        assertThat(tries.successes() / (double) tries.total())
                .isCloseTo(expected.get("p").asDouble(), within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(strings = {"smokers", "nonsmokers", "pooled"})
    void betaGeometricMaximum(String group) {
        List<BetaSpread.Group> groups = new ArrayList<>();
        for (String g : group.equals("pooled") ? List.of("smokers", "nonsmokers") : List.of(group)) {
            JsonNode counts = CYCLES.at("/data/inline/" + g);
            for (int i = 0; i < counts.size(); i++) {
                groups.add(new BetaSpread.Group(1, i, counts.get(i).asLong()));
            }
            groups.add(new BetaSpread.Group(
                    0, 12, CYCLES.at("/data/inline/censored_after_12/" + g).asLong()));
        }
        BetaSpread.Fit fit = BetaSpread.fit(groups);
        JsonNode expected = CYCLES.at("/expected/beta_geometric/" + group);
        assertThat(fit.status()).isEqualTo(BetaSpread.Status.CONVERGED);
        assertThat(fit.alpha()).isCloseTo(expected.get("alpha").asDouble(), Percentage.withPercentage(1e-4));
        assertThat(fit.beta()).isCloseTo(expected.get("beta").asDouble(), Percentage.withPercentage(1e-4));
        assertThat(fit.logLikelihood()).isCloseTo(expected.get("loglik").asDouble(), within(1e-8));
    }

    /**
     * Boys among twelve children, Geissler (1889); Lindsey and Altham (1998), Appl. Statist. 47:149. The maximum lies on
     * a flat ridge, so that the log-likelihood and the mean are compared more tightly than the parameters.
     */
    @Test
    void betaBinomialMaximum() {
        JsonNode c = References.check("wake-tries.json", "bb-geissler");
        List<BetaSpread.Group> groups = new ArrayList<>();
        double coefficients = 0;
        for (int i = 0; i <= 12; i++) {
            int y = c.at("/data/inline/y").get(i).asInt();
            long families = c.at("/data/inline/families").get(i).asLong();
            groups.add(new BetaSpread.Group(y, 12 - y, families));
            coefficients += families
                    * (GammaFunction.logGamma(13) - GammaFunction.logGamma(y + 1) - GammaFunction.logGamma(13 - y));
        }
        BetaSpread.Fit fit = BetaSpread.fit(groups);
        assertThat(fit.logLikelihood() + coefficients)
                .isCloseTo(c.at("/expected/loglik").asDouble(), within(1e-6));
        assertThat(fit.alpha() / (fit.alpha() + fit.beta()))
                .isCloseTo(c.at("/expected/mean").asDouble(), within(1e-8));
        assertThat(fit.alpha()).isCloseTo(c.at("/expected/alpha").asDouble(), Percentage.withPercentage(1e-4));
        assertThat(fit.beta()).isCloseTo(c.at("/expected/beta").asDouble(), Percentage.withPercentage(1e-4));
    }

    @Test
    void groupsThatDifferNoMoreThanChanceHaveNoSpread() {
        BetaSpread.Fit fit = BetaSpread.fit(List.of(
                new BetaSpread.Group(90, 10, 1), new BetaSpread.Group(91, 9, 1), new BetaSpread.Group(89, 11, 1)));
        assertThat(fit.status()).isEqualTo(BetaSpread.Status.NO_SPREAD);
    }

    @Test
    void withoutAFailureThereIsNoFit() {
        assertThat(BetaSpread.fit(List.of(new BetaSpread.Group(30, 0, 4))).status())
                .isEqualTo(BetaSpread.Status.NOT_CONVERGED);
    }

    /**
     * Oesophageal cancer and alcohol by age, Ille-et-Vilaine; Breslow and Day (1980), Statistical Methods in Cancer
     * Research I, section 4.4: ratio 5.16, limits 3.56 to 7.47 (counts and figures from memory).
     */
    @Test
    void pooledOddsRatioOfBreslowAndDay() {
        PooledOdds odds = PooledOdds.of(List.of(
                new PooledOdds.Stratum(1, 9, 0, 106),
                new PooledOdds.Stratum(4, 26, 5, 164),
                new PooledOdds.Stratum(25, 29, 21, 138),
                new PooledOdds.Stratum(42, 27, 34, 139),
                new PooledOdds.Stratum(19, 18, 36, 88),
                new PooledOdds.Stratum(5, 0, 8, 31)));
        double half = 1.959963984540054 * Math.sqrt(odds.variance());
        assertThat(Math.exp(odds.logRatio())).isCloseTo(5.16, within(0.005));
        assertThat(Math.exp(odds.logRatio() - half)).isCloseTo(3.56, within(0.005));
        assertThat(Math.exp(odds.logRatio() + half)).isCloseTo(7.47, within(0.005));
    }

    @Test
    void oddsWithoutAContrastAreNoEffect() {
        PooledOdds none = PooledOdds.of(List.of(new PooledOdds.Stratum(0, 0, 80, 20)));
        assertThat(none.logRatio()).isNaN();
        assertThat(none.shrunk(1)).isZero();
    }

    /** With the prior as precise as the data the posterior mean lies half way. */
    @Test
    void effectIsShrunkHalfWayWhenPriorAndDataAreAlikePrecise() {
        assertThat(new PooledOdds(-0.8, 0.25).shrunk(0.5)).isCloseTo(-0.4, within(1e-15));
    }
}
