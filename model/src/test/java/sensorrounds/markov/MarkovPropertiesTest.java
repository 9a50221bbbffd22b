package sensorrounds.markov;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static sensorrounds.markov.Sighting.Kind.CERTAIN;
import static sensorrounds.markov.Sighting.Kind.EXACT_ENTRY;
import static sensorrounds.markov.Sighting.Kind.EXACT_MOVE;
import static sensorrounds.markov.Sighting.Kind.SNAPSHOT;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Closed forms, identities and broken inputs of the Markov models. */
class MarkovPropertiesTest {
    private static final double[][] RATES = {{0, .3, 0, .05}, {.2, 0, .4, .1}, {0, .1, 0, .5}, new double[4]};

    /** Uniformisation (Jensen 1953): sum of Poisson weights times powers, an independent way to exp(Qt). */
    @Test
    void exponentialAgreesWithUniformisation() {
        double[][] q = IntensityMatrix.of(RATES).rows();
        for (double t : new double[] {1e-6, .02, .4, 1.7, 6, 40}) {
            double rate = 0.7 * t;
            double[][] sum = new double[4][4];
            double[][] power = SmallMatrix.identity(4);
            double[][] step = SmallMatrix.identity(4);
            SmallMatrix.add(step, 1 / 0.7, q);
            double logWeight = -rate;
            for (int k = 0; k < 400; k++) {
                SmallMatrix.add(sum, Math.exp(logWeight), power);
                power = SmallMatrix.product(power, step);
                logWeight += Math.log(rate) - Math.log(k + 1);
            }
            double[][] p = IntensityMatrix.of(RATES).transition(t);
            for (int r = 0; r < 4; r++) {
                assertThat(p[r]).as("t = " + t).containsExactly(sum[r], within(2e-14));
            }
        }
    }

    /** A nilpotent matrix has the exponential I + A + A^2 / 2; a progressive chain with equal rates no eigenvectors. */
    @Test
    void exponentialNeedsNoEigenvectors() {
        double[][] nilpotent = {{0, 3, 5}, {0, 0, 2}, {0, 0, 0}};
        assertThat(MatrixExponential.of(nilpotent)).isDeepEqualTo(new double[][] {{1, 3, 8}, {0, 1, 2}, {0, 0, 1}});
        double[][] p = IntensityMatrix.of(new double[][] {{0, 2, 0}, {0, 0, 2}, {0, 0, 0}})
                .transition(1.5);
        assertThat(p[0][1]).isCloseTo(3 * Math.exp(-3), within(1e-15));
        assertThatThrownBy(() -> MatrixExponential.of(new double[][] {{Double.NaN}}))
                .hasMessageContaining("finite");
    }

    @Test
    void adjointDerivativeIsTheSumOfDirectionalOnes() {
        Random random = new Random(7);
        double[][] a = new double[3][3];
        double[][] w = new double[3][3];
        for (int i = 0; i < 9; i++) {
            a[i / 3][i % 3] = random.nextGaussian();
            w[i / 3][i % 3] = random.nextGaussian();
        }
        double[][] adjoint = MatrixExponential.adjointDerivative(a, w);
        double h = 1e-5;
        for (int i = 0; i < 9; i++) {
            a[i / 3][i % 3] += h;
            double[][] above = MatrixExponential.of(a);
            a[i / 3][i % 3] -= 2 * h;
            double[][] below = MatrixExponential.of(a);
            a[i / 3][i % 3] += h;
            double slope = 0;
            for (int k = 0; k < 9; k++) {
                slope += w[k / 3][k % 3] * (above[k / 3][k % 3] - below[k / 3][k % 3]) / (2 * h);
            }
            assertThat(adjoint[i / 3][i % 3]).isCloseTo(slope, within(1e-7));
        }
    }

    private static MarkovModel everything() {
        double[][] effects = {{.1, -.2, .3, .05, .4, -.1, .2}};
        return MarkovModel.of(IntensityMatrix.of(RATES))
                .withEffects(effects)
                .with(EmissionMatrix.of(
                        new double[][] {{.9, .1, 0, 0}, {.15, .7, .15, 0}, {0, .2, .8, 0}, {0, 0, 0, 1}}))
                .withInitial(.6, .3, .1, 0);
    }

