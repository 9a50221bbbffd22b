package sensorrounds.regression;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import sensorrounds.survival.Estimate;

/** Likelihood-ratio limits of survival and of a failure probability. */
class HazardLimitsTest {
    private static final LifeRegression WEIBULL = LifeRegression.of(LifeFamily.WEIBULL);
    private static final CovariateLives LIVES = SimulatedFleet.of(8, 300).only("partB");
    private static final RegressionFit FIT = WEIBULL.fit(LIVES);

    /** S(t) >= p and t <= quantile(1 - p) are one statement, so their limits are each other's inverse. */
    @Test
    void survivalIsTheInverseOfTheQuantile() {
        ProfileLimits limits = ProfileLimits.of(LIVES, FIT);
        for (double failed : new double[] {0.05, 0.4}) {
            Estimate age = limits.quantile(failed, 1);

            assertThat(limits.survival(age.upper(), 1).upper()).isCloseTo(1 - failed, within(1e-8));
            assertThat(limits.survival(age.lower(), 1).lower()).isCloseTo(1 - failed, within(1e-8));
            assertThat(limits.survival(age.value(), 1).value()).isCloseTo(1 - failed, within(1e-12));
        }
    }

    /** At a limit the best likelihood with that probability is the highest less z^2 / 2; found here by a plain search. */
    @Test
    void aWindowLaterInLife() {
        CovariateLives plain = LIVES.only();
        RegressionFit fit = WEIBULL.fit(plain);
        double z = 1.959963984540054;

        Estimate limits = ProfileLimits.of(plain, fit).failureWithin(1826, 90);

        Estimate wald = fit.at().failureWithin(1826, 90);
        assertThat(limits.value()).isCloseTo(wald.value(), within(1e-14));
        assertThat(limits.lower())
                .isBetween(0.8 * wald.lower(), 1.2 * wald.lower())
                .isNotEqualTo(wald.lower());
        for (double p : new double[] {limits.lower(), limits.upper()}) {
            assertThat(best(plain, fit, p)).isCloseTo(fit.logLikelihood() - z * z / 2, within(1e-6));
        }
    }

    private static double best(CovariateLives lives, RegressionFit fit, double p) {
        Design design = fit.solution().design();
        double lowest = -1;
        double highest = 3;
        double golden = (Math.sqrt(5) - 1) / 2;
        for (int i = 0; i < 120; i++) {
            double a = highest - golden * (highest - lowest);
            double b = lowest + golden * (highest - lowest);
            if (at(lives, design, p, a) > at(lives, design, p, b)) {
                highest = b;
            } else {
                lowest = a;
            }
        }
        return at(lives, design, p, lowest);
    }

    private static double at(CovariateLives lives, Design design, double p, double logShape) {
        double shape = Math.exp(logShape);
        double power = Math.pow(1916, shape) - Math.pow(1826, shape);
        double logScale = Math.log(power / -Math.log1p(-p)) / shape;
        return LifeRegression.objective(lives, design)
                .at(new double[] {logScale - design.centre(), logShape})
                .value();
    }

    /**
     * Few failures among young lives: one step out the likelihood falls off a cliff and has a second maximum beyond, which
     * must not be followed. The limits are where a plain search says the loss is z^2.
     */
    @Test
    void aCliffNextToTheMaximum() {
        CovariateLives young = CoverageStudy.youngFleet(7);
        RegressionFit fit = WEIBULL.fit(young);
        Design design = fit.solution().design();

        Estimate scale = ProfileLimits.of(young, fit).scale();

        assertThat(fit.failures()).isLessThan(10);
        for (double limit : new double[] {scale.lower(), scale.upper()}) {
            double best = Double.NEGATIVE_INFINITY;
            for (double logShape = -1.5; logShape < 3; logShape += 0.0005) {
                best = Math.max(
                        best,
                        LifeRegression.objective(young, design)
                                .at(new double[] {Math.log(limit) - design.centre(), logShape})
                                .value());
            }
            assertThat(2 * (fit.logLikelihood() - best)).isCloseTo(3.841458820694124, within(1e-4));
        }
    }

    @Test
    void derivativesEqualDifferences() {
        Design design = FIT.solution().design();
        double h = 1e-5;
        for (double from : new double[] {0, 1500}) {
            HazardElimination elimination = new HazardElimination(design, new double[] {1}, from, 1800);
            double[] free = {0.2, 0.8};
            double[] slope = elimination.slope(-2, free);
            for (int i = 0; i < free.length; i++) {
                double[] up = free.clone();
                double[] down = free.clone();
                up[i] += h;
                down[i] -= h;
                assertThat(slope[i])
                        .isCloseTo(
                                (elimination.complete(-2, up)[0] - elimination.complete(-2, down)[0]) / (2 * h),
                                within(1e-8));
                for (int j = 0; j < free.length; j++) {
                    assertThat(elimination.curvature(-2, free)[i][j])
                            .isCloseTo(
                                    (elimination.slope(-2, up)[j] - elimination.slope(-2, down)[j]) / (2 * h),
                                    within(1e-8));
                }
            }
        }
    }

    @Test
    void refusesOtherLawsAndEmptyWindows() {
        RegressionFit lognormal = LifeRegression.of(LifeFamily.LOGNORMAL).fit(LIVES);

        assertThatThrownBy(() -> ProfileLimits.of(LIVES, lognormal).survival(1000, 0))
                .hasMessageContaining("take FittedLaw.failureWithin");
        assertThatThrownBy(() -> ProfileLimits.of(LIVES, FIT).failureWithin(1000, 0, 0))
                .hasMessageContaining("not from 1000.0 for 0.0");
    }
}
