package sensorrounds.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sensorrounds.numeric.Objective;

class PiecewiseExponentialTest {
    private static final double YEAR = 365.25;

    /**
     * By hand, bands to 10 and beyond: lives failed at 4 and at 15, alive at 12 since entry at 6. Time at risk 4 + 10 + 4 =
     * 18 and 5 + 2 = 7, so rates 1/18 and 1/7; log L = -log 18 - log 7 - 2.
     */
    @Test
    void exactLivesSolvedByHand() {
        PiecewiseExponentialFit fit = PiecewiseExponentialFitter.withBands(10)
                .fit(LifetimeSample.of(List.of(Lifetime.exact(0, 4), Lifetime.exact(0, 15), Lifetime.censored(6, 12))));
        assertThat(fit.bands().get(0).rate().value()).isCloseTo(1 / 18.0, within(1e-14));
        assertThat(fit.bands().get(1).rate().value()).isCloseTo(1 / 7.0, within(1e-14));
        assertThat(fit.logLikelihood()).isCloseTo(-Math.log(18) - Math.log(7) - 2, within(1e-12));
        // One failure: log rate has variance 1.
        assertThat(fit.bands().get(1).rate().upper() * 7).isCloseTo(Math.exp(1.959963984540054), within(1e-9));
        assertThat(fit.survival(12).value()).isCloseTo(Math.exp(-10 / 18.0 - 2 / 7.0), within(1e-12));
        assertThat(fit.survival(10, 12).value()).isCloseTo(Math.exp(-2 / 7.0), within(1e-12));
    }

    @Test
    void oneBandIsTheExponentialLaw() {
        LifetimeSample sample = LifetimeSample.of(SimulatedRounds.simulate(3, 300, 1.3, 7, 6, 3));
        ParametricFit exponential = ParametricFitter.of(Family.EXPONENTIAL).fit(sample);
        PiecewiseExponentialFit fit = PiecewiseExponentialFitter.withBands().fit(sample);
        assertThat(1 / fit.bands().get(0).rate().value())
                .isCloseTo(exponential.scale().value(), within(1e-6));
        assertThat(1 / fit.bands().get(0).rate().lower())
                .isCloseTo(exponential.scale().upper(), within(1e-5));
        assertThat(fit.logLikelihood()).isCloseTo(exponential.logLikelihood(), within(1e-9));
    }

    /** Nelson's part cracks (1982), bands between the inspections: S there is the share still whole, in closed form. */
    @Test
    void bandsBetweenInspectionsGiveTheSharesStillWhole() {
        ReferenceCases.Case reference = ReferenceCases.of("parametric.json").stream()
                .filter(c -> c.id().equals("par-cracks"))
                .findFirst()
                .orElseThrow();
        double[] left = reference.column("left", 0);
        double[] right = reference.column("right", Double.POSITIVE_INFINITY);
        double[] count = reference.column("n", Double.NaN);
        double[] edges = new double[left.length - 1];
        System.arraycopy(left, 1, edges, 0, edges.length);
        PiecewiseExponentialFit fit = PiecewiseExponentialFitter.withBands(edges)
                .fit(LifetimeSample.of(new double[left.length], left, right, count));
        assertThat(fit.converged()).as(fit.cause()).isTrue();
        double whole = 167;
        for (int i = 0; i < edges.length; i++) {
            whole -= count[i];
            Estimate s = fit.survival(edges[i]);
            assertThat(s.value()).isCloseTo(whole / 167, within(1e-9));
            // Variance of log(-log S) of a binomial share.
            double p = whole / 167;
            double error = Math.sqrt((1 - p) / (p * 167)) / -Math.log(p);
            assertThat(s.lower()).isCloseTo(Math.pow(p, Math.exp(1.959963984540054 * error)), within(1e-7));
        }
    }

    @Test
    void theAcceptanceCase() {
        LifetimeSample sample = LifetimeSample.of(SimulatedRounds.simulate(20261125, 40_000, 2.5, 7, 6, 3));
        PiecewiseExponentialFit fit = PiecewiseExponentialFitter.withBands(
                        YEAR, 2 * YEAR, 3 * YEAR, 4 * YEAR, 5 * YEAR, 6 * YEAR, 7 * YEAR)
                .fit(sample);
        assertThat(fit.survival(3 * YEAR).value()).isCloseTo(0.887, within(0.012));
        assertThat(fit.survival(5 * YEAR).value()).isCloseTo(0.650, within(0.012));
        assertThat(fit.survival(7 * YEAR).value()).isCloseTo(0.368, within(0.012));
        assertThat(fit.survival(5 * YEAR).lower()).isLessThan(0.650);
        assertThat(fit.survival(5 * YEAR).upper()).isGreaterThan(0.650);
        // Ageing shows from band to band.
        for (int j = 1; j < 8; j++) {
            assertThat(fit.bands().get(j).rate().value())
                    .isGreaterThan(fit.bands().get(j - 1).rate().value());
        }
    }

