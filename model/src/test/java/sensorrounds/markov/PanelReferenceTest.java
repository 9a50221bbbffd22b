package sensorrounds.markov;

import static org.assertj.core.api.Assertions.assertThat;
import static sensorrounds.markov.PanelReferences.cav;
import static sensorrounds.markov.PanelReferences.expected;
import static sensorrounds.markov.PanelReferences.matrix;
import static sensorrounds.markov.PanelReferences.same;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import sensorrounds.markov.PanelReferences.Cav;

/**
 * The five cases of area 09 of the reference checks: published likelihoods of the manual and test suite of the R package
 * of Jackson (2011), J. Stat. Software 38(8). Tolerances are those of the cases.
 */
class PanelReferenceTest {
    private static final JsonNode CAV = expected("msm-cav-4state");
    private static final JsonNode MISC = expected("msm-cav-misc");
    private static final List<Path> DEATH_EXACT = cav(Cav.DEATH_EXACT, Double.NaN);

    private static MarkovModel cavModel() {
        return MarkovModel.of(IntensityMatrix.of(matrix(CAV.at("/fixed/qmatrix"))));
    }

    private static MarkovModel misclassified() {
        return MarkovModel.of(IntensityMatrix.of(matrix(MISC.at("/fixed/qmatrix"))))
                .with(EmissionMatrix.of(matrix(MISC.at("/fixed/ematrix"))));
    }

    /** Case msm-cav-4state at fixed parameters, to 1e-10. */
    @Test
    void cavAtFixedParameters() {
        same(
                "-2 log L, death exact",
                -2 * cavModel().logLikelihood(DEATH_EXACT),
                CAV.at("/fixed/minus2loglik_deathexact").asDouble(),
                1e-10,
                0);
        same(
                "-2 log L, panel only",
                -2 * cavModel().logLikelihood(cav(Cav.PANEL_ONLY, Double.NaN)),
                CAV.at("/fixed/minus2loglik_panel_only").asDouble(),
                1e-10,
                0);
        sameMatrix("P(1)", cavModel().intensities().transition(1), CAV.at("/fixed/P_1_year"), 1e-10, 1e-12);
    }

    /** Case msm-cav-4state fitted: -2 log L 1e-7, intensities 1e-4, errors 1e-3. */
    @Test
    void cavFitted() {
        MarkovFit fit = MarkovFitter.of(cavModel()).fit(DEATH_EXACT);

        assertThat(fit.status()).as(fit.cause()).isEqualTo(MarkovFit.Status.CONVERGED);
        JsonNode e = CAV.get("fit_deathexact");
        same("-2 log L", -2 * fit.logLikelihood(), e.get("minus2loglik").asDouble(), 1e-7, 0);
        // Printed in the manual of the R package, model 1.
        same("-2 log L, printed", -2 * fit.logLikelihood(), 3968.798, 0, 5e-4);
        double[][] q = matrix(e.get("q"));
        double[][] se = matrix(e.get("se"));
        double[][] lower = matrix(e.get("lower"));
        double[][] upper = matrix(e.get("upper"));
        for (int r = 0; r < 3; r++) {
            MarkovFit.Rate exit = fit.exitRate(r);
            same("exit rate " + r, exit.value(), -q[r][r], 1e-4, 1e-6);
            same("se of exit rate " + r, exit.se(), se[r][r], 1e-3, 1e-6);
            same("limits of exit rate " + r, exit.upper(), -lower[r][r], 1e-3, 1e-6);
            same(
                    "mean sojourn " + r,
                    fit.model().intensities().meanSojourn(r),
                    e.get("mean_sojourn").get(r).asDouble(),
                    1e-4,
                    0);
            for (int s = 0; s < 4; s++) {
                if (r != s && q[r][s] > 0) {
                    MarkovFit.Rate rate = fit.intensity(r, s);
                    same("q " + r + s, rate.value(), q[r][s], 1e-4, 1e-6);
                    same("se " + r + s, rate.se(), se[r][s], 1e-3, 1e-6);
                    same("lower " + r + s, rate.lower(), lower[r][s], 1e-3, 1e-6);
                    same("upper " + r + s, rate.upper(), upper[r][s], 1e-3, 1e-6);
                }
            }
        }
        sameMatrix("P(10)", fit.model().intensities().transition(10), e.get("P10"), 1e-4, 1e-6);

        MarkovFit panel = MarkovFitter.of(cavModel()).fit(cav(Cav.PANEL_ONLY, Double.NaN));
        same(
                "-2 log L, panel only",
                -2 * panel.logLikelihood(),
                CAV.at("/fit_panel_only/minus2loglik").asDouble(),
                1e-7,
                0);
        sameMatrix("q, panel only", panel.model().intensities().rows(), CAV.at("/fit_panel_only/q"), 1e-4, 1e-6);
        assertThat(panel.logLikelihood())
                .as("taking the dates of death for visits is another model")
                .isNotCloseTo(fit.logLikelihood(), org.assertj.core.api.Assertions.within(1.0));
    }

