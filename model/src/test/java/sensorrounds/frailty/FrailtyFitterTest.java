package sensorrounds.frailty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sensorrounds.regression.LifeFamily;
import sensorrounds.survival.Lifetime;

class FrailtyFitterTest {
    private static final double NEVER = Double.POSITIVE_INFINITY;

    @ParameterizedTest
    @ValueSource(doubles = {0.25, 1})
    void recoversTheTruth(double variance) {
        FrailtyFit fit = FrailtyFitter.withDefaults().fit(SimulatedSets.of(20261125, 1500, variance));

        assertThat(fit.status()).as(fit.cause()).isEqualTo(FrailtyStatus.CONVERGED);
        double logVariance = Math.log(fit.variance().value() / variance);
        assertThat(Math.abs(logVariance)).isLessThan(3 * Math.sqrt(fit.covariance()[2][2]));
        assertThat(fit.coefficients().get(0).value())
                .isCloseTo(
                        Math.log(SimulatedSets.SCALE),
                        within(3 * fit.coefficients().get(0).error()));
        assertThat(fit.coefficients().get(1).value())
                .isCloseTo(
                        Math.log(SimulatedSets.SHAPE),
                        within(3 * fit.coefficients().get(1).error()));
        assertThat(fit.coefficients().get(1).error()).isLessThan(0.1);
        assertThat(fit.variance().lower()).isBetween(variance / 2, variance);
        assertThat(fit.variance().upper()).isBetween(variance, 2 * variance);
        assertThat(fit.pValue()).isLessThan(1e-6);
        // Lives taken apart look less worn out, since the weak sets die first.
        assertThat(fit.apart().coefficients().get(1).value())
                .isLessThan(fit.coefficients().get(1).value() - 0.04);
    }

    /** At a limit the likelihood, the law being maximised out, has lost half the squared normal quantile. */
    @Test
    void limitsOfTheVarianceAreWhereTheLikelihoodSaysSo() {
        LifeSets sets = SimulatedSets.of(5, 150, 0.5);
        FrailtyFit wide = FrailtyFitter.withDefaults().fit(sets);
        FrailtyFit narrow = FrailtyFitter.withDefaults().withLevel(0.8).fit(sets);

        assertThat(narrow.variance().lower()).isGreaterThan(wide.variance().lower());
        assertThat(narrow.variance().upper()).isLessThan(wide.variance().upper());
        double z = 1.2815515655446004;
        for (double limit :
                new double[] {narrow.variance().lower(), narrow.variance().upper()}) {
            assertThat(highest(sets, limit)).isCloseTo(narrow.logLikelihood() - z * z / 2, within(1e-5));
        }
    }

    /** Best log-likelihood over scale and shape by a plain coordinate search. */
    private static double highest(LifeSets sets, double variance) {
        FrailtyLikelihood likelihood = new FrailtyLikelihood(LifeFamily.WEIBULL, sets);
        double[] point = {0, 0.8, Math.log(variance)};
        double best = likelihood.at(point).value();
        for (double step = 0.2; step > 1e-5; step /= 2) {
            for (int i = 0; i < 60; i++) {
                double before = best;
                for (int j = 0; j < 4; j++) {
                    double[] next = point.clone();
                    next[j / 2] += j % 2 == 0 ? step : -step;
                    double value = likelihood.at(next).value();
                    if (value > best) {
                        best = value;
                        point = next;
                    }
                }
                if (best == before) {
                    break;
                }
            }
        }
        return best;
    }

    @Test
    void independentLivesHaveNoLikeness() {
        // The slope at variance 0 falls on either side by chance; this seed is one of the half where it is negative.
        LifeSets sets = null;
        FrailtyFit fit = null;
        for (long seed = 1; fit == null || fit.status() != FrailtyStatus.NO_LIKENESS; seed++) {
            sets = SimulatedSets.of(seed, 200, 0);
            fit = FrailtyFitter.withDefaults().fit(sets);
            assertThat(fit.converged()).isTrue();
            assertThat(fit.variance().lower()).isZero();
            assertThat(seed).isLessThan(10);
        }
        assertThat(fit.variance().value()).isZero();
        assertThat(fit.variance().upper()).isBetween(0.005, 0.5);
        assertThat(fit.pValue()).isEqualTo(1);
        assertThat(fit.logLikelihood()).isEqualTo(fit.apart().logLikelihood());
        assertThat(fit.coefficients()).isEqualTo(fit.apart().coefficients());
        List<SetMember> oneDead = List.of(SetMember.of(0, 1000, 1200), SetMember.of(0, 1200, NEVER));
        assertThat(fit.law().posterior(oneDead).mean()).isEqualTo(1);
    }

