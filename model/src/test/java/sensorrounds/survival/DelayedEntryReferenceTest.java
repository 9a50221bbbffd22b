package sensorrounds.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import sensorrounds.survival.ReferenceCases.Case;

/** Delayed-entry reference cases at their stated tolerance; sources stand with the cases. */
class DelayedEntryReferenceTest {
    private static Case reference(String id) {
        return ReferenceCases.of("delayed-entry.json").stream()
                .filter(c -> c.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private static LifetimeSample sample(Case reference, List<String> columns, int[] rows) {
        return ReferenceCases.rightCensored(
                ReferenceCases.pick(reference.column(columns.get(0), Double.NaN), rows),
                ReferenceCases.pick(reference.column(columns.get(1), Double.NaN), rows),
                ReferenceCases.pick(reference.column(columns.get(2), Double.NaN), rows),
                ReferenceCases.filled(rows.length, 1));
    }

    /** Therneau and Grambsch (2000), Modeling Survival Data, appendix E, data set 2: exact fractions. */
    @Test
    void tenIntervalsSolvedByHand() {
        Case reference = reference("lt-handworked");
        KaplanMeierFit fit = KaplanMeier.withDefaults()
                .with(KaplanMeier.Band.LOG_LOG)
                .fit(sample(reference, List.of("start", "stop", "event"), reference.rows("", "")));
        JsonNode table = reference.expected().get("table");
        assertThat(fit.steps()).hasSameSizeAs(table.get("time"));
        double[] byHand = {1 / 2.0, 1 / 3.0, 4 / 15.0, 1 / 5.0, 3 / 20.0, 9 / 100.0};
        for (int i = 0; i < fit.steps().size(); i++) {
            KaplanMeierFit.Step step = fit.steps().get(i);
            reference.check("age", step.age(), table.get("time").get(i));
            reference.check("at risk", step.atRisk(), table.get("n_risk").get(i));
            reference.check("S", step.survival(), table.get("surv").get(i));
            assertThat(step.survival()).isCloseTo(byHand[i], offset(1e-15));
            String[] exact =
                    reference.expected().get("survival_exact").get(i).asText().split("/");
            assertThat(step.survival())
                    .isCloseTo(Double.parseDouble(exact[0]) / Double.parseDouble(exact[1]), offset(1e-15));
            reference.check("failures", step.failures(), table.get("n_event").get(i));
            reference.check("censored", step.censored(), table.get("n_censor").get(i));
            reference.check(
                    "greenwood", step.standardError(), table.get("se_greenwood").get(i));
            reference.check("lower", step.lower(), table.get("lower_loglog").get(i));
            reference.check("upper", step.upper(), table.get("upper_loglog").get(i));
            reference.check("H", step.cumulativeHazard(), table.get("cumhaz_na").get(i));
            reference.check(
                    "H error",
                    step.cumulativeHazardError(),
                    table.get("se_cumhaz_na").get(i));
        }
        for (KaplanMeier.Band band : List.of(KaplanMeier.Band.PLAIN, KaplanMeier.Band.LOG)) {
            String suffix = band.name().toLowerCase(Locale.ROOT);
            KaplanMeierFit other = KaplanMeier.withDefaults()
                    .with(band)
                    .fit(sample(reference, List.of("start", "stop", "event"), reference.rows("", "")));
            for (int i = 0; i < other.steps().size(); i++) {
                reference.check(
                        "lower " + suffix,
                        other.steps().get(i).lower(),
                        table.get("lower_" + suffix).get(i));
                reference.check(
                        "upper " + suffix,
                        other.steps().get(i).upper(),
                        table.get("upper_" + suffix).get(i));
            }
        }
    }

    @Test
    void channingHouseBySexAndConditionalOnAge() {
        Case reference = reference("lt-channing");
        int blocks = 0;
        for (Map.Entry<String, JsonNode> block : reference.expected().properties()) {
            String[] key = block.getKey().split("_given_");
            JsonNode expected = block.getValue();
            LifetimeSample sample = sample(reference, List.of("entry", "exit", "death"), reference.rows("sex", key[0]));
            KaplanMeierFit fit = KaplanMeier.withDefaults()
                    .with(KaplanMeier.Band.LOG_LOG)
                    .givenAliveAt(Double.parseDouble(key[1]))
                    .fit(sample);
            reference.check("ages", fit.steps().size(), expected.get("n_event_times"));
            for (int i = 0; i < expected.get("first_times").size(); i++) {
                reference.check(
                        "age",
                        fit.steps().get(i).age(),
                        expected.get("first_times").get(i));
                reference.check(
                        "at risk",
                        fit.steps().get(i).atRisk(),
                        expected.get("first_n_risk").get(i));
                reference.check(
                        "S",
                        fit.steps().get(i).survival(),
                        expected.get("first_surv").get(i));
            }
            for (int i = 0; i < expected.get("at_age_months").size(); i++) {
                double age = expected.get("at_age_months").get(i).doubleValue();
                reference.check(
                        "S", fit.survival().at(age), expected.get("surv").get(i));
                reference.check(
                        "greenwood",
                        fit.standardError().at(age),
                        expected.get("se").get(i));
                // Before the first failure R's limit is 1, from a variance of 0; ours is that of none failed among few.
                if (fit.survival().at(age) < 1) {
                    reference.check(
                            "lower",
                            fit.lower().at(age),
                            expected.get("lower_loglog").get(i));
                } else {
                    assertThat(fit.lower().at(age)).isStrictlyBetween(0.0, 1.0);
                }
                reference.check(
                        "upper",
                        fit.upper().at(age),
                        expected.get("upper_loglog").get(i));
                reference.check(
                        "H",
                        fit.cumulativeHazard().at(age),
                        expected.get("cumhaz").get(i));
            }
            reference.check("median", fit.median().value(), expected.get("median"));
            blocks++;
        }
        assertThat(blocks).isEqualTo(6);
    }

    @Test
    void aRiskSetThatEmptiesLeavesZeroAndIsReported() {
        Case reference = reference("lt-empty-riskset");
        LifetimeSample sample = sample(reference, List.of("entry", "exit", "death"), reference.rows("", ""));
        KaplanMeierFit fit = KaplanMeier.withDefaults().fit(sample);
        JsonNode expected = reference.expected();
        for (int i = 0; i < expected.get("time").size(); i++) {
            double age = expected.get("time").get(i).doubleValue();
            reference.check("S", fit.survival().at(age), expected.get("surv").get(i));
            reference.check(
                    "H",
                    fit.cumulativeHazard().at(age),
                    expected.get("cumhaz_na").get(i));
            reference.check(
                    "at risk", fit.riskSet().at(age), expected.get("n_risk").get(i));
        }
        assertThat(fit.collapsedAt()).hasValue(3);
        assertThat(fit.unobserved()).containsExactly(new Span(3, 5));
        // By hand: one of three fails at 7, the last one at 9.
        KaplanMeierFit given = KaplanMeier.withDefaults().givenAliveAt(3).fit(sample);
        assertThat(given.survival().at(7)).isEqualTo(2 / 3.0);
        assertThat(given.survival().at(9)).isZero();
        assertThat(given.collapsedAt()).isEmpty();
    }

    @Test
    void whoEntersAtAnAgeIsNotAtRiskThere() {
        Case reference = reference("lt-entry-tie");
        KaplanMeierFit fit = KaplanMeier.withDefaults()
                .fit(sample(reference, List.of("entry", "exit", "death"), reference.rows("", "")));
        JsonNode expected = reference.expected();
        for (int i = 0; i < expected.get("time").size(); i++) {
            double age = expected.get("time").get(i).doubleValue();
            reference.check("S", fit.survival().at(age), expected.get("surv").get(i));
            reference.check(
                    "at risk", fit.riskSet().at(age), expected.get("n_risk").get(i));
        }
        // The number at risk rises from 2 to 3: delayed entry does that.
        assertThat(fit.riskSet().at(5)).isGreaterThan(fit.riskSet().at(4));
    }
}
