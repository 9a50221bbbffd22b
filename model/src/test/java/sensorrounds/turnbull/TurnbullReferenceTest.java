package sensorrounds.turnbull;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sensorrounds.reference.ReferenceCase;
import sensorrounds.survival.LifetimeSample;

/** Every reference case of the nonparametric estimate at its stated tolerance; sources stand with the cases. */
class TurnbullReferenceTest {
    private static final double NEVER = Double.POSITIVE_INFINITY;

    private static ReferenceCase reference(String id) {
        return ReferenceCase.load("turnbull/npmle.json", id);
    }

    private static double[] withNulls(JsonNode values) {
        double[] all = ReferenceCase.numbers(values);
        for (int i = 0; i < all.length; i++) {
            all[i] = values.get(i).isNull() ? NEVER : all[i];
        }
        return all;
    }

    private static double[] filled(int n, double value) {
        double[] all = new double[n];
        Arrays.fill(all, value);
        return all;
    }

    private static LifetimeSample intervals(double[] left, double[] right, double[] weight) {
        return LifetimeSample.of(filled(left.length, 0), left, right, weight);
    }

    private static void check(ReferenceCase reference, String quantity, double ours, double expected) {
        JsonNode tolerance = reference.node().get("tolerance");
        double slack = tolerance.get("abs").doubleValue() + tolerance.get("rel").doubleValue() * Math.abs(expected);
        assertThat(ours).as("%s: %s", reference.node().get("id"), quantity).isCloseTo(expected, within(slack));
    }

    private static TurnbullFit fitted(LifetimeSample sample) {
        TurnbullFit fit = Turnbull.withDefaults().fit(sample);
        assertThat(fit.converged()).as(fit.cause()).isTrue();
        // The references' own measure of a maximum, here a bound on the log-likelihood still missing.
        assertThat(fit.gap()).isLessThan(1e-6);
        return fit;
    }

