package sensorrounds.cox;

import static org.assertj.core.api.Assertions.assertThat;
import static sensorrounds.reference.References.check;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import sensorrounds.cox.ProportionalityCheck.AgeScale;
import sensorrounds.reference.ReferenceCase;
import sensorrounds.reference.References;

/** Every reference case of the regression at its stated tolerance; sources stand with the cases in cox.json. */
class CoxReferenceTest {
    private static ReferenceCase load(String id) {
        return ReferenceCase.load("cox/cox.json", id);
    }

    private static String key(Ties ties) {
        return ties == Ties.EFRON ? "efron" : "breslow";
    }

    /** The sample of a case with these columns; "a:b" is a product, "a=v" an indicator. */
    static CoxSample sample(ReferenceCase reference, String entry, String exit, String failed, List<String> columns) {
        double[] exits = reference.data(exit);
        int n = exits.length;
        double[] entries = entry.isEmpty() ? new double[n] : reference.data(entry);
        double[] status = reference.data(failed);
        boolean[] events = new boolean[n];
        double[][] x = new double[n][columns.size()];
        for (int i = 0; i < n; i++) {
            events[i] = status[i] == 1;
        }
        for (int j = 0; j < columns.size(); j++) {
            double[] values = column(reference, columns.get(j), n);
            for (int i = 0; i < n; i++) {
                x[i][j] = values[i];
            }
        }
        return CoxSample.of(columns, entries, exits, events, x);
    }

    private static double[] column(ReferenceCase reference, String name, int n) {
        double[] values = new double[n];
        if (name.contains(":")) {
            Arrays.fill(values, 1);
            for (String factor : name.split(":")) {
                double[] part = column(reference, factor, n);
                Arrays.setAll(values, i -> values[i] * part[i]);
            }
            return values;
        }
        if (name.contains("=")) {
            String[] level = name.split("=");
            String[] words = References.words(reference, level[0]);
            Arrays.setAll(values, i -> words[i].equals(level[1]) ? 1 : 0);
            return values;
        }
        return reference.data(name);
    }

    private static void checkFit(ReferenceCase reference, String under, CoxFit fit) {
        String at = under.isEmpty() ? "" : under + "/";
        assertThat(fit.status()).as(fit.cause()).isEqualTo(CoxFit.Status.CONVERGED);
        check(reference, at + "coef", fit.values());
        check(
                reference,
                at + "se",
                fit.coefficients().stream()
                        .mapToDouble(CoxFit.Coefficient::standardError)
                        .toArray());
        check(reference, at + "loglik", new double[] {fit.nullLogLikelihood(), fit.logLikelihood()});
        check(reference, at + "score_test", new double[] {fit.scoreTest().statistic()});
        // With clusters the reference's Wald test is the robust one.
        boolean robust = !reference.node().at("/expected/robust_se").isMissingNode();
        check(reference, at + "wald_test", new double[] {(robust ? fit.robustWaldTest() : fit.waldTest()).statistic()});
        check(reference, at + "lr_test", new double[] {fit.likelihoodRatioTest().statistic()});
        check(reference, at + "n", new double[] {fit.sample().size()});
        check(reference, at + "n_event", new double[] {fit.sample().failures()});
    }

    private static CoxResiduals residuals(CoxSample sample, Ties ties, double coefficient) {
        RiskSweep sweep = new RiskSweep(sample);
        return CoxResiduals.of(sweep, ties, new double[] {coefficient * sweep.scale(0)});
    }

    private static void checkSingle(ReferenceCase reference, Ties ties, CoxSample sample, CoxFit fit) {
        String at = key(ties) + "/";
        checkFit(reference, key(ties), fit);
        check(reference, at + "information", new double[] {1 / fit.covariance()[0][0]});
        RiskSweep sweep = new RiskSweep(sample);
        var zero = new PartialLikelihood(sweep, ties).at(new double[1]);
        check(reference, at + "score_at_0", new double[] {zero.gradient()[0] * sweep.scale(0)});
        check(reference, at + "information_at_0", new double[] {-zero.hessian()[0][0] * sweep.scale(0) * sweep.scale(0)
        });
        check(reference, at + "martingale_at_0", residuals(sample, ties, 0).martingale());
    }

    private static double[] first(double[][] matrix) {
        return Arrays.stream(matrix).mapToDouble(row -> row[0]).toArray();
    }

