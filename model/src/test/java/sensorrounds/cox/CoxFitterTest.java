package sensorrounds.cox;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import sensorrounds.reference.ReferenceCase;
import sensorrounds.reference.References;
import sensorrounds.survival.Estimate;

/** Solved by hand, always true, and true in the long run. */
class CoxFitterTest {
    private static final CoxSample FLEET = CoxFixtures.fleet(11, 2000);

    private static double[] errors(CoxFit fit) {
        return fit.coefficients().stream()
                .mapToDouble(CoxFit.Coefficient::standardError)
                .toArray();
    }

    private static void assertSame(CoxFit actual, CoxFit expected) {
        assertThat(actual.status()).as(actual.cause()).isEqualTo(CoxFit.Status.CONVERGED);
        assertThat(actual.values()).containsExactly(expected.values(), within(1e-9));
        assertThat(errors(actual)).containsExactly(errors(expected), within(1e-9));
        assertThat(actual.logLikelihood()).isCloseTo(expected.logLikelihood(), within(1e-7));
    }

    /**
     * Therneau and Grambsch (2000), app. E.1: six rows whose likelihood equations are a quadratic in exp(beta) under
     * Breslow's rule and a cubic under Efron's.
     */
    @Test
    void sixRowsOnPaper() {
        CoxSample sample = CoxFixtures.of(
                new double[] {1, 1, 6, 6, 8, 9}, new int[] {1, 0, 1, 1, 0, 1}, new double[] {1, 1, 1, 0, 0, 0});
        assertThat(CoxFitter.withDefaults().with(Ties.BRESLOW).fit(sample).values()[0])
                .isCloseTo(Math.log((3 + Math.sqrt(33)) / 2), within(1e-12));
        double r = 2 * Math.sqrt(23.0 / 3) * Math.cos(Math.acos(45.0 / 23 * Math.sqrt(3.0 / 23)) / 3);
        assertThat(CoxFitter.withDefaults().fit(sample).values()[0]).isCloseTo(Math.log(r), within(1e-12));
    }

    @Test
    void weightsAreRepetitionUnderBreslow() {
        double[] weights = IntStream.range(0, 2000).mapToDouble(i -> 1 + i % 3).toArray();
        CoxSample weighted = FLEET.withWeights(weights);
        CoxFitter fitter = CoxFitter.withDefaults().with(Ties.BRESLOW);
        assertSame(fitter.fit(weighted), fitter.fit(CoxFixtures.repeated(weighted)));
    }

    @Test
    void theOrderOfRowsDoesNotMatter() {
        int[] reversed = IntStream.range(0, 2000).map(i -> 1999 - i).toArray();
        assertSame(
                CoxFitter.withDefaults().fit(CoxFixtures.pick(FLEET, reversed)),
                CoxFitter.withDefaults().fit(FLEET));
    }

    @ParameterizedTest
    @EnumSource(Ties.class)
    void aRowCutInTwoIsTheSameRow(Ties ties) {
        int n = FLEET.size();
        double[] entry = new double[2 * n];
        double[] exit = new double[2 * n];
        boolean[] failed = new boolean[2 * n];
        double[][] x = new double[2 * n][];
        for (int i = 0; i < n; i++) {
            double middle = (FLEET.entry(i) + FLEET.exit(i)) / 2;
            entry[2 * i] = FLEET.entry(i);
            exit[2 * i] = middle;
            entry[2 * i + 1] = middle;
            exit[2 * i + 1] = FLEET.exit(i);
            failed[2 * i + 1] = FLEET.failed(i);
            x[2 * i] = new double[] {FLEET.covariate(i, 0), FLEET.covariate(i, 1)};
            x[2 * i + 1] = x[2 * i];
        }
        CoxFitter fitter = CoxFitter.withDefaults().with(ties);
        CoxSample cut = CoxSample.of(FLEET.columns(), entry, exit, failed, x)
                .withClusters(IntStream.range(0, 2 * n).map(r -> r / 8).toArray());
        assertSame(fitter.fit(cut), fitter.fit(FLEET));
        assertThat(fitter.fit(cut).robustCovariance()[0][0])
                .isCloseTo(fitter.fit(FLEET).robustCovariance()[0][0], within(1e-9));
    }