    @Test
    void derivativesAgreeWithDifferences() {
        BandLikelihood likelihood = new BandLikelihood(
                new double[] {0, 400, 1000, Double.POSITIVE_INFINITY},
                LifetimeSample.of(List.of(
                        Lifetime.exact(100, 500),
                        Lifetime.interval(0, 0, 300),
                        Lifetime.interval(200, 350, 1500),
                        Lifetime.censored(800, 2500))));
        double[] rates = {1e-3, 4e-4, 2e-3};
        Objective.Evaluation at = likelihood.at(rates);
        double h = 1e-5;
        for (int i = 0; i < 3; i++) {
            double[] up = rates.clone();
            double[] down = rates.clone();
            up[i] *= Math.exp(h);
            down[i] *= Math.exp(-h);
            double slope = (likelihood.at(up).value() - likelihood.at(down).value()) / (2 * h);
            assertThat(at.gradient()[i]).isCloseTo(slope, within(1e-8));
            for (int j = 0; j < 3; j++) {
                double curvature =
                        (likelihood.at(up).gradient()[j] - likelihood.at(down).gradient()[j]) / (2 * h);
                assertThat(at.hessian()[j][i]).isCloseTo(curvature, within(1e-8));
            }
        }
    }

    /** At a maximum no rate, 0 or not, can be moved for the better; an EM step changes nothing. */
    @Test
    void theMaximumIsOneAlsoWithBandsAtZero() {
        Random random = new Random(5);
        int mergedWhereOnlyFailuresReach = 0;
        for (int trial = 0; trial < 40; trial++) {
            List<Lifetime> lives = new ArrayList<>();
            for (int i = 0; i < 12; i++) {
                int entry = random.nextInt(300);
                int lower = entry + 1 + random.nextInt(500);
                lives.add(
                        random.nextInt(3) == 0
                                ? Lifetime.censored(entry, lower)
                                : Lifetime.interval(entry, lower, lower + 1 + random.nextInt(400)));
            }
            LifetimeSample sample = LifetimeSample.of(lives);
            PiecewiseExponentialFit fit =
                    PiecewiseExponentialFitter.withBands(200, 400, 600, 800).fit(sample);
            assertThat(fit.converged()).as(fit.cause()).isTrue();
            double[] edges = new double[fit.bands().size() + 1];
            for (int j = 0; j < fit.bands().size(); j++) {
                edges[j + 1] = fit.bands().get(j).to();
            }
            mergedWhereOnlyFailuresReach += edges.length < 6 ? 1 : 0;
            BandLikelihood likelihood = new BandLikelihood(edges, sample);
            double[] rates =
                    fit.bands().stream().mapToDouble(b -> b.rate().value()).toArray();
            for (int j = 0; j < rates.length; j++) {
                for (double by : new double[] {0.9, 1.1}) {
                    double[] moved = rates.clone();
                    moved[j] = rates[j] > 0 ? rates[j] * by : 1e-6 * by;
                    if (Double.isNaN(rates[j])) {
                        continue;
                    }
                    for (int k = 0; k < moved.length; k++) {
                        moved[k] = Double.isNaN(moved[k]) ? 0 : moved[k];
                    }
                    assertThat(likelihood.at(moved).value()).isLessThan(fit.logLikelihood() + 1e-12);
                }
            }
        }
        assertThat(mergedWhereOnlyFailuresReach).isBetween(20, 39);
    }

    @Test
    void bandsNobodyWasSeenInAndBandsWithoutFailures() {
        PiecewiseExponentialFit fit = PiecewiseExponentialFitter.withBands(100, 500, 900)
                .fit(LifetimeSample.of(List.of(
                        Lifetime.exact(200, 700), Lifetime.censored(150, 800), Lifetime.interval(300, 600, 850))));
        assertThat(fit.bands().get(0).rate().value()).isNaN();
        assertThat(fit.bands().get(1).rate().value()).isZero();
        // 300 + 350 + 200 unit-days without a failure: no more than 3.689 of them expected, at 97.5 %.
        assertThat(fit.bands().get(1).rate().upper()).isCloseTo(3.688879454113936 / 850, within(1e-12));
        assertThat(fit.bands().get(3).rate().value()).isNaN();
        assertThat(fit.parameters()).isEqualTo(1);
        assertThat(fit.covers(100, 700)).isTrue();
        assertThat(fit.covers(0, 700)).isFalse();
        assertThatThrownBy(() -> fit.survival(700)).hasMessageContaining("nothing was under observation");
        Estimate unharmed = fit.survival(150, 500);
        assertThat(unharmed.value()).isEqualTo(1);
        assertThat(unharmed.lower()).isBetween(0.1, 0.5);
    }

    @Test
    void degenerateInputIsNamed() {
        PiecewiseExponentialFitter fitter = PiecewiseExponentialFitter.withBands(500);
        assertThat(fitter.fit(LifetimeSample.of(List.of())).status()).isEqualTo(FitStatus.NO_LIVES);
        PiecewiseExponentialFit alive = fitter.fit(LifetimeSample.of(List.of(Lifetime.censored(0, 900))));
        assertThat(alive.status()).isEqualTo(FitStatus.NO_FAILURES);
        assertThatThrownBy(alive::bands).hasMessageContaining("NO_FAILURES");
        // Nobody was seen to survive: no rate is too high.
        assertThat(fitter.fit(LifetimeSample.of(List.of(Lifetime.interval(0, 0, 300))))
                        .status())
                .isEqualTo(FitStatus.FLAT_LIKELIHOOD);
        assertThatThrownBy(() -> PiecewiseExponentialFitter.withBands(300, 200)).hasMessageContaining("ascending");
        assertThatThrownBy(() -> PiecewiseExponentialFitter.withBands(Double.NaN))
                .hasMessageContaining("ascending");
    }
}
