package sensorrounds.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import sensorrounds.survival.KaplanMeier.Band;
import sensorrounds.survival.ReferenceCases.Case;

/** Every Kaplan-Meier reference case at its stated tolerance; sources stand with the cases. */
class KaplanMeierReferenceTest {
    static Stream<Case> cases() {
        return ReferenceCases.of("kaplan-meier.json").stream();
    }

    @ParameterizedTest
    @MethodSource("cases")
    void agreesWithTheReference(Case reference) {
        int checked = 0;
        for (String group : List.of("group", "celltype")) {
            if (reference.has(group)) {
                for (Map.Entry<String, JsonNode> one : reference.expected().properties()) {
                    checked += check(reference, sample(reference, reference.rows(group, one.getKey())), one.getValue());
                }
            }
        }
        if (checked == 0) {
            checked = check(reference, sample(reference, reference.rows("", "")), reference.expected());
        }
        assertThat(checked).as("%s: figures compared", reference.id()).isPositive();
    }

    private static LifetimeSample sample(Case reference, int[] rows) {
        double[] weight = reference.has("weight")
                ? ReferenceCases.pick(reference.column("weight", Double.NaN), rows)
                : ReferenceCases.filled(rows.length, 1);
        return ReferenceCases.rightCensored(
                ReferenceCases.filled(rows.length, 0),
                ReferenceCases.pick(reference.column("time", Double.NaN), rows),
                ReferenceCases.pick(reference.column("status", Double.NaN), rows),
                weight);
    }

    private static int check(Case reference, LifetimeSample sample, JsonNode expected) {
        int checked = 0;
        KaplanMeierFit fit = KaplanMeier.withDefaults().with(Band.LOG_LOG).fit(sample);
        for (Map.Entry<String, JsonNode> entry : expected.properties()) {
            String name = entry.getKey();
            JsonNode value = entry.getValue();
            checked++;
            switch (name) {
                case "table" -> checkTable(reference, sample, value);
                case "S100" -> checkAt(reference, sample, 100, value);
                case "at" -> {
                    for (int i = 0; i < expected.get("at_times").size(); i++) {
                        checkAt(
                                reference,
                                sample,
                                expected.get("at_times").get(i).doubleValue(),
                                row(value, i));
                    }
                }
                case "median", "median_midpoint" ->
                    reference.check(name, fit.median().value(), value);
                case "q25" -> reference.check(name, fit.quantile(0.25).value(), value);
                case "median_ci_loglog" -> checkLimits(reference, name, fit.median(), value);
                case "median_ci_log" ->
                    checkLimits(
                            reference,
                            name,
                            KaplanMeier.withDefaults()
                                    .with(Band.LOG)
                                    .fit(sample)
                                    .median(),
                            value);
                case "se_rmst_365" -> reference.check("rmst error", fit.restrictedMeanError(365), value);
                case "survival_exact_fractions" -> {
                    for (int i = 0; i < value.size(); i++) {
                        assertThat(fit.steps().get(i).survival())
                                .isCloseTo(product(value.get(i).asText()), within(1e-15));
                    }
                }
                case "n", "total_hours" ->
                    reference.check(name, name.equals("n") ? sample.lives() : sample.exposure(), value);
                case "events", "failures" -> reference.check(name, sample.failures(), value);
                default -> {
                    if (name.startsWith("rmst_")) {
                        reference.check(name, fit.restrictedMean(Double.parseDouble(name.substring(5))), value);
                    } else {
                        checked--;
                    }
                }
            }
        }
        return checked;
    }

    /** A product of fractions, written as 18/20*16/17. */
    private static double product(String fractions) {
        double product = 1;
        for (String fraction : fractions.split("\\*")) {
            String[] parts = fraction.split("/");
            product *= Double.parseDouble(parts[0]) / Double.parseDouble(parts[1]);
        }
        return product;
    }

    private static void checkTable(Case reference, LifetimeSample sample, JsonNode table) {
        KaplanMeierFit fit = KaplanMeier.withDefaults().fit(sample);
        assertThat(fit.steps()).as("%s: ages with failures", reference.id()).hasSameSizeAs(table.get("time"));
        for (int i = 0; i < fit.steps().size(); i++) {
            KaplanMeierFit.Step step = fit.steps().get(i);
            reference.check("age", step.age(), table.get("time").get(i));
            reference.check("at risk", step.atRisk(), table.get("n_risk").get(i));
            reference.check("failures", step.failures(), table.get("n_event").get(i));
            reference.check("censored", step.censored(), table.get("n_censor").get(i));
            reference.check(
                    "na error",
                    step.cumulativeHazardError(),
                    table.get("se_cumhaz_na").get(i));
            checkAt(reference, sample, step.age(), row(table, i));
        }
    }

    private static void checkAt(Case reference, LifetimeSample sample, double age, JsonNode row) {
        for (Band band : List.of(Band.LOG_LOG, Band.LOG, Band.PLAIN)) {
            KaplanMeierFit fit = KaplanMeier.withDefaults().with(band).fit(sample);
            String suffix = band.name().toLowerCase(Locale.ROOT).replace("_", "");
            reference.check("S", fit.survival().at(age), row.get("surv"));
            reference.check("greenwood", fit.standardError().at(age), row.get("se_greenwood"));
            reference.check("H", fit.cumulativeHazard().at(age), row.get("cumhaz_na"));
            if (row.get("surv").doubleValue() == 0) {
                // Undefined here; the reference prints 0 for the lower log limit, from 0 * exp(-infinity).
                assertThat(fit.lower().at(age))
                        .as("%s: lower at S = 0", reference.id())
                        .isNaN();
                assertThat(fit.upper().at(age))
                        .as("%s: upper at S = 0", reference.id())
                        .isNaN();
                continue;
            }
            reference.check("lower " + suffix, fit.lower().at(age), row.get("lower_" + suffix));
            reference.check("upper " + suffix, fit.upper().at(age), row.get("upper_" + suffix));
        }
    }

    private static JsonNode row(JsonNode table, int index) {
        ObjectNode row = JsonNodeFactory.instance.objectNode();
        table.properties()
                .forEach(column -> row.set(column.getKey(), column.getValue().get(index)));
        return row;
    }

    private static void checkLimits(Case reference, String name, Estimate actual, JsonNode expected) {
        boolean named = expected.isObject();
        reference.check(name + " lower", actual.lower(), named ? expected.get("lower") : expected.get(0));
        // R prints NA for a limit that is open.
        double upper = actual.upper() == Double.POSITIVE_INFINITY ? Double.NaN : actual.upper();
        reference.check(name + " upper", upper, named ? expected.get("upper") : expected.get(1));
    }
}