    private static List<Path> mixed() {
        return List.of(
                new Path(
                        "a",
                        List.of(
                                at(0, 0, SNAPSHOT, .5),
                                at(1.5, 1, SNAPSHOT, -.2),
                                at(2.1, 2, CERTAIN, .1),
                                at(4, 3, EXACT_ENTRY, 0))),
                new Path("b", List.of(at(1, 1, SNAPSHOT, .1), at(1.4, 1, SNAPSHOT, 1), at(3, 1, SNAPSHOT, 0))),
                new Path(
                        "c",
                        List.of(
                                at(0, 1, CERTAIN, -1),
                                at(1, 2, EXACT_MOVE, .3),
                                at(2, 2, EXACT_MOVE, .3),
                                at(2.5, 3, EXACT_MOVE, 0))),
                new Path("d", List.of(at(0, 2, SNAPSHOT, 0))));
    }

    private static Sighting at(double time, int state, Sighting.Kind kind, double z) {
        return new Sighting(time, state, kind, List.of(z));
    }

    /** Every kind of sighting, covariates and errors at once: the derivatives against differences. */
    @Test
    void gradientAgreesWithDifferences() {
        MarkovModel model = everything();
        MarkovLikelihood likelihood = new MarkovLikelihood(model, mixed());
        double[] point = model.point();
        double[] gradient = likelihood.at(point).gradient();
        assertThat(gradient).hasSize(7 + 7 + 4);
        for (int i = 0; i < point.length; i++) {
            double[] moved = point.clone();
            moved[i] += 1e-5;
            double above = likelihood.at(moved).value();
            moved[i] -= 2e-5;
            double below = likelihood.at(moved).value();
            assertThat(gradient[i]).as("parameter " + i).isCloseTo((above - below) / 2e-5, within(1e-8));
        }
    }

