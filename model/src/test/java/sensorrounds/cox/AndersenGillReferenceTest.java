package sensorrounds.cox;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import sensorrounds.cox.CoxFit.Coefficient;
import sensorrounds.reference.ReferenceCase;
import sensorrounds.reference.References;

/**
 * Regression of recurrent events as proportional rates: each unit's time between events is a row, and the errors are robust by
 * unit (Andersen and Gill 1982, Ann. Stat. 10:1100; Lin, Wei, Yang and Ying 2000, JRSS B 62:711). Bladder tumours: Wei, Lin and
 * Weissfeld (1989), JASA 84:1065.
 */
class AndersenGillReferenceTest {
    @ParameterizedTest
    @EnumSource(Ties.class)
    void bladderTumours(Ties ties) {
        ReferenceCase reference = ReferenceCase.load("recurrent/recurrent.json", "ag-bladder2");
        List<String> columns = List.of("rx", "size", "number");
        double[] start = reference.data("start");
        double[] event = reference.data("event");
        double[][] x = new double[start.length][columns.size()];
        boolean[] failed = new boolean[start.length];
        for (int i = 0; i < start.length; i++) {
            failed[i] = event[i] == 1;
            for (int j = 0; j < columns.size(); j++) {
                x[i][j] = reference.data(columns.get(j))[i];
            }
        }
        CoxSample rows = CoxSample.of(columns, start, reference.data("stop"), failed, x)
                .withClusters(Arrays.stream(reference.data("id"))
                        .mapToInt(id -> (int) id)
                        .toArray());
        CoxFit fit = CoxFitter.withDefaults().with(ties).fit(rows);
        String path = ties == Ties.BRESLOW ? "breslow/" : "efron/";
        assertThat(fit.converged()).isTrue();
        References.check(reference, path + "coef", fit.values());
        References.check(reference, path + "se", figures(fit, false));
        References.check(reference, path + "robust_se", figures(fit, true));
        References.check(reference, path + "loglik", new double[] {fit.nullLogLikelihood(), fit.logLikelihood()});
        References.check(
                reference, path + "score", new double[] {fit.scoreTest().statistic()});
        References.check(reference, path + "robust_score", new double[] {
            fit.robustScoreTest().statistic()
        });
        References.check(reference, path + "wald_robust", new double[] {
            fit.robustWaldTest().statistic()
        });
    }

    private static double[] figures(CoxFit fit, boolean robust) {
        return fit.coefficients().stream()
                .mapToDouble(robust ? Coefficient::robustError : Coefficient::standardError)
                .toArray();
    }
}
