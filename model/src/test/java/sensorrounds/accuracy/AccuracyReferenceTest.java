package sensorrounds.accuracy;

import static sensorrounds.reference.References.check;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import sensorrounds.cox.CalibrationSlope;
import sensorrounds.cox.CoxFit;
import sensorrounds.cox.CoxFitter;
import sensorrounds.cox.CoxSample;
import sensorrounds.cox.PredictedHazard;
import sensorrounds.reference.ReferenceCase;
import sensorrounds.reference.References;

/** Every reference case of discrimination and calibration at its stated tolerance; sources stand with the cases. */
class AccuracyReferenceTest {
    private static ReferenceCase load(String id) {
        return ReferenceCase.load("accuracy/discrimination.json", id);
    }

    private static boolean[] failed(ReferenceCase data) {
        double[] status = data.data("status");
        boolean[] failed = new boolean[status.length];
        for (int i = 0; i < failed.length; i++) {
            failed[i] = status[i] == 1;
        }
        return failed;
    }

    private static FollowUp units(ReferenceCase data) {
        double[] time = data.data("time");
        return FollowUp.of(new double[time.length], time, failed(data));
    }

    private static void checkCounts(ReferenceCase reference, String under, Concordance actual) {
        check(reference, under + "concordant", new double[] {actual.concordant()});
        check(reference, under + "discordant", new double[] {actual.discordant()});
        check(reference, under + "tied_risk", new double[] {actual.tiedRisk()});
        check(reference, under + "C", new double[] {actual.value()});
    }

    private static void checkWithError(ReferenceCase reference, String under, Concordance actual) {
        check(reference, under + "C", new double[] {actual.value()});
        check(reference, under + "se", new double[] {actual.standardError()});
        check(reference, under + "counts/concordant", new double[] {actual.concordant()});
        check(reference, under + "counts/discordant", new double[] {actual.discordant()});
        check(reference, under + "counts/tied.x", new double[] {actual.tiedRisk()});
        check(reference, under + "counts/tied.y", new double[] {actual.tiedAge()});
        check(reference, under + "counts/tied.xy", new double[] {actual.tiedBoth()});
    }

    @Test
    void elevenUnitsCountedByHand() {
        ReferenceCase reference = load("c-hand");
        double[] risk = reference.data("x");
        FollowUp units = units(reference);
        checkCounts(reference, "x_is_risk/", Concordance.harrell(units, risk));
        checkCounts(
                reference, "x_is_risk_weighted/", Concordance.harrell(units.withWeights(reference.data("wt")), risk));
        double[] reversed = Arrays.stream(risk).map(r -> -r).toArray();
        check(reference, "x_is_survival_score_C", new double[] {
            Concordance.harrell(units, reversed).value()
        });
    }

    @Test
    void lungCancerWithManyTiedRisks() {
        ReferenceCase reference = load("c-lung-ecog");
        Concordance ecog = Concordance.harrell(units(reference), reference.data("ph_ecog"));
        checkCounts(reference, "", ecog);
        checkWithError(reference, "R/", ecog);
        checkWithError(reference, "age/", Concordance.harrell(units(reference), reference.data("age")));
    }

    @Test
    void tiesOfEveryKind() {
        ReferenceCase reference = load("c-ties");
        Concordance actual = Concordance.harrell(units(reference), reference.data("x"));
        checkCounts(reference, "", actual);
        checkWithError(reference, "R/", actual);
    }

    private static double[][] veterans(ReferenceCase data, List<String> columns) {
        int n = data.data("time").length;
        double[][] x = new double[n][columns.size()];
        String[] celltypes = References.words(data, "celltype");
        for (int j = 0; j < columns.size(); j++) {
            String name = columns.get(j);
            double[] numbers = name.startsWith("celltype") ? null : data.data(name);
            for (int i = 0; i < n; i++) {
                x[i][j] = numbers == null
                        ? (celltypes[i].equals(name.substring("celltype".length())) ? 1 : 0)
                        : numbers[i];
            }
        }
        return x;
    }