    /** The sum over all paths of hidden states, by brute force, for two sightings with error. */
    @Test
    void forwardAlgorithmIsTheSumOverHiddenStates() {
        MarkovModel model = everything();
        Path path = new Path("a", List.of(at(0, 1, SNAPSHOT, .5), at(1.5, 0, SNAPSHOT, .2), at(2, 3, EXACT_ENTRY, 0)));
        double[][] first = model.intensities(List.of(.5)).transition(1.5);
        IntensityMatrix then = model.intensities(List.of(.2));
        double[][] second = then.transition(.5);
        double[] initial = {.6, .3, .1, 0};
        double sum = 0;
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < 4; j++) {
                for (int k = 0; k < 3; k++) {
                    sum += initial[i]
                            * model.emission().chance(i, 1)
                            * first[i][j]
                            * model.emission().chance(j, 0)
                            * second[j][k]
                            * then.rate(k, 3);
                }
            }
        }
        assertThat(model.logLikelihood(List.of(path))).isCloseTo(Math.log(sum), within(1e-13));
    }

    /** A sighting that tells nothing new (an absorbing state seen again) and a change of the unit of time. */
    @Test
    void identities() {
        MarkovModel model = MarkovModel.of(IntensityMatrix.of(RATES));
        Path once = new Path("a", List.of(Sighting.of(0, 0, SNAPSHOT), Sighting.of(2, 3, SNAPSHOT)));
        Path again = new Path(
                "a", List.of(Sighting.of(0, 0, SNAPSHOT), Sighting.of(2, 3, SNAPSHOT), Sighting.of(9, 3, SNAPSHOT)));
        assertThat(model.logLikelihood(List.of(again))).isCloseTo(model.logLikelihood(List.of(once)), within(1e-13));

        MarkovModel inDays = MarkovModel.of(IntensityMatrix.of(SmallMatrix.times(RATES, 1 / 365.25)));
        Path days = new Path("a", List.of(Sighting.of(0, 0, SNAPSHOT), Sighting.of(730.5, 3, SNAPSHOT)));
        assertThat(inDays.logLikelihood(List.of(days))).isCloseTo(model.logLikelihood(List.of(once)), within(1e-12));

        MarkovModel sure =
                model.with(EmissionMatrix.of(SmallMatrix.identity(4))).withInitial(1, 0, 0, 0);
        assertThat(sure.logLikelihood(List.of(once))).isCloseTo(model.logLikelihood(List.of(once)), within(1e-13));
    }

    /** Ten thousand and more sightings: only the scaling keeps the likelihood from underflowing. */
    @Test
    void longPathsDoNotUnderflow() {
        MarkovModel model = MarkovModel.of(IntensityMatrix.of(new double[][] {{0, 1}, {1, 0}}))
                .with(EmissionMatrix.of(new double[][] {{.8, .2}, {.2, .8}}));
        List<Sighting> seen = new java.util.ArrayList<>();
        for (int i = 0; i < 20_000; i++) {
            seen.add(Sighting.of(i, (i / 3) % 2, SNAPSHOT));
        }
        assertThat(model.logLikelihood(List.of(new Path("long", seen))))
                .isFinite()
                .isLessThan(-10_000);
    }

    @Test
    void whatCannotHappenSaysWhoAndWhen() {
        MarkovModel progressive = MarkovModel.of(IntensityMatrix.of(new double[][] {{0, 1}, {0, 0}}));
        List<Path> back = List.of(new Path("K7", List.of(Sighting.of(0, 1, SNAPSHOT), Sighting.of(3, 0, SNAPSHOT))));
        assertThat(progressive.logLikelihood(back)).isEqualTo(Double.NEGATIVE_INFINITY);
        MarkovFit fit = MarkovFitter.of(progressive).fit(back);
        assertThat(fit.status()).isEqualTo(MarkovFit.Status.IMPOSSIBLE_DATA);
        assertThat(fit.cause()).contains("K7").contains("time 3.0");
        assertThatThrownBy(fit::model)
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("IMPOSSIBLE_DATA");
    }

    @Test
    void failuresAreNamed() {
        MarkovModel model = MarkovModel.of(IntensityMatrix.of(new double[][] {{0, 1}, {0, 0}}));
        assertThat(MarkovFitter.of(model).fit(List.of()).status()).isEqualTo(MarkovFit.Status.NO_DATA);

        Path stays = new Path("a", List.of(Sighting.of(0, 0, SNAPSHOT), Sighting.of(3, 0, SNAPSHOT)));
        MarkovFit never = MarkovFitter.of(model).fit(List.of(stays, stays));
        assertThat(never.status()).as("nobody ever moved").isEqualTo(MarkovFit.Status.FLAT_LIKELIHOOD);
        assertThat(never.cause()).contains("state 0 to 1");

        MarkovFit hurried = MarkovFitter.of(MarkovModel.of(IntensityMatrix.of(RATES)))
                .withMaxIterations(1)
                .fit(PanelReferences.cav(PanelReferences.Cav.DEATH_EXACT, Double.NaN));
        assertThat(hurried.converged()).isFalse();
        assertThat(hurried.cause()).isNotBlank();
    }

    @Test
    void badInputSaysWhatWasExpected() {
        assertThatThrownBy(() -> IntensityMatrix.of(new double[][] {{0, -1}, {0, 0}}))
                .hasMessageContaining("state 0 to 1");
        assertThatThrownBy(() -> IntensityMatrix.of(new double[][] {{0, 1, 2}, {0, 0}}))
                .hasMessageContaining("row 0");
        assertThatThrownBy(() -> EmissionMatrix.of(new double[][] {{.5, .4}, {0, 1}}))
                .hasMessageContaining("row 0");
        assertThatThrownBy(() -> MarkovModel.of(IntensityMatrix.of(new double[2][2])))
                .hasMessageContaining("no move");
        assertThatThrownBy(() -> new Path("x", List.of(Sighting.of(1, 0, SNAPSHOT), Sighting.of(1, 1, SNAPSHOT))))
                .hasMessageContaining("x")
                .hasMessageContaining("increasing");
        MarkovModel model = MarkovModel.of(IntensityMatrix.of(RATES));
        Path beyond = new Path("y", List.of(Sighting.of(0, 0, SNAPSHOT), Sighting.of(1, 4, SNAPSHOT)));
        assertThatThrownBy(() -> model.logLikelihood(List.of(beyond))).hasMessageContaining("states 0 to 3");
        assertThatThrownBy(() -> model.withInitial(.5, .4, 0, 0)).hasMessageContaining("sum 1");
        assertThatThrownBy(() -> new JumpCounts(4).add(beyond)).hasMessageContaining("EXACT_MOVE");
    }
}