    @Test
    void timeInYearsGivesTheSameVariance() {
        LifeSets days = SimulatedSets.of(3, 200, 0.7);
        LifeSets years = LifeSets.of(days.vehicles().stream()
                .map(set -> set.stream()
                        .map(m -> SetMember.of(m.entry() / 365.25, m.lower() / 365.25, m.upper() / 365.25))
                        .toList())
                .toList());

        FrailtyFit inDays = FrailtyFitter.withDefaults().fit(days);
        FrailtyFit inYears = FrailtyFitter.withDefaults().fit(years);

        assertThat(inYears.variance().value()).isCloseTo(inDays.variance().value(), within(1e-9));
        assertThat(inYears.logLikelihood()).isCloseTo(inDays.logLikelihood(), within(1e-9));
        assertThat(inYears.coefficients().get(0).value())
                .isCloseTo(inDays.coefficients().get(0).value() - Math.log(365.25), within(1e-9));
    }

    @Test
    void orderOfVehiclesAndSensorsDoesNotMatter() {
        LifeSets sets = SimulatedSets.of(4, 100, 0.7);
        List<List<SetMember>> shuffled = new ArrayList<>();
        Random random = new Random(1);
        for (List<SetMember> set : sets.vehicles()) {
            List<SetMember> copy = new ArrayList<>(set);
            Collections.shuffle(copy, random);
            shuffled.add(copy);
        }
        Collections.shuffle(shuffled, random);

        FrailtyFit fit = FrailtyFitter.withDefaults().fit(LifeSets.of(shuffled));

        assertThat(fit.variance().value())
                .isCloseTo(FrailtyFitter.withDefaults().fit(sets).variance().value(), within(1e-9));
    }

    /** One lot of vehicles all of whose sensors die within days, another that never fails: variance without bound. */
    @Test
    void aFleetOfTwoKindsIsNoGammaLaw() {
        List<List<SetMember>> sets = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            double age = 500 + 7 * i;
            sets.add(List.of(SetMember.of(0, age, age), SetMember.of(0, age + 1, age + 1)));
            sets.add(List.of(SetMember.of(0, 1e9, NEVER), SetMember.of(0, 1e9, NEVER)));
        }

        FrailtyFit fit = FrailtyFitter.withDefaults().fit(LifeSets.of(sets));

        assertThat(fit.converged()).isFalse();
        assertThat(fit.status()).isIn(FrailtyStatus.FLAT_LIKELIHOOD, FrailtyStatus.NOT_CONVERGED);
        assertThat(fit.cause()).contains("variance of");
        assertThatThrownBy(fit::variance)
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("ask converged() first");
    }

    @Test
    void vehiclesWithOneSensorSayNothingOfLikeness() {
        List<List<SetMember>> sets = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            sets.add(List.of(SetMember.of(0, 400 + 90 * i, 700 + 90 * i)));
        }

        FrailtyFit fit = FrailtyFitter.withDefaults().fit(LifeSets.of(sets));

        assertThat(fit.status()).isEqualTo(FrailtyStatus.NO_SETS);
        assertThat(fit.cause()).contains("0 of 20 vehicles");
    }

    @Test
    void noFailuresNoLivesOneFailure() {
        assertThat(FrailtyFitter.withDefaults().fit(LifeSets.of(List.of())).cause())
                .startsWith("NO_LIVES");
        List<SetMember> sound = List.of(SetMember.of(0, 900, NEVER), SetMember.of(0, 900, NEVER));
        assertThat(FrailtyFitter.withDefaults().fit(LifeSets.of(List.of(sound))).cause())
                .startsWith("NO_FAILURES");
        List<SetMember> oneDead = List.of(SetMember.of(0, 900, 950), SetMember.of(0, 900, NEVER));
        assertThat(FrailtyFitter.withDefaults()
                        .fit(LifeSets.of(List.of(oneDead)))
                        .cause())
                .startsWith("ONE_FAILURE");
    }

    @Test
    void refusesWhatIsNoLife() {
        assertThatThrownBy(() -> SetMember.of(5, 4, 9)).hasMessageContaining("entry 5.0, lower 4.0");
        assertThatThrownBy(() -> SetMember.of(0, Double.NaN, 9)).hasMessageContaining("not a life");
        assertThatThrownBy(() -> SetMember.of(new Lifetime(0, 3, 4, 2))).hasMessageContaining("weight 2");
        assertThatThrownBy(() -> LifeSets.of(List.of("cold"), List.of(List.of(SetMember.of(0, 1, 2)))))
                .hasMessageContaining("vehicle at index 0");
        assertThatThrownBy(() -> FrailtyFitter.withDefaults().with(LifeFamily.LOGNORMAL))
                .hasMessageContaining("WEIBULL or EXPONENTIAL");
    }
}
