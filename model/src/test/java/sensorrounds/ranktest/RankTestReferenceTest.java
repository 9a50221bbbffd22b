package sensorrounds.ranktest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sensorrounds.reference.ReferenceCase;
import sensorrounds.survival.LifetimeSample;

/** Every log-rank and interval score reference case at its stated tolerance; sources stand with the cases. */
class RankTestReferenceTest {
    private static final Map<String, RankWeight> WEIGHTS = Map.of(
            "logrank", RankWeight.LOG_RANK,
            "gehan", RankWeight.GEHAN,
            "tarone_ware", RankWeight.TARONE_WARE,
            "peto_peto", RankWeight.PETO_PETO);
    private static final Map<String, IntervalScores> SCORES = Map.of(
            "sun", IntervalScores.SUN,
            "finkelstein", IntervalScores.FINKELSTEIN,
            "wmw", IntervalScores.WILCOXON);

    private static ReferenceCase reference(String id) {
        return ReferenceCase.load("ranktest/log-rank.json", id);
    }

    private static JsonNode data(ReferenceCase reference) {
        return reference.node().at("/data/inline");
    }

    /** The groups in the order of their names, one sample per stratum; an empty column name stands for no strata. */
    private static List<Group> groups(ReferenceCase reference, JsonNode names, String group, String stratum) {
        JsonNode data = data(reference);
        Set<String> strata = new LinkedHashSet<>();
        int n = data.get(group).size();
        for (int i = 0; i < n; i++) {
            strata.add(stratum.isEmpty() ? "" : data.get(stratum).get(i).asText());
        }
        List<Group> groups = new ArrayList<>();
        for (JsonNode name : names) {
            List<LifetimeSample> samples = new ArrayList<>();
            for (String s : strata) {
                List<Integer> rows = new ArrayList<>();
                for (int i = 0; i < n; i++) {
                    boolean here = stratum.isEmpty()
                            || data.get(stratum).get(i).asText().equals(s);
                    if (here && data.get(group).get(i).asText().equals(name.asText())) {
                        rows.add(i);
                    }
                }
                samples.add(sample(data, rows));
            }
            groups.add(new Group(name.asText(), samples));
        }
        return groups;
    }

    private static LifetimeSample sample(JsonNode data, List<Integer> rows) {
        int n = rows.size();
        double[] entry = new double[n];
        double[] lower = new double[n];
        double[] upper = new double[n];
        double[] weight = new double[n];
        for (int i = 0; i < n; i++) {
            int row = rows.get(i);
            weight[i] = 1;
            if (data.has("left")) {
                lower[i] = data.get("left").get(row).doubleValue();
                JsonNode right = data.get("right").get(row);
                upper[i] = right.isNull() ? Double.POSITIVE_INFINITY : right.doubleValue();
            } else {
                boolean delayed = data.has("entry");
                entry[i] = delayed ? data.get("entry").get(row).doubleValue() : 0;
                lower[i] = data.get(delayed ? "exit" : "time").get(row).doubleValue();
                boolean failed = data.get(delayed ? "death" : "status").get(row).intValue() == 1;
                upper[i] = failed ? lower[i] : Double.POSITIVE_INFINITY;
            }
        }
        return LifetimeSample.of(entry, lower, upper, weight);
    }

    private static void check(ReferenceCase reference, String quantity, double ours, double expected) {
        JsonNode tolerance = reference.node().get("tolerance");
        double slack = tolerance.get("abs").doubleValue() + tolerance.get("rel").doubleValue() * Math.abs(expected);
        assertThat(ours).as("%s: %s", reference.node().get("id"), quantity).isCloseTo(expected, within(slack));
    }