    /** Case msm-cav-sex-fixed: effect 0.01 on every log intensity, covariate centred. */
    @Test
    void cavWithCovariateAtFixedParameters() {
        double mean = sensorrounds.reference.ReferenceCase.load("markov/panel-states.json", "msm-cav-sex-fixed")
                .node()
                .at("/params/sex_mean")
                .asDouble();
        double[] effect = {0.01, 0.01, 0.01, 0.01, 0.01, 0.01, 0.01};
        MarkovModel model = cavModel().withEffects(new double[][] {effect});

        double ours = -2 * model.logLikelihood(cav(Cav.DEATH_EXACT, mean));
        same("-2 log L", ours, expected("msm-cav-sex-fixed").get("minus2loglik").asDouble(), 1e-9, 0);
        double uncentred = -2 * model.logLikelihood(cav(Cav.DEATH_EXACT, 0));
        assertThat(Math.abs(uncentred - ours)).as("centring matters").isGreaterThan(1e-3);
    }

    /** Manual of the R package, model 2 (sex on all intensities): -2 log L 3954.777. */
    @Test
    void cavWithCovariateFitted() {
        MarkovFit fit =
                MarkovFitter.of(cavModel().withEffects(new double[1][7])).fit(cav(Cav.DEATH_EXACT, 0.115));

        assertThat(fit.status()).as(fit.cause()).isEqualTo(MarkovFit.Status.CONVERGED);
        same("-2 log L", -2 * fit.logLikelihood(), 3954.777, 0, 5e-4);
    }

    /** Case msm-cav-misc at fixed parameters: three ways to begin. */
    @Test
    void misclassificationAtFixedParameters() {
        JsonNode e = MISC.get("fixed");
        same(
                "first true state 1",
                -2 * misclassified().logLikelihood(DEATH_EXACT),
                e.get("minus2loglik_first_true_1").asDouble(),
                1e-9,
                0);
        same(
                "first state known",
                -2 * misclassified().logLikelihood(cav(Cav.FIRST_KNOWN, Double.NaN)),
                e.get("minus2loglik_first_known").asDouble(),
                1e-9,
                0);
        same(
                "first state drawn",
                -2 * misclassified().withInitial(.7, .1, .1, .1).logLikelihood(DEATH_EXACT),
                e.get("minus2loglik_initprobs_7111").asDouble(),
                1e-9,
                0);
    }

    /** Case msm-cav-misc fitted: -2 log L 1e-6, parameters 1e-3; and the Viterbi path of one patient. */
    @Test
    void misclassificationFitted() {
        List<Path> known = cav(Cav.FIRST_KNOWN, Double.NaN);
        MarkovFit fit = MarkovFitter.of(misclassified()).fit(known);
        assertThat(fit.status()).as(fit.cause()).isEqualTo(MarkovFit.Status.CONVERGED);
        JsonNode e = MISC.get("fit_first_known");
        same("-2 log L", -2 * fit.logLikelihood(), e.get("minus2loglik").asDouble(), 1e-6, 0);
        sameMatrix("q", fit.model().intensities().rows(), e.get("q"), 1e-3, 1e-6);
        sameMatrix("emission", fit.model().emission().rows(), e.get("ematrix"), 1e-3, 1e-6);
        double[][] se = matrix(e.get("se"));
        same("se of 0 to 1", fit.intensity(0, 1).se(), se[0][1], 1e-3, 0);
        same("se of 1 to 3", fit.intensity(1, 3).se(), se[1][3], 1e-3, 0);

        MarkovFit first = MarkovFitter.of(misclassified()).fit(DEATH_EXACT);
        JsonNode f = MISC.get("fit_first_true_1");
        same("-2 log L", -2 * first.logLikelihood(), f.get("minus2loglik").asDouble(), 1e-6, 0);
        sameMatrix("q", first.model().intensities().rows(), f.get("q"), 1e-3, 1e-6);
        sameMatrix("emission", first.model().emission().rows(), f.get("ematrix"), 1e-3, 1e-6);

        Path patient = DEATH_EXACT.stream()
                .filter(p -> p.id().equals("100103"))
                .findFirst()
                .orElseThrow();
        List<Integer> states = new ArrayList<>();
        MISC.at("/viterbi_patient_100103/fitted").forEach(s -> states.add(s.asInt() - 1));
        assertThat(MostLikelyStates.of(first.model(), patient)).isEqualTo(states);
    }