    @ParameterizedTest
    @EnumSource(Ties.class)
    void sixRowsSolvedInClosedForm(Ties ties) {
        ReferenceCase reference = load("cox-test1");
        CoxSample sample = sample(reference, "", "time", "status", List.of("x"));
        CoxFit fit = CoxFitter.withDefaults().with(ties).fit(sample);
        checkSingle(reference, ties, sample, fit);
        check(reference, key(ties) + "/martingale", fit.residuals().martingale());
        check(
                reference,
                key(ties) + "/score_resid_at_0",
                first(residuals(sample, ties, 0).score()));
        List<PredictedHazard.Step> steps = fit.hazard(new double[] {0}).steps();
        check(
                reference,
                key(ties) + "/event_times",
                steps.stream().mapToDouble(PredictedHazard.Step::age).toArray());
        check(
                reference,
                key(ties) + "/cumhaz_x0",
                steps.stream()
                        .mapToDouble(PredictedHazard.Step::cumulativeHazard)
                        .toArray());
        check(
                reference,
                key(ties) + "/var_cumhaz_x0",
                steps.stream()
                        .mapToDouble(s -> s.standardError() * s.standardError())
                        .toArray());
    }

    @ParameterizedTest
    @EnumSource(Ties.class)
    void tenRowsWithDelayedEntry(Ties ties) {
        ReferenceCase reference = load("cox-test2");
        CoxSample sample = sample(reference, "start", "stop", "event", List.of("x"));
        CoxFit fit = CoxFitter.withDefaults().with(ties).fit(sample);
        checkSingle(reference, ties, sample, fit);
        check(reference, key(ties) + "/martingale", fit.residuals().martingale());
        check(
                reference,
                key(ties) + "/score_resid_at_log2",
                first(residuals(sample, ties, Math.log(2)).score()));
    }

    @ParameterizedTest
    @EnumSource(Ties.class)
    void nineWeightedRows(Ties ties) {
        ReferenceCase reference = load("cox-test3");
        CoxSample sample = sample(reference, "", "time", "status", List.of("x")).withWeights(reference.data("wt"));
        checkSingle(reference, ties, sample, CoxFitter.withDefaults().with(ties).fit(sample));
    }

    @Test
    void repeatedRowsDifferFromWeightsUnderEfron() {
        ReferenceCase reference = load("cox-test3");
        CoxSample sample = CoxFixtures.repeated(
                sample(reference, "", "time", "status", List.of("x")).withWeights(reference.data("wt")));
        checkFit(reference, "efron_replicated", CoxFitter.withDefaults().fit(sample));
    }

    @ParameterizedTest
    @EnumSource(Ties.class)
    void sixMercaptopurine(Ties ties) {
        ReferenceCase reference = load("cox-6mp");
        checkFit(
                reference,
                key(ties),
                CoxFitter.withDefaults().with(ties).fit(sample(reference, "", "time", "status", List.of("sixmp"))));
    }

    @Test
    void lungCancerWithStrataPredictionAndProportionality() {
        ReferenceCase reference = load("cox-lung");
        CoxSample sample = sample(reference, "", "time", "status", List.of("age", "sex", "ph_ecog"));
        CoxFit fit = CoxFitter.withDefaults().fit(sample);
        checkFit(reference, "efron", fit);
        checkFit(
                reference,
                "breslow",
                CoxFitter.withDefaults().with(Ties.BRESLOW).fit(sample));
        int[] sex = Arrays.stream(reference.data("sex")).mapToInt(s -> (int) s).toArray();
        checkFit(
                reference,
                "stratified_by_sex",
                CoxFitter.withDefaults()
                        .fit(sample(reference, "", "time", "status", List.of("age", "ph_ecog"))
                                .withStrata(sex)));
        checkPrediction(reference, fit.hazard(new double[] {60, 1, 1}));
        double[] at = reference.expected("predict/at");
        PredictedHazard hazard = fit.hazard(new double[] {60, 1, 1});
        check(
                reference,
                "predict/cumhaz",
                Arrays.stream(at).map(a -> hazard.at(a).cumulativeHazard()).toArray());
        ProportionalityCheck.Result km = ProportionalityCheck.withDefaults().of(fit);
        double[] statistics = statistics(km);
        check(reference, "zph_km/chisq", statistics);
        double[] p = km.columns().stream().mapToDouble(c -> c.test().pValue()).toArray();
        double[] withGlobal = Arrays.copyOf(p, p.length + 1);
        withGlobal[p.length] = km.global().pValue();
        check(reference, "zph_km/p", withGlobal);
        check(
                reference,
                "zph_identity_chisq",
                statistics(
                        ProportionalityCheck.withDefaults().with(AgeScale.AGE).of(fit)));
    }

