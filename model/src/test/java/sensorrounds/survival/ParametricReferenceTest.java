package sensorrounds.survival;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import sensorrounds.survival.ReferenceCases.Case;

/**
 * Every parametric reference case at its stated tolerance: coefficients 1e-6, standard errors 1e-5, log-likelihood 1e-9;
 * sources stand with the cases.
 */
class ParametricReferenceTest {
    static Stream<Case> cases() {
        return ReferenceCases.of("parametric.json").stream();
    }

    @ParameterizedTest
    @MethodSource("cases")
    void agreesWithTheReference(Case reference) {
        int fits = 0;
        if (reference.expected().has("dist")) {
            check(reference, fit(reference, "dist", reference.expected()), reference.expected());
            fits++;
        }
        for (Map.Entry<String, JsonNode> entry : reference.expected().properties()) {
            if (entry.getValue().isObject()) {
                check(reference, fit(reference, entry.getKey(), entry.getValue()), entry.getValue());
                fits++;
            }
        }
        checkDerived(reference);
        assertThat(fits + (reference.expected().has("B10") ? 1 : 0)).isPositive();
    }

    private static ParametricFit fit(Case reference, String key, JsonNode expected) {
        Family family = Family.valueOf(expected.get("dist").asText().toUpperCase(Locale.ROOT));
        return ParametricFitter.of(family).fit(sample(reference, key));
    }

    /** The columns differ by case: left and right, exit and death, time and status, inspections. */
    private static LifetimeSample sample(Case reference, String key) {
        int n = reference.rows("", "").length;
        double[] weight = reference.has("n") ? reference.column("n", Double.NaN) : ReferenceCases.filled(n, 1);
        double[] entry = reference.has("entry") && !key.contains("ignoring")
                ? reference.column("entry", Double.NaN)
                : ReferenceCases.filled(n, 0);
        if (reference.has("left")) {
            return LifetimeSample.of(
                    entry, reference.column("left", 0), reference.column("right", Double.POSITIVE_INFINITY), weight);
        }
        if (reference.has("inspected")) {
            return inspectedOnce(reference);
        }
        if (reference.has("exit")) {
            return ReferenceCases.rightCensored(
                    entry, reference.column("exit", Double.NaN), reference.column("death", Double.NaN), weight);
        }
        double[] time = Stream.of("time", "km", "kmiles")
                .filter(reference::has)
                .findFirst()
                .map(name -> reference.column(name, Double.NaN))
                .orElseThrow();
        double[] status = reference.column("status", Double.NaN);
        if (key.startsWith("mode")) {
            double mode = Double.parseDouble(key.substring(4, 5));
            double[] modes = reference.column("mode", Double.NaN);
            for (int i = 0; i < n; i++) {
                status[i] = modes[i] == mode ? 1 : 0;
            }
        }
        return ReferenceCases.rightCensored(entry, time, status, weight);
    }

    private static LifetimeSample inspectedOnce(Case reference) {
        double[] hours = reference.column("hours", Double.NaN);
        double[] inspected = reference.column("inspected", Double.NaN);
        double[] failed = reference.column("failed", Double.NaN);
        List<LifetimeSample> parts = new ArrayList<>();
        for (int i = 0; i < hours.length; i++) {
            double[] zero = {0};
            if (failed[i] > 0) {
                parts.add(LifetimeSample.of(zero, zero, new double[] {hours[i]}, new double[] {failed[i]}));
            }
            if (inspected[i] > failed[i]) {
                parts.add(LifetimeSample.of(
                        zero, new double[] {hours[i]}, new double[] {Double.POSITIVE_INFINITY}, new double[] {
                            inspected[i] - failed[i]
                        }));
            }
        }
        return LifetimeSample.pooled(parts);
    }

