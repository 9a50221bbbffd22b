package sensorrounds.replacement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import sensorrounds.numeric.Quadrature;
import sensorrounds.reference.ReferenceCase;
import sensorrounds.survival.WeibullLife;

/** Values from R 4.2.2, see reference/replacement/age-replacement.json; tolerances are the file's. */
class AgeReplacementTest {
    private static ReferenceCase reference(String id) {
        return ReferenceCase.load("replacement/age-replacement.json", id);
    }

    private static AgeingLaw weibull(double shape, double scale) {
        return new FittedAgeing(new WeibullLife(shape, scale, 0, 0, 0));
    }

    @Test
    void twentyWeibullPoliciesMeetTheirReference() {
        ReferenceCase c = reference("age-weibull-grid");
        for (int i = 0; i < c.data("shape").length; i++) {
            AgeingLaw law = weibull(c.data("shape")[i], 1);
            AgeReplacement policy = new AgeReplacement(law, 1, c.data("ratio")[i]);
            AgeReplacement.Optimum best = policy.optimum();
            assertThat(best.finite()).isTrue();
            near(best.age(), c.expected("T")[i], 1e-8);
            near(best.costRate(), c.expected("cost")[i], 1e-10);
            near(policy.runToFailureCostRate(), c.expected("run_to_failure_cost")[i], 1e-10);
            near(1 - law.survival(best.age()), c.expected("prob_fail_before_T")[i], 1e-7);
            near(law.meanUpTo(best.age()), c.expected("mean_cycle")[i], 1e-7);
            // First-order condition: c = (cf - cp) h(T).
            near(best.costRate(), (c.data("ratio")[i] - 1) * law.hazard(best.age()), 1e-7);
        }
    }

    @Test
    void optimumIsTheExactRootNotTheGridSearchOfThePublishedTestSuite() {
        ReferenceCase c = reference("age-weibull-2.5-1000");
        AgeReplacement policy = new AgeReplacement(weibull(2.5, 1000), 1, 5);
        near(policy.optimum().age(), 493.046957596634, 1e-8);
        near(policy.optimum().costRate(), c.expected("cost")[0], 1e-10);
        double[] ages = c.expected("cost_at/T");
        for (int i = 0; i < ages.length; i++) {
            near(policy.costRate(ages[i]), c.expected("cost_at/cost")[i], 1e-10);
        }
    }

    @Test
    void withoutRisingHazardRunToFailure() {
        ReferenceCase c = reference("age-no-optimum");
        for (int i = 0; i < 2; i++) {
            AgeReplacement.Optimum best =
                    new AgeReplacement(weibull(c.data("shape")[i], c.data("scale")[i]), 1, 5).optimum();
            assertThat(best.finite()).isFalse();
            near(best.costRate(), c.expected("run_to_failure_cost")[i], 1e-12);
        }
    }

    @Test
    void uniformLifeHasItsClosedForm() {
        ReferenceCase c = reference("age-uniform");
        AgeingLaw uniform = new AgeingLaw() {
            @Override
            public double survival(double age) {
                return 1 - age;
            }

            @Override
            public double hazard(double age) {
                return 1 / (1 - age);
            }

            @Override
            public double lastAge() {
                return 1;
            }
        };
        for (int i = 0; i < c.data("r").length; i++) {
            AgeReplacement.Optimum best = new AgeReplacement(uniform, 1, c.data("cf")[i]).optimum();
            // The file rounds cf to 15 digits, which moves the root by about as much.
            near(best.age(), c.expected("T")[i], 1e-11);
            near(best.costRate(), c.expected("cost")[i], 1e-12);
        }
    }

    @Test
    void erlangLifeHasItsClosedForm() {
        ReferenceCase c = reference("age-erlang2");
        AgeingLaw erlang = new AgeingLaw() {
            @Override
            public double survival(double age) {
                return (1 + age) * Math.exp(-age);
            }

            @Override
            public double hazard(double age) {
                return age / (1 + age);
            }

            @Override
            public double lastAge() {
                return 44;
            }
        };
        for (int i = 0; i < c.data("rho").length; i++) {
            AgeReplacement.Optimum best = new AgeReplacement(erlang, 1, c.data("cf")[i]).optimum();
            near(best.age(), c.expected("T")[i], 1e-10);
            near(best.costRate(), c.expected("cost")[i], 1e-10);
        }
        // rho = cp/(cf - cp) = 1: no finite optimum.
        assertThat(new AgeReplacement(erlang, 1, 2).optimum().finite()).isFalse();
    }

    @Test
    void neverWhenFailureCostsNoMore() {
        assertThat(new AgeReplacement(weibull(3, 1000), 5, 5).optimum().finite())
                .isFalse();
    }

    @Test
    void refusesCostsOfNothing() {
        assertThatThrownBy(() -> new AgeReplacement(weibull(3, 1000), 0, 5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("planned replacement 0.0")
                .hasMessageContaining("over 0");
    }

    @Test
    void quadratureIsExactForPolynomialsOfDegree31AndForAnEndPointRoot() {
        // integral of x^31 over 0..2 = 2^32/32; of sqrt(x) over 0..1 = 2/3.
        assertThat(Quadrature.panel(x -> Math.pow(x, 31), 0, 2)).isCloseTo(0x1p27, within(0x1p27 * 1e-13));
        assertThat(Quadrature.integral(Math::sqrt, 0, 1)).isCloseTo(2.0 / 3, within(1e-14));
        assertThat(Quadrature.integral(Math::sqrt, 1, 1)).isZero();
    }

    private static void near(double actual, double expected, double relative) {
        assertThat(actual).isCloseTo(expected, within(relative * Math.abs(expected)));
    }
}