    private static void checkRows(ReferenceCase reference, ComparisonResult ours, JsonNode expected) {
        check(reference, "chi-square", ours.chiSquare(), expected.get("chisq").doubleValue());
        check(reference, "df", ours.degreesOfFreedom(), expected.get("df").doubleValue());
        check(reference, "p", ours.pValue(), expected.get("p").doubleValue());
        check(reference, "trend", ours.trendZ(), expected.get("trend_z").doubleValue());
        if (expected.has("trend_chisq")) {
            check(
                    reference,
                    "trend chi-square",
                    ours.trendZ() * ours.trendZ(),
                    expected.get("trend_chisq").doubleValue());
        }
        if (expected.has("z_group2")) {
            check(
                    reference,
                    "z of the second group",
                    ours.rows().get(1).score() / Math.sqrt(ours.variance()[1][1]),
                    expected.get("z_group2").doubleValue());
        }
        for (int j = 0; j < ours.rows().size(); j++) {
            ComparisonResult.Row row = ours.rows().get(j);
            check(reference, "lives", row.lives(), expected.get("n").get(j).doubleValue());
            if (expected.has("observed")) {
                check(
                        reference,
                        "observed",
                        row.observed(),
                        expected.get("observed").get(j).doubleValue());
                check(
                        reference,
                        "expected",
                        row.expected(),
                        expected.get("expected").get(j).doubleValue());
                for (int l = 0; l < ours.rows().size(); l++) {
                    check(
                            reference,
                            "variance",
                            ours.variance()[j][l],
                            expected.get("var").get(j).get(l).doubleValue());
                }
            } else {
                check(reference, "score", row.score(), expected.get("U").get(j).doubleValue());
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"lr-6mp, group", "lr-bnct, trt", "lr-tongue, type", "lr-larynx, stage", "lr-veteran, celltype"})
    void everyWeight(String id, String column) {
        ReferenceCase reference = reference(id);
        JsonNode expected = reference.node().get("expected");
        for (Map.Entry<String, RankWeight> weight : WEIGHTS.entrySet()) {
            JsonNode one = expected.get(weight.getKey());
            ComparisonResult ours = LogRank.withDefaults()
                    .with(weight.getValue())
                    .test(groups(reference, one.get("groups"), column, ""));
            checkRows(reference, ours, one);
        }
        if (expected.has("survdiff_rho1_chisq")) {
            ComparisonResult ours = LogRank.withDefaults()
                    .with(RankWeight.flemingHarrington(1, 0))
                    .test(groups(reference, expected.at("/logrank/groups"), column, ""));
            check(
                    reference,
                    "rho 1",
                    ours.chiSquare(),
                    expected.get("survdiff_rho1_chisq").doubleValue());
        }
    }

    @ParameterizedTest
    @CsvSource({
        "lr-strat-lung, pat_karno, inst, ''",
        "lr-strat-kidney, sex, disease, /sex_strat_disease",
        "lr-strat-kidney, disease, '', /disease",
        "lr-strat-kidney, sex, '', /sex",
        "lr-veteran, trt, celltype, /trt_strat_celltype",
        "lr-lt-channing, sex, '', ''"
    })
    void strataAndDelayedEntry(String id, String group, String stratum, String path) {
        ReferenceCase reference = reference(id);
        JsonNode expected = reference.node().at("/expected" + path);
        checkRows(
                reference,
                LogRank.withDefaults().test(groups(reference, expected.get("groups"), group, stratum)),
                expected);
    }

    @ParameterizedTest
    @CsvSource({"lr-ic-bcos, chemo", "lr-ic-3group, grp"})
    void intervalScores(String id, String column) {
        ReferenceCase reference = reference(id);
        for (Map.Entry<String, IntervalScores> scores : SCORES.entrySet()) {
            JsonNode expected = reference.node().at("/expected/" + scores.getKey());
            Set<String> names = new java.util.TreeSet<>();
            data(reference).get(column).forEach(value -> names.add(value.asText()));
            JsonNode order = new com.fasterxml.jackson.databind.ObjectMapper().valueToTree(names);
            checkRows(
                    reference,
                    IntervalScoreTest.withDefaults().with(scores.getValue()).test(groups(reference, order, column, "")),
                    expected);
        }
    }

    /**
     * Fay and Shaw (2010), J. Stat. Software 36(2): the score form of the test on the same data gives chi-square 7.8749,
     * p .005012; the permutation form does not.
     */
    @Test
    void hazardScoresReproduceThePrintedScoreForm() {
        ReferenceCase reference = reference("lr-ic-bcos");
        JsonNode order = new com.fasterxml.jackson.databind.ObjectMapper().valueToTree(List.of("0", "1"));
        List<Group> groups = groups(reference, order, "chemo", "");
        ComparisonResult ours = HazardScoreTest.withDefaults().test(groups);
        assertThat(ours.chiSquare()).isCloseTo(7.8749, within(5e-5));
        assertThat(ours.pValue()).isCloseTo(.005012, within(5e-7));
        ComparisonResult permutation = IntervalScoreTest.withDefaults()
                .with(IntervalScores.FINKELSTEIN)
                .test(groups);
        assertThat(ours.rows().get(1).score())
                .isCloseTo(permutation.rows().get(1).score(), within(1e-8));
    }
}