    private static void check(Case reference, ParametricFit fit, JsonNode expected) {
        String name = expected.get("dist").asText() + " ";
        assertThat(fit.converged())
                .as("%s %s: %s", reference.id(), name, fit.cause())
                .isTrue();
        assertThat(fit.gradientNorm()).isLessThan(1e-8);
        reference.check(
                name + "log scale",
                Math.log(fit.scale().value()),
                expected.get("coef").get(0));
        reference.check(
                "se log scale", Math.sqrt(fit.varLogScale()), expected.get("se").get(0));
        reference.check("loglik", fit.logLikelihood(), expected.get("loglik"));
        int parameters = expected.get("coef").size();
        reference.check("loglik as AIC", 2 * parameters - 2 * fit.logLikelihood(), expected.get("AIC"));
        reference.check("lives", fit.report().lives(), expected.get("n"));
        reference.check("se^2", fit.varLogScale(), expected.get("vcov").get(0).get(0));
        if (expected.get("coef").size() > 1) {
            reference.check(
                    name + "log sigma",
                    -Math.log(fit.shape().value()),
                    expected.get("coef").get(1));
            reference.check(
                    "se log sigma",
                    Math.sqrt(fit.varLogShape()),
                    expected.get("se").get(1));
            reference.check(
                    "se^2 covariance",
                    -fit.covLogs(),
                    expected.get("vcov").get(0).get(1));
            reference.check(
                    "se^2 log sigma",
                    fit.varLogShape(),
                    expected.get("vcov").get(1).get(1));
            double sigma = 1 / fit.shape().value();
            reference.check("sigma", sigma, expected.get("scale"));
            reference.check("se sigma", sigma * Math.sqrt(fit.varLogShape()), expected.get("se_scale"));
        }
        if (expected.has("weibull_shape")) {
            WeibullLife life = fit.life();
            reference.check("shape", life.shape(), expected.get("weibull_shape"));
            reference.check("scale", life.scaleDays(), expected.get("weibull_scale"));
            reference.check("se shape", life.shape() * Math.sqrt(life.varLogShape()), expected.get("se_shape"));
            reference.check(
                    "se scale", life.scaleDays() * Math.sqrt(life.varLogScale()), expected.get("se_weibull_scale"));
        }
    }

    private static void checkDerived(Case reference) {
        JsonNode expected = reference.expected();
        if (expected.has("weibull_mean")) {
            ParametricFit fit = ParametricFitter.of(Family.WEIBULL).fit(sample(reference, "weibull"));
            reference.check("mean", fit.life().mean(), expected.get("weibull_mean"));
            // Square of the mean life plus its variance: twice the integral of t S(t), of the law of T squared.
            WeibullLife squared =
                    new WeibullLife(fit.life().shape() / 2, Math.pow(fit.life().scaleDays(), 2), 0, 0, 0);
            reference.check(
                    "sd", Math.sqrt(squared.mean() - Math.pow(fit.life().mean(), 2)), expected.get("weibull_sd"));
        }
        if (expected.has("exponential_theta")) {
            ParametricFit fit = ParametricFitter.of(Family.EXPONENTIAL).fit(sample(reference, "exponential"));
            reference.check("theta", fit.scale().value(), expected.get("exponential_theta"));
            reference.check(
                    "se theta",
                    fit.scale().value() * Math.sqrt(fit.varLogScale()),
                    expected.get("exponential_se_theta"));
        }
        if (expected.has("exponential_rate")) {
            ParametricFit fit = ParametricFitter.of(Family.EXPONENTIAL).fit(sample(reference, "exponential"));
            reference.check("rate", 1 / fit.scale().value(), expected.get("exponential_rate"));
            reference.check(
                    "se rate", Math.sqrt(fit.varLogScale()) / fit.scale().value(), expected.get("exponential_se_rate"));
        }
        if (expected.has("B10")) {
            ParametricFit fit = ParametricFitter.of(Family.WEIBULL).fit(sample(reference, "weibull"));
            Estimate b10 = fit.quantile(0.1);
            reference.check("shape", fit.shape().value(), expected.get("shape"));
            reference.check(
                    "shape lower",
                    fit.shape().lower(),
                    expected.get("shape_wald_log").get(0));
            reference.check(
                    "shape upper",
                    fit.shape().upper(),
                    expected.get("shape_wald_log").get(1));
            reference.check("B10", b10.value(), expected.get("B10"));
            reference.check(
                    "B10 lower", b10.lower(), expected.get("B10_delta_log").get(0));
            reference.check(
                    "B10 upper", b10.upper(), expected.get("B10_delta_log").get(1));
            reference.check(
                    "se log B10",
                    Math.log(b10.upper() / b10.lower()) / (2 * 1.959963984540054),
                    expected.get("se_log_B10"));
        }
        if (expected.has("F80")) {
            ParametricFit fit = ParametricFitter.of(Family.LOGNORMAL).fit(sample(reference, "dist"));
            reference.check("F80", 1 - fit.survival(80).value(), expected.get("F80"));
            reference.check("mu", Math.log10(fit.scale().value()), expected.get("mu_base10"));
            reference.check("sigma", 1 / fit.shape().value() / Math.log(10), expected.get("sigma_base10"));
        }
    }

    /** NIST/SEMATECH e-Handbook 8.4.1.3 prints shape 1.7208, log-likelihood -75.135, mean 540.737. */
    @Test
    void agreesWithTheDigitsTheHandbookPrints() {
        Case reference =
                cases().filter(c -> c.id().equals("par-nist-8413")).findFirst().orElseThrow();
        ParametricFit fit = ParametricFitter.of(Family.WEIBULL).fit(sample(reference, "weibull"));
        assertThat(fit.shape().value()).isBetween(1.72075, 1.72085);
        assertThat(fit.logLikelihood()).isBetween(-75.1355, -75.1345);
        assertThat(fit.life().mean()).isBetween(540.7365, 540.7375);
    }
}