    /** Case msm-closed-form: the maximum is the logarithm of the observed shares, to 1e-12. */
    @Test
    void closedForm() {
        JsonNode e = expected("msm-closed-form");
        MarkovFit progressive = MarkovFitter.of(MarkovModel.of(IntensityMatrix.of(new double[][] {{0, 0.3}, {0, 0}})))
                .fit(repeated(2, new int[][] {{180, 20}, {0, 0}}));
        same(
                "rate",
                progressive.intensity(0, 1).value(),
                e.get("progressive_rate").asDouble(),
                1e-12,
                1e-12);
        same("se", progressive.intensity(0, 1).se(), e.get("progressive_se").asDouble(), 1e-12, 1e-12);

        MarkovFit reversible = MarkovFitter.of(MarkovModel.of(IntensityMatrix.of(new double[][] {{0, 0.5}, {0.5, 0}})))
                .fit(repeated(1.5, new int[][] {{150, 30}, {25, 95}}));
        sameMatrix("Q", reversible.model().intensities().rows(), e.get("reversible_Q"), 1e-12, 1e-12);
        same(
                "-2 log L",
                -2 * reversible.logLikelihood(),
                e.get("reversible_minus2loglik").asDouble(),
                1e-12,
                1e-12);
    }

    private static List<Path> repeated(double spacing, int[][] counts) {
        List<Path> paths = new ArrayList<>();
        for (int r = 0; r < counts.length; r++) {
            for (int s = 0; s < counts.length; s++) {
                paths.addAll(Collections.nCopies(
                        counts[r][s],
                        new Path(
                                r + "-" + s,
                                List.of(
                                        Sighting.of(0, r, Sighting.Kind.SNAPSHOT),
                                        Sighting.of(spacing, s, Sighting.Kind.SNAPSHOT)))));
            }
        }
        return paths;
    }

    /** Case msm-bos-exact: by counting and by the likelihood of the panel model. */
    @Test
    void exactTransitions() {
        JsonNode e = expected("msm-bos-exact");
        List<Path> paths = new ArrayList<>();
        JumpCounts counts = new JumpCounts(5);
        PanelReferences.rows("msm-bos-exact.csv")
                .forEach((id, rows) -> paths.add(new Path(
                        id,
                        rows.stream()
                                .map(row -> Sighting.of(row[0], (int) row[1] - 1, Sighting.Kind.EXACT_MOVE))
                                .toList())));
        paths.forEach(counts::add);
        double[][] fixed = {
            {0, .01, 0, 0, .002}, {0, 0, .07, 0, .01}, {0, 0, 0, .07, .02}, {0, 0, 0, 0, .03}, new double[5]
        };
        IntensityMatrix q = IntensityMatrix.of(fixed);

        same(
                "-2 log L by counts",
                -2 * counts.logLikelihood(q),
                e.get("fixed_minus2loglik").asDouble(),
                1e-9,
                0);
        same(
                "-2 log L",
                -2 * MarkovModel.of(q).logLikelihood(paths),
                e.get("fixed_minus2loglik").asDouble(),
                1e-9,
                0);
        sameMatrix("moves / time", counts.intensities().rows(), e.get("closed_form_q"), 1e-9, 1e-12);
        same(
                "-2 log L at the maximum",
                -2 * counts.logLikelihood(counts.intensities()),
                e.get("fit_minus2loglik").asDouble(),
                1e-9,
                0);
        MarkovFit fit = MarkovFitter.of(MarkovModel.of(q)).fit(paths);
        sameMatrix("fitted", fit.model().intensities().rows(), e.get("closed_form_q"), 1e-9, 1e-12);
        same("se by counts", counts.standardError(0, 1), fit.intensity(0, 1).se(), 1e-8, 0);
    }

    private static void sameMatrix(String what, double[][] actual, JsonNode expected, double rel, double abs) {
        double[][] e = matrix(expected);
        for (int r = 0; r < e.length; r++) {
            for (int s = 0; s < e.length; s++) {
                same(what + " " + r + "," + s, actual[r][s], e[r][s], rel, abs);
            }
        }
    }
}
