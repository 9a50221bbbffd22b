package sensorrounds.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sensorrounds.causes.CauseHazardFit;
import sensorrounds.causes.CauseHazardFitter;
import sensorrounds.causes.MaskedLife;
import sensorrounds.causes.MaskedSample;
import sensorrounds.reference.ReferenceCase;
import sensorrounds.reference.References;
import sensorrounds.survival.EarlyWearFitter.Early;

/**
 * Device-G, Meeker and Escobar (1998), Statistical Methods for Reliability Data, ch. 15 (data and printed figures from memory):
 * 30 devices, 15 failed by surges and 7 worn out. With the causes told, and with the causes hidden from the fit.
 */
class EarlyWearReferenceTest {
    private final ReferenceCase reference = ReferenceCase.load("survival/two-hazards.json", "device-g");
    private final double[] cycles = reference.data("cycles");
    private final String[] causes = References.words(reference, "cause");

    private LifetimeSample lives() {
        List<Lifetime> lives = new ArrayList<>();
        for (int i = 0; i < cycles.length; i++) {
            int at = (int) cycles[i];
            lives.add(causes[i].equals("-") ? Lifetime.censored(0, at) : Lifetime.exact(0, at));
        }
        return LifetimeSample.of(lives);
    }

    private double printed(String path) {
        return reference.node().at("/printed/" + path).asDouble();
    }

    @Test
    void aHazardForEachCauseAsPrinted() {
        List<MaskedLife<String>> lives = new ArrayList<>();
        for (int i = 0; i < cycles.length; i++) {
            boolean failed = !causes[i].equals("-");
            lives.add(new MaskedLife<>(
                    0,
                    cycles[i],
                    failed ? cycles[i] : Double.POSITIVE_INFINITY,
                    failed ? Set.of(causes[i]) : Set.of(),
                    1));
        }
        CauseHazardFit<String> fit = CauseHazardFitter.weibulls().fit(MaskedSample.of(List.of("S", "W"), lives));
        double logLikelihood = 0;
        for (String cause : List.of("S", "W")) {
            String name = cause.equals("S") ? "surge" : "wear";
            WeibullLife law = fit.weibull(cause);
            double[] expected = reference.expected(name);
            References.check(reference, name + " shape", law.shape(), expected[0]);
            References.check(reference, name + " scale", law.scaleDays(), expected[1]);
            logLikelihood += expected[2];
            // Printed as location and scale of the logs, to two decimals.
            assertThat(Math.log(law.scaleDays())).isCloseTo(printed(name + "/0"), within(5e-3));
            assertThat(1 / law.shape()).isCloseTo(printed(name + "/1"), within(5e-3));
        }
        References.check(reference, "log-likelihood", fit.logLikelihood(), logLikelihood);
        assertThat(fit.logLikelihood()).isCloseTo(printed("surge/2") + printed("wear/2"), within(1e-2));
    }

    @Test
    void twoHazardsWithTheCausesHidden() {
        ParametricFit plain = ParametricFitter.of(Family.WEIBULL).fit(lives());
        assertThat(plain.logLikelihood()).isCloseTo(printed("together"), within(5e-3));
        for (Early early : Early.values()) {
            String name = early == Early.CONSTANT ? "constant" : "free";
            EarlyWearFit fit = EarlyWearFitter.of(early).fit(lives(), plain);
            EarlyWearLife law = fit.law().orElseThrow();
            double[] values = early == Early.CONSTANT
                    ? new double[] {law.earlyScaleDays(), law.wearScaleDays(), law.wearShape(), fit.logLikelihood()}
                    : new double[] {
                        law.earlyScaleDays(),
                        law.earlyShape(),
                        law.wearScaleDays(),
                        law.wearShape(),
                        fit.logLikelihood()
                    };
            References.check(reference, name, values);
            double[][] covariance = law.covariance();
            int[] kept = early == Early.CONSTANT ? new int[] {0, 2, 3} : new int[] {0, 1, 2, 3};
            double[] expected = reference.expected(name + "Errors");
            for (int i = 0; i < kept.length; i++) {
                // The reference takes second differences.
                References.check(
                        reference, name + " error " + i, Math.sqrt(covariance[kept[i]][kept[i]]), expected[i], 1e-4, 0);
            }
        }
    }
}
