package sensorrounds.regression;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sensorrounds.regression.Coefficient.Part;
import sensorrounds.survival.Estimate;
import sensorrounds.survival.LogLifeLaw;

/**
 * Gamma and generalised gamma laws against forty-digit values, fits against an independent likelihood at those digits
 * (gamma.py beside the reference file), and the laws within the family.
 */
class GammaFamiliesTest {
    private static final JsonNode REFERENCE = RegressionReferenceTest.read("regression/gamma.json");
    private static final JsonNode PLAIN =
            RegressionReferenceTest.read("survival/parametric.json").get("cases");
    private static final JsonNode AFT =
            RegressionReferenceTest.read("regression/aft.json").get("cases");

    private static LifeFamily family(JsonNode node) {
        return LifeFamily.valueOf(node.get("family").asText().toUpperCase(Locale.ROOT));
    }

    @Test
    void lawsAgreeFarIntoTheTails() {
        int checked = 0;
        for (JsonNode point : REFERENCE.get("laws")) {
            double q = point.get("q").doubleValue();
            double z = point.get("z").doubleValue();
            LogLifeLaw law = family(point).law(q);
            boolean interpolated = family(point) == LifeFamily.GENERALISED_GAMMA && Math.abs(q) < 0.004 && q != 0;
            if (interpolated && Math.abs(z) > 8) {
                continue;
            }
            // Relative, in logarithms (40 digits cannot hold 1 - 1e-40); interpolation in q is good to 1e-8 absolute.
            double logS = point.get("logS").doubleValue();
            double slack = interpolated ? 1e-8 + 1e-9 * Math.abs(logS) : 2e-12 * Math.abs(logS) + 1e-38;
            assertThat(law.logSurvival(z)).as(point.toString()).isCloseTo(logS, within(slack));
            double logF = point.get("logf").doubleValue();
            assertThat(law.logDensity(z)).as(point.toString()).isCloseTo(logF, within(1e-12 * (1 + Math.abs(logF))));
            checked++;
        }
        assertThat(checked).isGreaterThan(120);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1.5, -0.3, -0.003, 0, 0.002, 0.4, 1, 2})
    void densityIsWhatSurvivalLosesAndQuantilesInvert(double q) {
        for (LifeFamily family : List.of(LifeFamily.GAMMA, LifeFamily.GENERALISED_GAMMA)) {
            LogLifeLaw law = family.law(q);
            for (double p : new double[] {0.01, 0.3, 0.5, 0.9, 0.999}) {
                double z = law.quantile(p);
                assertThat(-Math.expm1(law.logSurvival(z))).isCloseTo(p, within(1e-12));
                double h = 1e-4;
                double lost = Math.exp(law.logSurvival(z - h)) - Math.exp(law.logSurvival(z + h));
                assertThat(Math.exp(law.logDensity(z))).isCloseTo(lost / (2 * h), within(1e-6));
                double slope = (law.logDensity(z + h) - law.logDensity(z - h)) / (2 * h);
                assertThat(law.logDensitySlope(z)).isCloseTo(slope, within(1e-5 * (1 + Math.abs(slope))));
                double curvature = (law.logDensitySlope(z + h) - law.logDensitySlope(z - h)) / (2 * h);
                assertThat(law.logDensityCurvature(z)).isCloseTo(curvature, within(1e-5 * (1 + Math.abs(curvature))));
            }
        }
    }

    @Test
    void theFamilyHoldsTheWeibullTheLognormalAndTheGamma() {
        LogLifeLaw weibull = LifeFamily.WEIBULL.law(0);
        LogLifeLaw normal = LifeFamily.LOGNORMAL.law(0);
        LogLifeLaw gamma = LifeFamily.GAMMA.law(Math.log(4));
        for (double z : new double[] {-4, -1, 0, 0.7, 2}) {
            assertThat(LifeFamily.GENERALISED_GAMMA.law(1).logSurvival(z))
                    .isCloseTo(weibull.logSurvival(z), within(1e-12 * (1 + Math.exp(z))));
            assertThat(LifeFamily.GENERALISED_GAMMA.law(0).logSurvival(z))
                    .isCloseTo(normal.logSurvival(z), within(1e-13));
            // q = sigma = 1/2: z = 2 (w - log 4).
            assertThat(LifeFamily.GENERALISED_GAMMA.law(0.5).logSurvival(2 * (z - Math.log(4))))
                    .isCloseTo(gamma.logSurvival(z), within(1e-12 * (1 + Math.exp(z))));
        }
    }

    @TestFactory
    Stream<DynamicTest> fitsAgree() {
        return StreamSupport.stream(REFERENCE.get("fits").spliterator(), false)
                .map(expected -> DynamicTest.dynamicTest(
                        expected.get("case").asText() + " "
                                + expected.get("family").asText(),
                        () -> check(expected)));
    }

    private static void check(JsonNode expected) {
        String id = expected.get("case").asText();
        CovariateLives lives;
        if (id.equals("aft-larynx")) {
            JsonNode reference = RegressionReferenceTest.reference(AFT, id);
            List<Double> stage = new ArrayList<>();
            List<Double> age = new ArrayList<>();
            reference.at("/data/stage").forEach(s -> stage.add(s.doubleValue() == 4 ? 1.0 : 0));
            reference.at("/data/age").forEach(a -> age.add(a.doubleValue()));
            lives = RegressionReferenceTest.lives(reference)
                    .withColumn("stage4", stage.stream().mapToDouble(s -> s).toArray())
                    .withColumn("age", age.stream().mapToDouble(a -> a).toArray());
        } else {
            lives = RegressionReferenceTest.lives(RegressionReferenceTest.reference(PLAIN, id));
        }
        RegressionFit fit = LifeRegression.of(family(expected)).fit(lives);
        assertThat(fit.converged()).as(fit.cause()).isTrue();
        for (int i = 0; i < fit.coefficients().size(); i++) {
            Coefficient ours = fit.coefficients().get(i);
            RegressionReferenceTest.close(
                    ours.toString(), ours.value(), expected.at("/coef/" + i).doubleValue(), 1e-6);
            RegressionReferenceTest.close(
                    "se " + ours, ours.error(), expected.at("/se/" + i).doubleValue(), 1e-5);
        }
        RegressionReferenceTest.close(
                "log L", fit.logLikelihood(), expected.get("loglik").doubleValue(), 1e-9);
    }

    /** Gamma, exact lives, scale at its best: sum of lives / (n alpha); log alpha - digamma(alpha) = log mean - mean log. */
    @Test
    void gammaOfExactLivesHasTheMeanOfTheLives() {
        double[] age = {2, 5, 3, 9, 4, 7};
        double[] weight = {1, 1, 2, 1, 1, 1};
        RegressionFit fit = LifeRegression.of(LifeFamily.GAMMA).fit(CovariateLives.of(new double[6], age, age, weight));
        double alpha = Math.exp(fit.coefficient(Part.LAW, Coefficient.CONSTANT).value());
        assertThat(fit.at().scale().value() * alpha).isCloseTo(33 / 7.0, within(1e-8));
    }

    @Test
    void limitsExistForTheLawAndItsFigures() {
        JsonNode reference = RegressionReferenceTest.reference(PLAIN, "par-lung-null");
        CovariateLives lives = RegressionReferenceTest.lives(reference);
        RegressionFit general = LifeRegression.of(LifeFamily.GENERALISED_GAMMA).fit(lives);
        Estimate median = general.at().quantile(0.5);
        Estimate halved = general.at().survival(median.value());
        assertThat(halved.value()).isCloseTo(0.5, within(1e-10));
        assertThat(halved.lower()).isBetween(0.4, 0.5);
        assertThat(halved.upper()).isBetween(0.5, 0.6);
        Estimate q = ProfileLimits.of(lives, general).coefficient(Part.LAW, Coefficient.CONSTANT);
        assertThat(q.lower()).isBetween(0.5, 0.9);
        assertThat(q.upper()).isBetween(1.3, 1.8);
        // Weibull is q = 1, well inside; lognormal is q = 0, outside.
        RegressionFit weibull = LifeRegression.of(LifeFamily.WEIBULL).fit(lives);
        RegressionFit lognormal = LifeRegression.of(LifeFamily.LOGNORMAL).fit(lives);
        assertThat(general.against(weibull).pValue()).isGreaterThan(0.3);
        assertThat(general.against(lognormal).pValue()).isLessThan(0.001);
        assertThat(Arrays.stream(new RegressionFit[] {general, weibull, lognormal})
                        .mapToDouble(RegressionFit::aic)
                        .min()
                        .orElseThrow())
                .isEqualTo(weibull.aic());
        assertThatThrownBy(() -> ProfileLimits.of(lives, general).quantile(0.5)).hasMessageContaining("FittedLaw");
    }
}