    private static double[] statistics(ProportionalityCheck.Result result) {
        double[] all = new double[result.columns().size() + 1];
        for (int j = 0; j < result.columns().size(); j++) {
            all[j] = result.columns().get(j).test().statistic();
        }
        all[all.length - 1] = result.global().statistic();
        return all;
    }

    private static void checkPrediction(ReferenceCase reference, PredictedHazard hazard) {
        double[] at = reference.expected("predict/at");
        check(
                reference,
                "predict/surv",
                Arrays.stream(at).map(a -> hazard.survival(a).value()).toArray());
        check(
                reference,
                "predict/se_surv",
                Arrays.stream(at).map(hazard::survivalError).toArray());
    }

    @ParameterizedTest
    @ValueSource(strings = {"model1", "model2", "model3", "model4", "model5", "model6"})
    void heartTransplantWithACovariateThatChanges(String model) {
        ReferenceCase reference = load("cox-jasa1");
        List<String> columns = new ArrayList<>();
        reference.node().at("/expected/" + model + "/names").forEach(name -> columns.add(name.asText()));
        checkFit(
                reference,
                model,
                CoxFitter.withDefaults().with(Ties.BRESLOW).fit(sample(reference, "start", "stop", "event", columns)));
    }

    @Test
    void bladderRecurrencesWithErrorsByPatient() {
        ReferenceCase reference = load("cox-bladder-wlw");
        List<String> columns = new ArrayList<>(List.of("rx", "size", "number"));
        for (String main : List.of("rx", "size", "number")) {
            for (int enumeration = 2; enumeration <= 4; enumeration++) {
                columns.add(main + ":enum=" + enumeration);
            }
        }
        CoxSample sample = sample(reference, "", "stop", "event", columns)
                .withStrata(Arrays.stream(reference.data("enum"))
                        .mapToInt(e -> (int) e)
                        .toArray())
                .withClusters(Arrays.stream(reference.data("id"))
                        .mapToInt(i -> (int) i)
                        .toArray());
        CoxFit fit = CoxFitter.withDefaults().with(Ties.BRESLOW).fit(sample);
        checkFit(reference, "", fit);
        check(
                reference,
                "robust_se",
                fit.coefficients().stream()
                        .mapToDouble(CoxFit.Coefficient::robustError)
                        .toArray());
        check(reference, "robust_score", new double[] {fit.robustScoreTest().statistic()});
        int[] rx = {0, 3, 4, 5};
        double[] values = fit.values();
        for (int a = 0; a < 4; a++) {
            check(
                    reference,
                    "rx in stratum",
                    values[0] + (a == 0 ? 0 : values[rx[a]]),
                    reference.expected("rx_by_stratum")[a]);
            for (int b = 0; b < 4; b++) {
                double sum = 0;
                for (int i : a == 0 ? new int[] {0} : new int[] {0, rx[a]}) {
                    for (int j : b == 0 ? new int[] {0} : new int[] {0, rx[b]}) {
                        sum += fit.robustCovariance()[i][j];
                    }
                }
                check(
                        reference,
                        "rx covariance",
                        sum,
                        ReferenceCase.numbers(reference.node().at("/expected/rx_cov/" + a))[b]);
            }
        }
    }

    @Test
    void veteransWithAFactorAndPrediction() {
        ReferenceCase reference = load("cox-veteran");
        Map<String, List<String>> models = new LinkedHashMap<>();
        models.put("five", List.of("trt", "celltype=smallcell", "celltype=adeno", "celltype=large", "karno", "age"));
        models.put("three", List.of("karno", "age", "trt"));
        models.forEach((name, columns) -> checkFit(
                reference, name, CoxFitter.withDefaults().fit(sample(reference, "", "time", "status", columns))));
        checkPrediction(
                reference,
                CoxFitter.withDefaults()
                        .fit(sample(reference, "", "time", "status", models.get("three")))
                        .hazard(new double[] {60, 58, 1}));
    }

    @Test
    void larynxCancerByStage() {
        ReferenceCase reference = load("cox-larynx");
        checkFit(
                reference,
                "",
                CoxFitter.withDefaults()
                        .with(Ties.BRESLOW)
                        .fit(sample(reference, "", "time", "status", List.of("stage=2", "stage=3", "stage=4", "age"))));
    }
}