    private static void checkMasses(ReferenceCase reference, TurnbullFit fit) {
        double[] left = reference.expected("mass_intervals/left");
        double[] right = withNulls(reference.node().at("/expected/mass_intervals/right"));
        double[] p = reference.expected("mass_intervals/p");
        double[] after = reference.expected("surv_after");
        List<InnermostInterval> masses = fit.masses();
        assertThat(masses).hasSize(p.length);
        assertThat(fit.intervals()).hasSize((int) reference.expected("n_innermost")[0]);
        for (int i = 0; i < p.length; i++) {
            assertThat(masses.get(i).lower()).isEqualTo(left[i]);
            assertThat(masses.get(i).upper()).isEqualTo(right[i]);
            assertThat(masses.get(i).exact())
                    .isEqualTo(reference
                            .node()
                            .at("/expected/mass_intervals/exact/" + i)
                            .booleanValue());
            check(reference, "mass " + i, masses.get(i).mass(), p[i]);
            check(reference, "survival after " + i, masses.get(i).survivalAfter(), after[i]);
        }
        double logLikelihood = reference.expected("loglik")[0];
        assertThat(fit.logLikelihood()).isCloseTo(logLikelihood, within(1e-9 * Math.abs(logLikelihood)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"npmle-bcos-rt", "npmle-bcos-pooled", "npmle-hand"})
    void massesOfIntervals(String id) {
        ReferenceCase reference = reference(id);
        double[] left = reference.data("left");
        TurnbullFit fit =
                fitted(intervals(left, withNulls(reference.node().at("/data/inline/right")), filled(left.length, 1)));
        checkMasses(reference, fit);
        assertThat(fit.uniqueness()).isEqualTo(Uniqueness.UNIQUE);
    }

    /** Fay and Shaw (2010), section 4.1, print eight masses of the radiotherapy arm to four decimals. */
    @Test
    void theEightPrintedMasses() {
        double[] printed = {.0463, .0334, .0887, .0708, .0926, .0818, .1209, .4656};
        ReferenceCase reference = reference("npmle-bcos-rt");
        TurnbullFit fit = fitted(
                intervals(reference.data("left"), withNulls(reference.node().at("/data/inline/right")), filled(46, 1)));
        for (int i = 0; i < printed.length; i++) {
            assertThat(fit.masses().get(i).mass()).isCloseTo(printed[i], within(5e-5));
        }
    }

    /** (5 - sqrt 5) / 10 on both outer intervals, 1 / sqrt 5 between: 10 a^2 - 10 a + 2 = 0. */
    @Test
    void fiveIntervalsSolvedOnPaper() {
        TurnbullFit fit =
                fitted(intervals(new double[] {0, 0, 1, 1, 2}, new double[] {1, 2, 2, NEVER, NEVER}, filled(5, 1)));
        double outer = (5 - Math.sqrt(5)) / 10;
        assertThat(fit.masses().get(0).mass()).isCloseTo(outer, within(1e-14));
        assertThat(fit.masses().get(1).mass()).isCloseTo(1 / Math.sqrt(5), within(1e-14));
        assertThat(fit.masses().get(2).mass()).isCloseTo(outer, within(1e-14));
    }

    @Test
    void doublyCensoredCounts() {
        ReferenceCase reference = reference("npmle-turnbull-1974");
        double[] time = reference.data("time");
        double[] count = reference.data("n");
        double[] left = new double[time.length];
        double[] right = new double[time.length];
        int kept = 0;
        double[] weight = new double[time.length];
        for (int i = 0; i < time.length; i++) {
            String type = reference.node().at("/data/inline/type/" + i).asText();
            if (count[i] > 0) {
                left[kept] = type.equals("left") ? 0 : time[i];
                right[kept] = type.equals("right") ? NEVER : time[i];
                weight[kept++] = count[i];
            }
        }
        TurnbullFit fit =
                fitted(intervals(Arrays.copyOf(left, kept), Arrays.copyOf(right, kept), Arrays.copyOf(weight, kept)));
        checkMasses(reference, fit);
        double[] survival = reference.expected("surv_at_1_to_4");
        double[] printed = {.538, .295, .210, .095};
        for (int t = 1; t <= 4; t++) {
            check(reference, "S(" + t + ")", fit.survival().at(t), survival[t - 1]);
            assertThat(fit.survival().at(t)).isCloseTo(printed[t - 1], within(5e-4));
        }
    }

    /** Each wheel inspected once: the estimate is the isotonic regression of the shares failed. */
    @Test
    void currentStatusOfTurbineWheels() {
        ReferenceCase reference = reference("npmle-turbine");
        double[] hours = reference.data("hours");
        double[] inspected = reference.data("inspected");
        double[] failed = reference.data("failed");
        double[] left = new double[2 * hours.length];
        double[] right = new double[2 * hours.length];
        double[] weight = new double[2 * hours.length];
        int kept = 0;
        for (int i = 0; i < hours.length; i++) {
            if (failed[i] > 0) {
                right[kept] = hours[i];
                weight[kept++] = failed[i];
            }
            left[kept] = hours[i];
            right[kept] = NEVER;
            weight[kept++] = inspected[i] - failed[i];
        }
        TurnbullFit fit =
                fitted(intervals(Arrays.copyOf(left, kept), Arrays.copyOf(right, kept), Arrays.copyOf(weight, kept)));
        double[] share = reference.expected("F_at_hours");
        double[] naive = reference.expected("naive_fractions");
        for (int i = 0; i < hours.length; i++) {
            check(reference, "F(" + hours[i] + ")", 1 - fit.survival().at(hours[i]), share[i]);
        }
        assertThat(share[1]).as("the naive share differs, so the case can tell").isNotEqualTo(naive[1]);
        check(reference, "log-likelihood", fit.logLikelihood(), reference.expected("loglik")[0]);
    }

    @Test
    void heatExchangerTubesWithGreenwoodErrors() {
        ReferenceCase reference = reference("npmle-heatexchanger");
        TurnbullFit fit = fitted(intervals(
                reference.data("left"), withNulls(reference.node().at("/data/inline/right")), reference.data("n")));
        checkMasses(reference, fit);
        double[] share = reference.expected("F_years_1_2_3");
        double[] error = reference.expected("se_greenwood");
        for (int i = 0; i < share.length; i++) {
            check(reference, "F", 1 - fit.survival().at(i + 1), share[i]);
            check(reference, "standard error", fit.standardErrorAfter(i), error[i]);
        }
    }

    @Test
    void groupedCracksAreCumulativeFractions() {
        ReferenceCase reference = reference("npmle-cracks");
        TurnbullFit fit = fitted(intervals(
                reference.data("left"), withNulls(reference.node().at("/data/inline/right")), reference.data("n")));
        double[] days = reference.expected("days");
        double[] share = reference.expected("F_at_days");
        double[] error = reference.expected("se_binomial");
        for (int i = 0; i < days.length; i++) {
            check(reference, "F(" + days[i] + ")", 1 - fit.survival().at(days[i]), share[i]);
            check(reference, "standard error", fit.standardErrorAfter(i), error[i]);
        }
        check(reference, "log-likelihood", fit.logLikelihood(), reference.expected("loglik")[0]);
    }
}