    @Test
    void theUnitOfACovariateScalesItsCoefficientOnly() {
        double[][] x = new double[FLEET.size()][];
        for (int i = 0; i < x.length; i++) {
            x[i] = new double[] {1e6 + 1e-3 * FLEET.covariate(i, 0), FLEET.covariate(i, 1)};
        }
        CoxSample scaled = CoxSample.of(FLEET.columns(), entries(FLEET), exits(FLEET), failed(FLEET), x);
        CoxFit expected = CoxFitter.withDefaults().fit(FLEET);
        CoxFit actual = CoxFitter.withDefaults().fit(scaled);
        // A column that varies by 1e-9 of its size has seven digits left.
        assertThat(actual.values()[0] / 1000).isCloseTo(expected.values()[0], within(1e-6));
        assertThat(actual.values()[1]).isCloseTo(expected.values()[1], within(1e-6));
    }

    @Test
    void tiesRulesAgreeWithoutTies() {
        double[] exit = IntStream.range(0, FLEET.size())
                .mapToDouble(i -> FLEET.exit(i) + 1e-4 * i)
                .toArray();
        CoxSample untied = CoxSample.of(FLEET.columns(), entries(FLEET), exit, failed(FLEET), covariates(FLEET));
        assertSame(
                CoxFitter.withDefaults().fit(untied),
                CoxFitter.withDefaults().with(Ties.BRESLOW).fit(untied));
    }

    @Test
    void strataAddTheirLikelihoods() {
        int[] late = IntStream.range(0, FLEET.size())
                .map(i -> (int) FLEET.covariate(i, 1))
                .toArray();
        double[][] cold =
                Arrays.stream(covariates(FLEET)).map(x -> new double[] {x[0]}).toArray(double[][]::new);
        CoxSample whole = CoxSample.of(List.of("cold"), entries(FLEET), exits(FLEET), failed(FLEET), cold);
        CoxFit stratified = CoxFitter.withDefaults().fit(whole.withStrata(late));
        double sum = 0;
        for (int stratum : new int[] {0, 1}) {
            CoxSample part = CoxFixtures.pick(
                    whole,
                    IntStream.range(0, late.length)
                            .filter(i -> late[i] == stratum)
                            .toArray());
            RiskSweep sweep = new RiskSweep(part);
            double beta = stratified.values()[0];
            // Each part is scaled by its own spread and centred at its own mean, which cancels in the likelihood.
            sum += new PartialLikelihood(sweep, Ties.EFRON)
                    .at(new double[] {beta * sweep.scale(0)})
                    .value();
        }
        assertThat(stratified.logLikelihood()).isCloseTo(sum, within(1e-7));
    }

    @Test
    void theTruthOfASimulationLiesWithinTheLimits() {
        CoxFit fit = CoxFitter.withDefaults().fit(CoxFixtures.fleet(20261125, 20_000));
        Estimate cold = fit.coefficients().get(0).hazardRatio();
        Estimate late = fit.coefficients().get(1).hazardRatio();
        assertThat(Math.exp(0.7)).isBetween(cold.lower(), cold.upper());
        assertThat(Math.exp(-0.4)).isBetween(late.lower(), late.upper());
        assertThat(cold.upper() / cold.lower()).isLessThan(1.1);
    }

    /** Weibull life of shape 2.5 and scale 2500 days at covariates 0. */
    @Test
    void thePredictedSurvivalNeedsTheDelayedEntry() {
        CoxSample fleet = CoxFixtures.fleet(20261125, 20_000);
        double truth = Math.exp(-Math.pow(1500 / 2500.0, 2.5));
        Estimate right =
                CoxFitter.withDefaults().fit(fleet).hazard(new double[] {0, 0}).survival(1500);
        assertThat(truth).isBetween(right.lower(), right.upper());
        CoxSample ignored =
                CoxSample.of(fleet.columns(), new double[fleet.size()], exits(fleet), failed(fleet), covariates(fleet));
        Estimate wrong = CoxFitter.withDefaults()
                .fit(ignored)
                .hazard(new double[] {0, 0})
                .survival(1500);
        assertThat(wrong.value()).isGreaterThan(truth + 0.03);
    }