    private static CoxFit fitVeterans(ReferenceCase data, List<String> columns) {
        double[] time = data.data("time");
        return CoxFitter.withDefaults()
                .fit(CoxSample.of(columns, new double[time.length], time, failed(data), veterans(data, columns)));
    }

    @Test
    void threeNestedModelsOfVeterans() {
        ReferenceCase reference = load("c-veteran");
        Map<String, List<String>> models = new LinkedHashMap<>();
        models.put("m4", List.of("karno", "age", "trt"));
        models.put("m5", List.of("karno", "age", "trt", "celltypesmallcell", "celltypeadeno", "celltypelarge"));
        models.put(
                "m6", List.of("karno", "age", "trt", "celltypesmallcell", "celltypeadeno", "celltypelarge", "prior"));
        models.forEach((name, columns) -> {
            CoxFit fit = fitVeterans(reference, columns);
            check(reference, name + "/coef", fit.values());
            double[] risk = Arrays.stream(veterans(reference, columns))
                    .mapToDouble(fit::linearPredictor)
                    .toArray();
            checkWithError(reference, name + "/", Concordance.harrell(units(reference), risk));
        });
    }

    @Test
    void brierScoreAreaAndUnoOfVeterans() {
        ReferenceCase data = load("c-veteran");
        ReferenceCase reference = load("brier-veteran");
        List<String> columns = List.of("karno", "age", "trt");
        CoxFit fit = fitVeterans(data, columns);
        double[][] x = veterans(data, columns);
        double[] risk = Arrays.stream(x).mapToDouble(fit::linearPredictor).toArray();
        List<PredictedHazard> hazards = Arrays.stream(x).map(fit::hazard).toList();
        FollowUp units = units(data);
        double[] times = reference.expected("times");
        for (int t = 0; t < times.length; t++) {
            double age = times[t];
            double[] survival =
                    hazards.stream().mapToDouble(h -> h.survival(age).value()).toArray();
            for (int i = 0; i < 3; i++) {
                check(
                        reference,
                        "predicted survival",
                        survival[i],
                        ReferenceCase.numbers(reference.node().at("/expected/predicted_survival_first3/" + i))[t]);
            }
            BrierScore brier = BrierScore.at(age, units, survival);
            check(reference, "Brier", brier.score(), reference.expected("brier")[t]);
            check(reference, "Brier error", brier.standardError(), reference.expected("brier_se")[t]);
            check(reference, "null Brier", brier.nullScore(), reference.expected("brier_null_km")[t]);
            check(reference, "explained", brier.explained(), reference.expected("index_of_prediction_accuracy")[t]);
            AreaUnderCurve area = AreaUnderCurve.at(age, units, risk);
            check(reference, "area", area.value(), reference.expected("auc_ipcw")[t]);
            check(reference, "area error", area.standardError(), reference.expected("auc_se")[t]);
        }
        double[] taus = reference.expected("uno_tau");
        check(
                reference,
                "uno_c",
                Arrays.stream(taus)
                        .map(tau -> Concordance.uno(units, risk, tau).value())
                        .toArray());
    }

    @Test
    void aPredictorBroughtFromElsewhere() {
        ReferenceCase reference = load("cal-slope-gbsg");
        double[] predictor = reference.data("lp");
        double[] time = reference.data("time");
        CalibrationSlope slope = CalibrationSlope.of(CoxSample.of(
                List.of("lp"),
                new double[time.length],
                time,
                failed(reference),
                Arrays.stream(predictor).mapToObj(v -> new double[] {v}).toArray(double[][]::new)));
        check(reference, "slope", new double[] {slope.slope().value()});
        check(reference, "se", new double[] {slope.standardError()});
        check(reference, "lr_test_slope_1", new double[] {slope.againstOne().statistic()});
        checkWithError(reference, "C/", Concordance.harrell(units(reference), predictor));
    }
}
