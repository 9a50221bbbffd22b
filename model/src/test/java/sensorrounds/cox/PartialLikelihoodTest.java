package sensorrounds.cox;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import sensorrounds.numeric.Objective.Evaluation;

/** The running sums against the definition, and the derivatives against differences. */
class PartialLikelihoodTest {
    private static final CoxSample FLEET = CoxFixtures.fleet(7, 400)
            .withWeights(IntStream.range(0, 400).mapToDouble(i -> 1 + i % 3).toArray())
            .withStrata(IntStream.range(0, 400).map(i -> i % 2).toArray());

    /** The log partial likelihood written down as it is defined, with the risk set listed anew for each failure. */
    private static double byDefinition(CoxSample sample, Ties ties, double[] coefficients) {
        double sum = 0;
        double[] ages = IntStream.range(0, sample.size())
                .mapToDouble(sample::exit)
                .sorted()
                .distinct()
                .toArray();
        for (int stratum : IntStream.range(0, sample.size())
                .map(sample::stratum)
                .distinct()
                .toArray()) {
            for (double age : ages) {
                double atRisk = 0;
                double failing = 0;
                double weight = 0;
                int count = 0;
                for (int i = 0; i < sample.size(); i++) {
                    if (sample.stratum(i) == stratum && sample.entry(i) < age && age <= sample.exit(i)) {
                        double eta = 0;
                        for (int j = 0; j < coefficients.length; j++) {
                            eta += coefficients[j] * sample.covariate(i, j);
                        }
                        double risk = sample.weight(i) * Math.exp(eta);
                        atRisk += risk;
                        if (sample.failed(i) && sample.exit(i) == age) {
                            failing += risk;
                            weight += sample.weight(i);
                            sum += sample.weight(i) * eta;
                            count++;
                        }
                    }
                }
                for (int k = 0; k < count; k++) {
                    sum -= weight / count * Math.log(atRisk - (ties == Ties.EFRON ? failing * k / count : 0));
                }
            }
        }
        return sum;
    }

    private static double[] standard(RiskSweep sweep, double[] coefficients) {
        return IntStream.range(0, coefficients.length)
                .mapToDouble(j -> coefficients[j] * sweep.scale(j))
                .toArray();
    }

    @ParameterizedTest
    @EnumSource(Ties.class)
    void theRunningSumsGiveTheDefinition(Ties ties) {
        RiskSweep sweep = new RiskSweep(FLEET);
        double[] coefficients = {0.9, -1.3};
        assertThat(new PartialLikelihood(sweep, ties)
                        .at(standard(sweep, coefficients))
                        .value())
                .isCloseTo(byDefinition(FLEET, ties, coefficients), within(1e-8));
    }

    @ParameterizedTest
    @EnumSource(Ties.class)
    void theDerivativesAreThoseOfTheValue(Ties ties) {
        PartialLikelihood likelihood = new PartialLikelihood(new RiskSweep(FLEET), ties);
        double[] at = {0.4, -0.7};
        Evaluation here = likelihood.at(at);
        double h = 1e-5;
        for (int j = 0; j < 2; j++) {
            double[] up = at.clone();
            double[] down = at.clone();
            up[j] += h;
            down[j] -= h;
            Evaluation above = likelihood.at(up);
            Evaluation below = likelihood.at(down);
            // Central differences err by h^2 of the third derivative, here some hundreds.
            assertThat(here.gradient()[j]).isCloseTo((above.value() - below.value()) / (2 * h), within(1e-5));
            for (int k = 0; k < 2; k++) {
                assertThat(here.hessian()[j][k])
                        .isCloseTo((above.gradient()[k] - below.gradient()[k]) / (2 * h), within(1e-5));
            }
        }
    }

    @Test
    void aRowOfHugeRiskLeavesNothingBehind() {
        // Going back in age the row at 30 joins at once and leaves at 8; its risk is 1e17 times that of the others.
        CoxSample sample = CoxSample.of(
                List.of("x"),
                new double[] {0, 0, 0, 8},
                new double[] {2, 4, 6, 30},
                new boolean[] {true, true, false, true},
                new double[][] {{0}, {1}, {0.5}, {40}});
        RiskSweep sweep = new RiskSweep(sample);
        double value = new PartialLikelihood(sweep, Ties.EFRON)
                .at(standard(sweep, new double[] {1}))
                .value();
        double e = Math.E;
        double expected = Math.log(1 / (1 + e + Math.sqrt(e))) + Math.log(e / (e + Math.sqrt(e)));
        // Scores are taken relative to the largest, so the small ones carry its rounding, 1e-16 x 40.
        assertThat(value).isCloseTo(expected, within(1e-12));
    }
}
