package sensorrounds.frailty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import sensorrounds.numeric.Objective;
import sensorrounds.regression.Coefficient;
import sensorrounds.regression.LifeFamily;
import sensorrounds.regression.LifeRegression;
import sensorrounds.regression.RegressionFit;

class FrailtyLikelihoodTest {
    private static final double NEVER = Double.POSITIVE_INFINITY;

    /** Every kind of life, with two covariates. */
    private static LifeSets everyKind() {
        return LifeSets.of(
                List.of("cold", "load"),
                List.of(
                        List.of(life(0, 700, 700, 0, 1.5), life(0, 400, 900, 0, 2), life(0, 900, NEVER, 0, 1)),
                        List.of(life(500, 500, 1100, 1, 2), life(500, 1100, 1130, 1, 3), life(700, 1500, 1500, 1, 1)),
                        List.of(life(0, 0, 300, 1, 1), life(100, 1000, NEVER, 1, 4)),
                        List.of(life(800, 2500, NEVER, 0, 2), life(800, 2500, NEVER, 0, 3))));
    }

    private static SetMember life(double entry, double lower, double upper, double cold, double load) {
        return new SetMember(entry, lower, upper, List.of(cold, load));
    }

    @Test
    void derivativesEqualDifferences() {
        FrailtyLikelihood likelihood = new FrailtyLikelihood(LifeFamily.WEIBULL, everyKind());
        for (double logVariance : new double[] {-6, -1, 0.5, 2}) {
            double[] point = {0.6, -0.2, 0.15, 0.4, logVariance};
            Objective.Evaluation at = likelihood.at(point);
            double h = 1e-4;
            for (int i = 0; i < point.length; i++) {
                double[] up = point.clone();
                double[] down = point.clone();
                up[i] += h;
                down[i] -= h;
                Objective.Evaluation above = likelihood.at(up);
                Objective.Evaluation below = likelihood.at(down);
                assertThat(at.gradient()[i])
                        .as("slope %d at log variance %s", i, logVariance)
                        .isCloseTo((above.value() - below.value()) / (2 * h), within(1e-6));
                for (int j = 0; j < point.length; j++) {
                    assertThat(at.hessian()[i][j])
                            .as("curvature %d, %d at log variance %s", i, j, logVariance)
                            .isCloseTo((above.gradient()[j] - below.gradient()[j]) / (2 * h), within(1e-6));
                }
            }
        }
    }

    @Test
    void withoutVarianceLivesAreIndependent() {
        LifeSets sets = SimulatedSets.of(7, 60, 0.5);
        RegressionFit apart = LifeRegression.of(LifeFamily.WEIBULL).fit(sets.apart());
        FrailtyLikelihood likelihood = new FrailtyLikelihood(LifeFamily.WEIBULL, sets);
        double[] plain = likelihood.standardised(
                apart.coefficients().stream().mapToDouble(c -> c.value()).toArray());
        double[] point = {plain[0], plain[1], Math.log(1e-8)};

        Objective.Evaluation at = likelihood.at(point);

        double slope = likelihood.slopeAtNone(plain);
        assertThat(at.value()).isCloseTo(apart.logLikelihood(), within(1e-5));
        assertThat(at.value() - apart.logLikelihood()).isCloseTo(1e-8 * slope, within(3e-10));
        // Slope in log variance over variance is the slope in variance.
        assertThat(at.gradient()[2] / 1e-8).isCloseTo(slope, within(1e-3 * Math.abs(slope)));
        assertThat(slope).isPositive();
    }

    /** The set was only seen because all of it had survived: leaving that out must show. */
    @Test
    void ignoringEntryGivesAnotherAnswer() {
        LifeSets sets = SimulatedSets.of(11, 1500, 1);
        LifeSets untruncated = LifeSets.of(sets.vehicles().stream()
                .map(set -> set.stream()
                        .map(m -> SetMember.of(0, m.lower(), m.upper()))
                        .toList())
                .toList());

        FrailtyFit right = FrailtyFitter.withDefaults().fit(sets);
        FrailtyFit wrong = FrailtyFitter.withDefaults().fit(untruncated);

        assertThat(errorsOff(right.coefficients().get(0), SimulatedSets.SCALE)).isBetween(-3.0, 3.0);
        assertThat(errorsOff(right.coefficients().get(1), SimulatedSets.SHAPE)).isBetween(-3.0, 3.0);
        assertThat(errorsOff(wrong.coefficients().get(0), SimulatedSets.SCALE)).isGreaterThan(2.5);
        assertThat(errorsOff(wrong.coefficients().get(1), SimulatedSets.SHAPE)).isGreaterThan(5);
    }

    private static double errorsOff(Coefficient log, double truth) {
        return (log.value() - Math.log(truth)) / log.error();
    }
}
