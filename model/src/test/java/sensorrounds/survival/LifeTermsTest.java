package sensorrounds.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** Likelihoods by distinct entries and intervals against the definition, life by life: Klein and Moeschberger (2003), 3.5. */
class LifeTermsTest {
    private static final LifetimeSample LIVES = lives();

    /** Ages on a grid of 30 days, so that lives share entries and intervals; every kind of life is among them. */
    private static LifetimeSample lives() {
        Random random = new Random(4);
        List<Lifetime> all = new ArrayList<>();
        for (int i = 0; i < 3000; i++) {
            int entry = 30 * random.nextInt(40);
            int lower = entry + 30 * random.nextInt(30);
            int upper = switch (random.nextInt(3)) {
                case 0 -> Lifetime.NEVER;
                case 1 -> Math.max(lower, entry + 30);
                default -> lower + 30 * (1 + random.nextInt(20));
            };
            all.add(new Lifetime(entry, upper == entry + 30 ? upper : lower, upper, 1 + random.nextInt(3)));
        }
        return LifetimeSample.of(all);
    }

    private static double lifeByLife(LifetimeSample sample, DoubleUnaryOperator hazard, DoubleUnaryOperator rate) {
        double sum = 0;
        for (int i = 0; i < sample.size(); i++) {
            double term = hazard.applyAsDouble(sample.entry(i)) - hazard.applyAsDouble(sample.lower(i));
            if (sample.exact(i)) {
                term += Math.log(rate.applyAsDouble(sample.lower(i)));
            } else if (sample.failed(i)) {
                term += Math.log(
                        -Math.expm1(hazard.applyAsDouble(sample.lower(i)) - hazard.applyAsDouble(sample.upper(i))));
            }
            sum += sample.weight(i) * term;
        }
        return sum;
    }

    @Test
    void distinctLivesAreManyMoreThanTerms() {
        LifeTerms terms = LIVES.terms();
        assertThat(LIVES.size()).isGreaterThan(2 * (terms.weight.length + terms.entry.length));
        assertThat(java.util.Arrays.stream(terms.weight).sum()).isEqualTo(LIVES.lives());
    }

    @Test
    void theWeibullLikelihoodIsThatOfTheLives() {
        LifeLaw law = new WeibullLife(2.5, 1500, 0, 0, 0);
        double expected = lifeByLife(LIVES, law::cumulativeHazard, law::hazard);
        double ours = new LifeLikelihood(Family.WEIBULL.law(), LIVES, 0).at(Math.log(1500), Math.log(2.5)).value;
        assertThat(ours).isCloseTo(expected, within(1e-11 * Math.abs(expected)));
    }

    @Test
    void theLikelihoodOfTwoHazardsIsThatOfTheLives() {
        LifeLaw law = new EarlyWearLife(0.9, 4000, 4, 1700, new double[4][4]);
        double expected = lifeByLife(LIVES, law::cumulativeHazard, law::hazard);
        double ours = new EarlyWearLikelihood(LIVES, 0)
                .at(new double[] {Math.log(4000), Math.log(0.9), Math.log(1700), Math.log(4)})
                .value();
        assertThat(ours).isCloseTo(expected, within(1e-11 * Math.abs(expected)));
    }

    /** Bands that end on the grid and between its ages. */
    @Test
    void theLikelihoodByBandsIsThatOfTheLives() {
        double[] edges = {0, 365, 900, 1400, Double.POSITIVE_INFINITY};
        double[] rates = {1e-4, 4e-4, 9e-4, 2e-3};
        DoubleUnaryOperator hazard = age -> {
            double sum = 0;
            for (int j = 0; j < rates.length; j++) {
                sum += rates[j] * Math.max(0, Math.min(edges[j + 1], age) - edges[j]);
            }
            return sum;
        };
        DoubleUnaryOperator rate =
                age -> age <= 365 ? rates[0] : age <= 900 ? rates[1] : age <= 1400 ? rates[2] : rates[3];
        double expected = lifeByLife(LIVES, hazard, rate);
        assertThat(new BandLikelihood(edges, LIVES).at(rates).value())
                .isCloseTo(expected, within(1e-11 * Math.abs(expected)));
    }
}
