package sensorrounds.regression;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import sensorrounds.regression.Coefficient.Part;
import sensorrounds.survival.Estimate;

/**
 * Regressions and plain fits against R (sources stand with the cases) at the tolerances the cases state: coefficients
 * 1e-6, standard errors and covariance 1e-5, log-likelihood 1e-9, limits 1e-5.
 */
class RegressionReferenceTest {
    private static final JsonNode AFT = read("regression/aft.json").get("cases");
    private static final JsonNode PLAIN = read("survival/parametric.json").get("cases");
    private static final List<String> FAMILIES = List.of("weibull", "exponential", "lognormal", "loglogistic");

    static JsonNode read(String file) {
        try (InputStream in = RegressionReferenceTest.class.getResourceAsStream("/reference/" + file)) {
            return new ObjectMapper().readTree(in);
        } catch (IOException e) {
            throw new UncheckedIOException("reference file " + file, e);
        }
    }

    static JsonNode reference(JsonNode cases, String id) {
        return StreamSupport.stream(cases.spliterator(), false)
                .filter(c -> c.get("id").asText().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private static double[] column(JsonNode reference, String name, double whenNull) {
        return StreamSupport.stream(reference.get("data").get(name).spliterator(), false)
                .mapToDouble(v -> v.isNull() ? whenNull : v.doubleValue())
                .toArray();
    }

    /** Lives of a case: left and right, or time and status, with entry and counts where given. */
    static CovariateLives lives(JsonNode reference) {
        JsonNode data = reference.get("data");
        int n = data.elements().next().size();
        double[] entry = data.has("entry") ? column(reference, "entry", Double.NaN) : new double[n];
        double[] weight = data.has("n") ? column(reference, "n", Double.NaN) : new double[n];
        if (!data.has("n")) {
            Arrays.fill(weight, 1);
        }
        if (data.has("left")) {
            double[] right = column(reference, "right", Double.POSITIVE_INFINITY);
            return CovariateLives.of(entry, column(reference, "left", 0), right, weight);
        }
        String time = Stream.of("time", "exit", "km", "kmiles")
                .filter(data::has)
                .findFirst()
                .orElseThrow();
        String failed =
                Stream.of("status", "death").filter(data::has).findFirst().orElse("");
        double[] lower = column(reference, time, Double.NaN);
        double[] upper = lower.clone();
        for (int i = 0; i < n && !failed.isEmpty(); i++) {
            upper[i] = data.get(failed).get(i).doubleValue() == 1 ? lower[i] : Double.POSITIVE_INFINITY;
        }
        return CovariateLives.of(entry, lower, upper, weight);
    }

    /** Columns by the names the reference uses: as stored, log_ of one, or a level of stage. */
    private static CovariateLives withColumns(JsonNode reference, JsonNode expected) {
        CovariateLives lives = lives(reference);
        for (JsonNode name : expected.get("names")) {
            String text = name.asText();
            if (text.startsWith("stage")) {
                double level = Double.parseDouble(text.substring(5));
                lives = lives.withColumn(text, mapped(reference, "stage", s -> s == level ? 1 : 0));
            } else if (text.startsWith("log_")) {
                lives = lives.withColumn(text, mapped(reference, text.substring(4), Math::log));
            } else if (!text.contains("(")) {
                lives = lives.withColumn(text, column(reference, text, Double.NaN));
            }
        }
        return lives;
    }

    private static double[] mapped(JsonNode reference, String name, DoubleUnaryOperator by) {
        return Arrays.stream(column(reference, name, Double.NaN)).map(by).toArray();
    }

    static void close(String what, double actual, double expected, double rel) {
        assertThat(Math.abs(actual - expected))
                .as("%s is %s, reference %s", what, actual, expected)
                .isLessThanOrEqualTo(1e-8 + rel * Math.abs(expected));
    }

    @TestFactory
    Stream<DynamicTest> regressionsAgree() {
        List<DynamicTest> tests = new ArrayList<>();
        for (JsonNode reference : AFT) {
            for (Map.Entry<String, JsonNode> e : reference.get("expected").properties()) {
                if (e.getValue().has("coef")) {
                    tests.add(test(reference, e.getKey(), e.getValue()));
                }
            }
            if (reference.get("expected").has("coef")) {
                tests.add(test(reference, "", reference.get("expected")));
            }
        }
        assertThat(tests).hasSize(4 + 1 + 3 + 2 + 4 + 2 + 1);
        return tests.stream();
    }

    private static DynamicTest test(JsonNode reference, String key, JsonNode expected) {
        String id = reference.get("id").asText() + " " + key;
        return DynamicTest.dynamicTest(id, () -> check(id, withColumns(reference, expected), expected));
    }

    private static void check(String id, CovariateLives lives, JsonNode expected) {
        LifeFamily family = LifeFamily.valueOf(expected.get("dist").asText().toUpperCase(Locale.ROOT));
        RegressionFit fit = LifeRegression.of(family).fit(lives);
        assertThat(fit.converged()).as(fit.cause()).isTrue();
        assertThat(fit.gradientNorm()).isLessThan(1e-8);
        int n = expected.get("coef").size();
        List<Coefficient> ours = fit.coefficients();
        assertThat(ours).hasSize(n);
        double[] sign = new double[n];
        for (int i = 0; i < n; i++) {
            // The reference has log sigma, which is minus log shape.
            sign[i] = ours.get(i).part() == Part.LOG_SHAPE ? -1 : 1;
            String what = id + " " + ours.get(i).name();
            close(
                    what,
                    sign[i] * ours.get(i).value(),
                    expected.get("coef").get(i).doubleValue(),
                    1e-6);
            close("se " + what, ours.get(i).error(), expected.get("se").get(i).doubleValue(), 1e-5);
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                double value = expected.get("vcov").get(i).get(j).doubleValue();
                close(id + " covariance", sign[i] * sign[j] * fit.covariance()[i][j], value, 1e-5);
            }
        }
        assertThat(fit.lives()).isEqualTo(expected.get("n").doubleValue());
        if (ours.get(n - 1).part() == Part.LOG_SHAPE) {
            double sigma = Math.exp(-ours.get(n - 1).value());
            close(id + " sigma", sigma, expected.get("scale").doubleValue(), 1e-6);
            close(
                    id + " error of sigma",
                    sigma * ours.get(n - 1).error(),
                    expected.get("se_scale").doubleValue(),
                    1e-5);
        }
        if (expected.has("weibull_shape")) {
            double shape = Math.exp(ours.get(n - 1).value());
            close(id + " shape", shape, expected.get("weibull_shape").doubleValue(), 1e-6);
            close(
                    id + " error of shape",
                    shape * ours.get(n - 1).error(),
                    expected.get("se_shape").doubleValue(),
                    1e-5);
            double scale = Math.exp(ours.get(0).value());
            close(id + " scale", scale, expected.get("weibull_scale").doubleValue(), 1e-6);
            close(
                    id + " error of scale",
                    scale * ours.get(0).error(),
                    expected.get("se_weibull_scale").doubleValue(),
                    1e-5);
        }
        close(id + " log L", fit.logLikelihood(), expected.get("loglik").doubleValue(), 1e-9);
        close(id + " AIC", fit.aic(), expected.get("AIC").doubleValue(), 1e-9);
    }

    /** Without covariates a regression is a plain fit; every plain case, the columns of which it can read. */
    @TestFactory
    Stream<DynamicTest> plainFitsAgree() {
        List<DynamicTest> tests = new ArrayList<>();
        for (JsonNode reference : PLAIN) {
            String id = reference.get("id").asText();
            if (!reference.has("data") || reference.get("data").has("inspected") || id.equals("par-nist-intervals")) {
                continue;
            }
            for (String family : FAMILIES) {
                if (reference.get("expected").has(family)) {
                    JsonNode expected = reference.get("expected").get(family);
                    tests.add(DynamicTest.dynamicTest(id + " " + family, () -> {
                        RegressionFit fit = LifeRegression.of(LifeFamily.valueOf(family.toUpperCase(Locale.ROOT)))
                                .fit(lives(reference));
                        close(
                                "log scale",
                                fit.coefficients().get(0).value(),
                                expected.at("/coef/0").doubleValue(),
                                1e-6);
                        close(
                                "log L",
                                fit.logLikelihood(),
                                expected.get("loglik").doubleValue(),
                                1e-9);
                    }));
                }
            }
        }
        assertThat(tests).hasSizeGreaterThan(20);
        return tests.stream();
    }

    /** Hahn and Nelson (1974), as worked in statistics manuals: quantiles at 130 and 150 degrees C. */
    @Test
    void quantilesOfTheMotorettes() {
        JsonNode reference = reference(AFT, "aft-imotor");
        RegressionFit fit =
                LifeRegression.of(LifeFamily.LOGNORMAL).fit(withColumns(reference, reference.get("expected")));
        for (Map.Entry<String, JsonNode> e : reference.at("/expected/quantiles").properties()) {
            double celsius = Double.parseDouble(e.getKey().substring(1, 4));
            double p = Double.parseDouble(e.getKey().substring(6));
            Estimate quantile = fit.at(1000 / (273.2 + celsius)).quantile(p);
            close(e.getKey(), quantile.value(), e.getValue().doubleValue(), 1e-6);
        }
        // Printed, from memory: intercept -10.4706, slope 8.3221, scale .6040, log L of log time -24.47381031.
        double logTimes = IntStream.range(0, 30)
                .filter(i -> column(reference, "status", 0)[i] == 1)
                .mapToDouble(i -> Math.log(column(reference, "time", 0)[i]))
                .sum();
        assertThat(fit.logLikelihood() + logTimes).isBetween(-24.473810315, -24.473810305);
        close(
                "log L of log time",
                fit.logLikelihood() + logTimes,
                reference.at("/expected/loglik_log_time_scale").doubleValue(),
                1e-9);
        assertThat(fit.coefficient(Part.LOG_SCALE, "x").value()).isBetween(8.32205, 8.32215);
    }

    /** Relapses over patient-weeks in each arm: 9/359 and 21/182 (Freireich et al. 1963), in closed form. */
    @Test
    void exponentialRegressionOnAGroupIsTwoRates() {
        JsonNode reference = reference(AFT, "aft-6mp");
        RegressionFit fit = LifeRegression.of(LifeFamily.EXPONENTIAL)
                .fit(withColumns(reference, reference.at("/expected/exponential")));
        close("6-MP", 1 / fit.at(1).scale().value(), 9 / 359.0, 1e-10);
        close("placebo", 1 / fit.at(0).scale().value(), 21 / 182.0, 1e-10);
        JsonNode rates = reference.get("expected");
        close("6-MP", 1 / fit.at(1).scale().value(), rates.get("exp_rate_6mp").doubleValue(), 1e-6);
        close(
                "placebo",
                1 / fit.at(0).scale().value(),
                rates.get("exp_rate_placebo").doubleValue(),
                1e-6);
    }

    @Test
    void hazardRatioOfTheLeftTruncatedWeibull() {
        JsonNode reference = reference(AFT, "aft-lt-channing");
        RegressionFit fit =
                LifeRegression.of(LifeFamily.WEIBULL).fit(withColumns(reference, reference.get("expected")));
        double ratio = -fit.coefficient(Part.LOG_SCALE, "male").value()
                * fit.at(0).shape().value();
        close(
                "log hazard ratio",
                ratio,
                reference.at("/expected/ph_log_hr_male").doubleValue(),
                1e-6);
    }

    @Test
    void voltagesApart() {
        JsonNode reference = reference(AFT, "aft-ifluid");
        double[] voltage = column(reference, "voltage", 0);
        CovariateLives all = lives(reference);
        for (Map.Entry<String, JsonNode> e :
                reference.at("/expected/by_voltage").properties()) {
            int[] rows = IntStream.range(0, voltage.length)
                    .filter(i -> voltage[i] == Double.parseDouble(e.getKey()))
                    .toArray();
            check("ifluid " + e.getKey(), all.rows(rows), e.getValue());
        }
    }

    /** Wald, delta and likelihood-ratio limits of shape and B10 for the NIST data. */
    @Test
    void limitsAgree() {
        CovariateLives lives = lives(reference(PLAIN, "par-nist-8413"));
        JsonNode expected = reference(PLAIN, "par-nist-intervals").get("expected");
        RegressionFit fit = LifeRegression.of(LifeFamily.WEIBULL).fit(lives);
        ProfileLimits profile = ProfileLimits.of(lives, fit);
        limits("shape Wald", fit.at().shape(), expected.get("shape_wald_log"));
        limits("B10 delta", fit.at().quantile(0.1), expected.get("B10_delta_log"));
        limits("shape profile", profile.shape(), expected.get("shape_profile"));
        limits("B10 profile", profile.quantile(0.1), expected.get("B10_profile"));
        close("B10", profile.quantile(0.1).value(), expected.get("B10").doubleValue(), 1e-6);
    }

    /** Two catheters of each of 38 patients, one of whom carries much: errors by patient, covariance and limits by t. */
    @Test
    void errorsByClusterAgreeWithTheJackknifeInR() {
        JsonNode reference = read("regression/jackknife.json");
        CovariateLives lives = lives(reference)
                .withColumn("age", column(reference, "age", 0))
                .withColumn("sex", column(reference, "sex", 0))
                .withClusters(Arrays.stream(column(reference, "id", 0))
                        .mapToInt(id -> (int) id)
                        .toArray());
        RegressionFit fit = LifeRegression.of(LifeFamily.WEIBULL)
                .with(LifeRegression.Errors.BY_CLUSTER)
                .fit(lives);
        for (int i = 0; i < 4; i++) {
            Coefficient ours = fit.coefficients().get(i);
            close(
                    ours.name(),
                    ours.value(),
                    reference.get("coefficients").get(i).doubleValue(),
                    1e-6);
            close(
                    ours.name() + " error",
                    ours.error(),
                    reference.get("errors").get(i).doubleValue(),
                    1e-5);
            // Our t quantile is that of an expansion.
            close(
                    ours.name() + " lower",
                    ours.lower(),
                    reference.get("lower").get(i).doubleValue(),
                    1e-4);
            close(
                    ours.name() + " upper",
                    ours.upper(),
                    reference.get("upper").get(i).doubleValue(),
                    1e-4);
            for (int j = 0; j < 4; j++) {
                double expected = reference.get("covariance").get(i).get(j).doubleValue();
                assertThat(fit.covariance()[i][j])
                        .isCloseTo(expected, Offset.offset(1e-5 * Math.max(Math.abs(expected), 0.01)));
            }
        }
    }

    private static void limits(String what, Estimate ours, JsonNode expected) {
        close(what + " lower", ours.lower(), expected.get(0).doubleValue(), 1e-5);
        close(what + " upper", ours.upper(), expected.get(1).doubleValue(), 1e-5);
    }
}
