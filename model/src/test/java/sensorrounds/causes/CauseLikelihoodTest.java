package sensorrounds.causes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sensorrounds.numeric.Objective;
import sensorrounds.reference.ReferenceCase;
import sensorrounds.reference.References;

/** The likelihood with causes unknown against R's integrate, its own differences, and the published fit of the known case. */
class CauseLikelihoodTest {
    private static ReferenceCase load(String id) {
        return ReferenceCase.load("causes/masked.json", id);
    }

    private static MaskedSample<Integer> sample(ReferenceCase reference, int causes) {
        double[] entry = reference.data("entry");
        double[] lower = reference.data("lower");
        String[] upper = References.words(reference, "upper");
        String[] sets = References.words(reference, "causes");
        List<MaskedLife<Integer>> lives = new ArrayList<>();
        for (int i = 0; i < entry.length; i++) {
            Set<Integer> candidates = sets[i].chars().mapToObj(c -> c - '0').collect(Collectors.toSet());
            double end = upper[i].equals("null") ? Double.POSITIVE_INFINITY : Double.parseDouble(upper[i]);
            lives.add(new MaskedLife<>(entry[i], lower[i], end, candidates, 1));
        }
        return MaskedSample.of(causes == 2 ? List.of(1, 2) : List.of(1, 2, 3), lives);
    }

    private static CauseModel weibulls(int causes, double centre) {
        List<CauseHazard> hazards = new ArrayList<>();
        for (int k = 0; k < causes; k++) {
            hazards.add(new CauseHazard.Weibull(centre));
        }
        return new CauseModel(hazards, new double[0]);
    }

    @ParameterizedTest
    @ValueSource(strings = {"shock-known", "shock-masked", "rounds-masked"})
    void equalsTheDefinition(String id) {
        ReferenceCase reference = load(id);
        double[] points = reference.expected("points");
        double[] expected = reference.expected("logLikelihoods");
        int parameters = points.length / expected.length;
        CauseLikelihood likelihood =
                new CauseLikelihood(weibulls(parameters / 2, 0), sample(reference, parameters / 2));
        for (int i = 0; i < expected.length; i++) {
            double[] point = Arrays.copyOfRange(points, i * parameters, (i + 1) * parameters);
            References.check(reference, "log L", likelihood.at(point).value(), expected[i]);
        }
    }

    /** R's search stops within 1e-5 of the maximum, its errors are by differences. */
    @ParameterizedTest
    @ValueSource(strings = {"shock-known", "shock-masked", "rounds-masked"})
    void theMaximumIsThatOfR(String id) {
        ReferenceCase reference = load(id);
        double[] par = reference.expected("par");
        double[] se = reference.expected("se");
        CauseHazardFit<Integer> fit = CauseHazardFitter.weibulls().fit(sample(reference, par.length / 2));

        References.check(reference, "log L", fit.logLikelihood(), reference.expected("logLikelihood")[0], 1e-10, 0);
        assertThat(fit.gradientNorm()).isLessThan(1e-9);
        for (int k = 0; k < par.length / 2; k++) {
            References.check(reference, "scale", Math.log(fit.weibull(k + 1).scaleDays()), par[2 * k], 0, 2e-5);
            References.check(reference, "shape", Math.log(fit.weibull(k + 1).shape()), par[2 * k + 1], 0, 2e-5);
            References.check(reference, "se scale", Math.sqrt(fit.weibull(k + 1).varLogScale()), se[2 * k], 1e-3, 0);
            References.check(
                    reference, "se shape", Math.sqrt(fit.weibull(k + 1).varLogShape()), se[2 * k + 1], 1e-3, 0);
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void derivativesEqualDifferences(boolean weibull) {
        MaskedSample<String> sample = MaskedLives.of(11, 60, 0.3, 0.3, false);
        CauseModel model = weibull ? weibulls(3, 7) : bands();
        CauseLikelihood likelihood = new CauseLikelihood(model, sample);
        double[] point = new double[model.parameters()];
        for (int p = 0; p < point.length; p++) {
            point[p] = weibull ? new double[] {0.7, 0.8, 1.9, 0.1, 2.4, -0.3}[p] : -8 - 0.1 * p;
        }
        Objective.Evaluation at = likelihood.at(point);
        double h = 1e-5;
        for (int a = 0; a < point.length; a++) {
            double[] up = point.clone();
            double[] down = point.clone();
            up[a] += h;
            down[a] -= h;
            Objective.Evaluation above = likelihood.at(up);
            Objective.Evaluation below = likelihood.at(down);
            assertThat(at.gradient()[a]).isCloseTo((above.value() - below.value()) / (2 * h), within(1e-6));
            for (int b = 0; b < point.length; b++) {
                assertThat(at.hessian()[a][b])
                        .isCloseTo((above.gradient()[b] - below.gradient()[b]) / (2 * h), within(1e-6));
                assertThat(at.hessian()[a][b]).isCloseTo(at.hessian()[b][a], within(1e-10));
            }
        }
    }

    private static CauseModel bands() {
        double[] edges = {0, 600, 1200, Double.POSITIVE_INFINITY};
        CauseHazard hazard = new CauseHazard.Bands(edges);
        return new CauseModel(List.of(hazard, hazard, hazard), new double[] {600, 1200});
    }

    /** Of all causes together the integral has a closed form, S(from) - S(to) over S(from): steep, flat and from age 0. */
    @Test
    void theQuadratureHoldsFromAgeZero() {
        for (double shape : new double[] {0.3, 0.8, 1, 2.5, 6}) {
            CauseModel model = weibulls(2, 0);
            double[] point = {Math.log(2000), Math.log(shape), Math.log(3000), Math.log(1.3)};
            for (double[] stretch :
                    new double[][] {{0, 0.5}, {0, 900}, {0, 4000}, {3, 2000}, {800, 1100}, {500, 4000}}) {
                CauseModel.State from = model.state();
                CauseModel.State to = model.state();
                from.fill(stretch[0], point);
                to.fill(stretch[1], point);
                CauseWindow window = new CauseWindow(model);
                window.integrate(model.nodes(stretch[0], stretch[1]), from, new int[] {0, 1}, point);
                double expected = -Math.expm1(from.cumulative - to.cumulative);
                assertThat(window.value() / expected)
                        .as("shape %s, %s", shape, Arrays.toString(stretch))
                        // Where nobody is left by the end (H beyond 20) fewer digits are kept.
                        .isCloseTo(1, within(to.cumulative < 20 ? 2e-12 : 1e-9));
            }
        }
    }
}
