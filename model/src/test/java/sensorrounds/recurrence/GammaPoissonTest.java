package sensorrounds.recurrence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sensorrounds.condition.References;

class GammaPoissonTest {
    /** SciPy 1.17.1, scipy.special.gammaincc. */
    @ParameterizedTest
    @CsvSource({
        "0.5, 0.1, 0.6547208460185768",
        "3, 7.5, 0.020256715056664387",
        "50, 60, 0.08440668109369177",
        "52, 40, 0.9612598077972697",
        "10000, 10150, 0.06734062150394915",
        "2.5, 40, 8.391825114831597e-16"
    })
    void incompleteGamma(double shape, double x, double above) {
        GammaDistribution law = new GammaDistribution(shape, 1);
        assertThat(law.above(x)).isCloseTo(above, Percentage.withPercentage(1e-8));
        assertThat(law.cdf(x)).isCloseTo(1 - above, within(1e-12));
    }

    /** Closed forms: an exponential law, and the Poisson sum for shape 3, Abramowitz and Stegun (1964) 26.4.21. */
    @Test
    void incompleteGammaInClosedForm() {
        assertThat(new GammaDistribution(1, 2).above(0.7)).isCloseTo(Math.exp(-1.4), within(1e-14));
        double x = 2.3;
        assertThat(new GammaDistribution(3, 1).above(x)).isCloseTo(Math.exp(-x) * (1 + x + x * x / 2), within(1e-14));
        assertThat(new GammaDistribution(3, 1).cdf(0)).isZero();
    }

    /** Chi-square 5 % points, Abramowitz and Stegun (1964), table 26.8: 3.84146 and 18.3070 for 1 and 10 degrees. */
    @Test
    void chiSquarePoints() {
        assertThat(new GammaDistribution(0.5, 0.5).above(3.84146)).isCloseTo(0.05, within(1e-6));
        assertThat(new GammaDistribution(5, 0.5).above(18.3070)).isCloseTo(0.05, within(1e-6));
    }

    /** Red mites on apple leaves, Bliss and Fisher (1953), Biometrics 9:176: k 1.02459, mean 1.14667; digits by R 4.2.2. */
    @Test
    void negativeBinomialOfBlissAndFisher() {
        JsonNode c = References.check("mite-counts.json", "nb-mites");
        List<GammaPoissonFit.Cell> cells = new ArrayList<>();
        for (int i = 0; i < c.at("/data/inline/value").size(); i++) {
            cells.add(new GammaPoissonFit.Cell(
                    c.at("/data/inline/value").get(i).asInt(),
                    1,
                    c.at("/data/inline/count").get(i).asLong()));
        }
        GammaPoissonFit.Fit fit = GammaPoissonFit.fit(cells);
        assertThat(fit.status()).isEqualTo(GammaPoissonFit.Status.CONVERGED);
        assertThat(fit.shape()).isCloseTo(c.at("/expected/k").asDouble(), Percentage.withPercentage(1e-5));
        assertThat(fit.mean()).isCloseTo(c.at("/expected/mu").asDouble(), Percentage.withPercentage(1e-9));
        assertThat(fit.logLikelihood()).isCloseTo(c.at("/expected/loglik").asDouble(), within(1e-8));
        assertThat(GammaPoissonFit.poisson(cells, fit.mean()))
                .isCloseTo(c.at("/expected/poisson_loglik").asDouble(), within(1e-8));
    }

    private static final List<GammaPoissonFit.Cell> UNEQUAL = cells(new double[][] {
        {0, .5, 40},
        {1, .5, 9},
        {2, .5, 2},
        {0, 2, 30},
        {1, 2, 14},
        {2, 2, 8},
        {3, 2, 5},
        {6, 2, 1},
        {0, 4, 9},
        {1, 4, 8},
        {3, 4, 4},
        {5, 4, 2},
        {9, 4, 1}
    });

    private static List<GammaPoissonFit.Cell> cells(double[][] rows) {
        List<GammaPoissonFit.Cell> list = new ArrayList<>();
        for (double[] r : rows) {
            list.add(new GammaPoissonFit.Cell((int) r[0], r[1], (long) r[2]));
        }
        return list;
    }

    /** Constructed counts over unequal exposures; SciPy 1.17.1, Nelder–Mead on the likelihood of Lawless (1987). */
    @Test
    void unequalExposures() {
        GammaPoissonFit.Fit fit = GammaPoissonFit.fit(UNEQUAL);
        assertThat(fit.mean()).isCloseTo(0.44163936, Percentage.withPercentage(1e-4));
        assertThat(fit.shape()).isCloseTo(1.12907497, Percentage.withPercentage(1e-4));
        assertThat(fit.logLikelihood()).isCloseTo(-149.59277196566393, within(1e-9));
    }

    @Test
    void anotherUnitOfExposureScalesTheMeanAlone() {
        GammaPoissonFit.Fit years = GammaPoissonFit.fit(UNEQUAL);
        GammaPoissonFit.Fit days = GammaPoissonFit.fit(UNEQUAL.stream()
                .map(c -> new GammaPoissonFit.Cell(c.count(), 365.25 * c.exposure(), c.units()))
                .toList());
        assertThat(days.shape()).isCloseTo(years.shape(), Percentage.withPercentage(1e-7));
        assertThat(365.25 * days.mean()).isCloseTo(years.mean(), Percentage.withPercentage(1e-9));
    }

    @Test
    void countsMoreEvenThanPoissonHaveNoSpread() {
        GammaPoissonFit.Fit fit = GammaPoissonFit.fit(cells(new double[][] {{1, 1, 50}, {2, 1, 50}}));
        assertThat(fit.status()).isEqualTo(GammaPoissonFit.Status.NO_SPREAD);
        assertThat(fit.mean()).isCloseTo(1.5, within(1e-12));
    }

    @Test
    void noEventIsNoFit() {
        GammaPoissonFit.Fit fit = GammaPoissonFit.fit(cells(new double[][] {{0, 1, 50}}));
        assertThat(fit.status()).isEqualTo(GammaPoissonFit.Status.FAILED);
        assertThat(fit.mean()).isNaN();
    }
}