    @Test
    void martingaleResidualsSumToZeroAndScoresVanishAtTheMaximum() {
        for (Ties ties : Ties.values()) {
            CoxResiduals residuals =
                    CoxFitter.withDefaults().with(ties).fit(FLEET).residuals();
            assertThat(Arrays.stream(residuals.martingale()).sum()).isCloseTo(0, within(1e-8));
            for (int j = 0; j < 2; j++) {
                int column = j;
                assertThat(Arrays.stream(residuals.score())
                                .mapToDouble(row -> row[column])
                                .sum())
                        .isCloseTo(0, within(1e-7));
            }
        }
    }

    @Test
    void rowsLoggedTwiceFoolTheInformationButNotTheRobustErrors() {
        int[] twice = IntStream.range(0, 2 * FLEET.size()).map(r -> r / 2).toArray();
        CoxFitter breslow = CoxFitter.withDefaults().with(Ties.BRESLOW);
        CoxFit once = breslow.fit(FLEET);
        CoxFit doubled = breslow.fit(CoxFixtures.pick(FLEET, twice));
        assertThat(doubled.values()).containsExactly(once.values(), within(1e-9));
        for (int j = 0; j < 2; j++) {
            assertThat(errors(doubled)[j]).isCloseTo(errors(once)[j] / Math.sqrt(2), within(1e-9));
            assertThat(doubled.coefficients().get(j).robustError())
                    .isCloseTo(once.coefficients().get(j).robustError(), within(1e-9));
            // Independent lives: both errors estimate the same.
            assertThat(once.coefficients().get(j).robustError())
                    .isCloseTo(errors(once)[j], within(0.15 * errors(once)[j]));
        }
    }

    /** Cause-specific regression: Putter, Fiocco and Geskus (2007), Stat. Med. 26:2389: -1.2358, error .3071. */
    @Test
    void genotypeAndTheHazardOfOneCause() {
        ReferenceCase data = ReferenceCase.load("causes/competing-causes.json", "cr-aidssi");
        ReferenceCase reference = ReferenceCase.load("causes/competing-causes.json", "cr-aidssi-ccr5");
        String[] genotype = References.words(data, "ccr5");
        int[] rows = IntStream.range(0, genotype.length)
                .filter(i -> genotype[i].equals("WW") || genotype[i].equals("WM"))
                .toArray();
        String[] names = {"aids", "si"};
        for (int cause = 1; cause <= 2; cause++) {
            int failing = cause;
            CoxFit fit = CoxFitter.withDefaults()
                    .fit(CoxFixtures.of(
                            Arrays.stream(rows)
                                    .mapToDouble(i -> data.data("time")[i])
                                    .toArray(),
                            Arrays.stream(rows)
                                    .map(i -> data.data("cause")[i] == failing ? 1 : 0)
                                    .toArray(),
                            Arrays.stream(rows)
                                    .mapToDouble(i -> genotype[i].equals("WM") ? 1 : 0)
                                    .toArray()));
            String path = "cause_specific/" + names[cause - 1] + "/";
            References.check(reference, path + "coef", fit.values());
            References.check(reference, path + "se", errors(fit));
        }
    }

    static double[] entries(CoxSample sample) {
        return IntStream.range(0, sample.size()).mapToDouble(sample::entry).toArray();
    }

    static double[] exits(CoxSample sample) {
        return IntStream.range(0, sample.size()).mapToDouble(sample::exit).toArray();
    }

    static boolean[] failed(CoxSample sample) {
        boolean[] failed = new boolean[sample.size()];
        for (int i = 0; i < failed.length; i++) {
            failed[i] = sample.failed(i);
        }
        return failed;
    }

    static double[][] covariates(CoxSample sample) {
        return IntStream.range(0, sample.size())
                .mapToObj(i -> IntStream.range(0, sample.columns().size())
                        .mapToDouble(j -> sample.covariate(i, j))
                        .toArray())
                .toArray(double[][]::new);
    }
}
