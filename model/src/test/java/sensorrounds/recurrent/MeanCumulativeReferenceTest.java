package sensorrounds.recurrent;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sensorrounds.recurrent.MeanCumulative.Band;
import sensorrounds.reference.ReferenceCase;

/** Every mean cumulative function of the reference cases, at 1e-10. */
class MeanCumulativeReferenceTest {
    /** Nelson and Doganaksoy (1989); Nelson (1995), Technometrics 37:147: whole table with both kinds of limits. */
    @Test
    void valveSeats() {
        ReferenceCase reference = RecurrentCases.of("mcf-valveseat");
        List<EventHistory> engines =
                RecurrentCases.units(reference, null, "time").get("");
        assertThat(engines).hasSize(41);
        assertThat(engines.stream().filter(e -> e.count() == 0)).hasSize(17);
        JsonNode table = reference.node().at("/expected/table");
        checkTable(reference, MeanCumulative.withDefaults().fit(engines), table, "log");
        checkTable(reference, MeanCumulative.withDefaults().with(Band.PLAIN).fit(engines), table, "plain");
    }

    /** Meeker and Escobar (1998), tables 16.1-16.2 (from memory): fractions that can be done by hand. */
    @Test
    void threeSystems() {
        ReferenceCase reference = RecurrentCases.of("mcf-three-systems");
        List<EventHistory> systems = List.of(
                EventHistory.observed(0, 12, 5, 8),
                EventHistory.observed(0, 16),
                EventHistory.observed(0, 20, 1, 8, 16));
        MeanCumulativeFit fit = MeanCumulative.withDefaults().fit(systems);
        checkTable(reference, fit, reference.node().get("expected"), null);
        assertThat(fit.steps().get(3).mean()).isEqualTo(11.0 / 6);
        assertThat(Math.abs(fit.steps().get(3).variance() - 163.0 / 216)).isLessThan(1e-15);
    }

    @ParameterizedTest
    @CsvSource({"mcf-bladder1,treatment,stop,n_units,n_events", "mcf-cgd,treat,tstop,units,events"})
    void byGroup(String id, String group, String time, String unitsName, String eventsName) {
        ReferenceCase reference = RecurrentCases.of(id);
        Map<String, List<EventHistory>> groups = RecurrentCases.units(reference, group, time);
        assertThat(groups).hasSameSizeAs(reference.node().get("expected"));
        groups.forEach((name, units) -> {
            MeanCumulativeFit fit = MeanCumulative.withDefaults().fit(units);
            JsonNode expected = reference.node().get("expected").get(name);
            assertThat(fit.units()).isEqualTo(expected.get(unitsName).longValue());
            assertThat(fit.events()).isEqualTo(expected.get(eventsName).longValue());
            // The reference leaves out times before the first event, when nothing has been counted yet.
            int left = expected.get("at").size() - expected.get("mcf").size();
            for (int i = 0; i < expected.get("at").size(); i++) {
                MeanCumulativeFit.Step step = fit.at(expected.get("at").get(i).doubleValue());
                if (i < left) {
                    assertThat(step.mean()).isZero();
                } else {
                    checkStep(reference, step, expected, i - left);
                }
            }
        });
    }

    private static void checkTable(ReferenceCase reference, MeanCumulativeFit fit, JsonNode table, String limits) {
        assertThat(fit.steps()).hasSameSizeAs(table.get("time"));
        for (int i = 0; i < fit.steps().size(); i++) {
            MeanCumulativeFit.Step step = fit.steps().get(i);
            RecurrentCases.check(
                    reference, "time", step.time(), table.get("time").get(i));
            checkStep(reference, step, table, i);
            assertThat(fit.atRisk(step.time())).isEqualTo(step.atRisk());
            if (limits != null) {
                RecurrentCases.check(
                        reference,
                        "lower",
                        step.lower(),
                        table.get("lower_" + limits).get(i));
                RecurrentCases.check(
                        reference,
                        "upper",
                        step.upper(),
                        table.get("upper_" + limits).get(i));
            }
        }
    }

    private static void checkStep(ReferenceCase reference, MeanCumulativeFit.Step step, JsonNode table, int i) {
        RecurrentCases.check(
                reference, "at risk", step.atRisk(), table.get("n_risk").get(i));
        RecurrentCases.check(
                reference, "events", step.events(), table.get("n_event").get(i));
        RecurrentCases.check(reference, "mean", step.mean(), table.get("mcf").get(i));
        RecurrentCases.check(
                reference, "variance", step.variance(), table.get("var_robust").get(i));
        RecurrentCases.check(
                reference, "error", step.standardError(), table.get("se_robust").get(i));
        RecurrentCases.check(
                reference,
                "Poisson error",
                step.poissonError(),
                table.get("se_poisson").get(i));
    }

    /** The same cases through counts, whose times are whole days and months. */
    @Test
    void countsGiveTheSameAsTheHistories() {
        for (String id : List.of("mcf-valveseat", "mcf-cgd", "mcf-bladder1")) {
            ReferenceCase reference = RecurrentCases.of(id);
            String group = id.equals("mcf-cgd") ? "treat" : id.equals("mcf-bladder1") ? "treatment" : null;
            String time = id.equals("mcf-cgd") ? "tstop" : id.equals("mcf-bladder1") ? "stop" : "time";
            RecurrentCases.units(reference, group, time).values().forEach(units -> {
                List<EventHistory> watched =
                        units.stream().filter(u -> !u.windows().isEmpty()).toList();
                RecurrenceCells cells = new RecurrenceCells(1);
                watched.forEach(u -> RandomUnits.addTo(cells, u));
                RandomUnits.same(
                        MeanCumulative.withDefaults().fit(cells),
                        MeanCumulative.withDefaults().fit(new ArrayList<>(watched)));
            });
        }
    }
}
