package sensorrounds.regression;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import sensorrounds.regression.Coefficient.Part;
import sensorrounds.regression.LifeRegression.Errors;
import sensorrounds.survival.CohortFit;
import sensorrounds.survival.CohortLadder;
import sensorrounds.survival.Estimate;
import sensorrounds.survival.Family;
import sensorrounds.survival.LifetimeSample;
import sensorrounds.survival.ParametricFit;
import sensorrounds.survival.ParametricFitter;

/** Identities, closed forms and known truth; agreement with other programs is in RegressionReferenceTest. */
class LifeRegressionTest {
    private static final LifeRegression WEIBULL = LifeRegression.of(LifeFamily.WEIBULL);
    private static final double NEVER = Double.POSITIVE_INFINITY;

    @Test
    void findsTheTruthItWasSimulatedFrom() {
        CovariateLives lives = SimulatedFleet.of(5, 20_000);
        RegressionFit fit = WEIBULL.fit(lives);
        assertThat(fit.coefficients())
                .hasSize(7)
                .allSatisfy(c -> assertThat(c.value())
                        .as(c.toString())
                        .isCloseTo(SimulatedFleet.truth(c), within(3.5 * c.error())));
        assertThat(fit.coefficient(Part.LOG_SCALE, "heat").error()).isLessThan(0.002);
    }

    @Test
    void theUnitsOfTimeAndCovariatesDoNotMatter() {
        CovariateLives lives = SimulatedFleet.everyKind();
        RegressionFit fit = WEIBULL.withShapeOn("load").fit(lives);
        RegressionFit other = WEIBULL.withShapeOn("load").fit(rescaled(1e6, 1e5, 1e9));
        assertThat(other.coefficient(Part.LOG_SCALE, "load").value() * 1e5)
                .isCloseTo(fit.coefficient(Part.LOG_SCALE, "load").value(), within(1e-8));
        assertThat(other.coefficient(Part.LOG_SHAPE, "load").error() * 1e5)
                .isCloseTo(fit.coefficient(Part.LOG_SHAPE, "load").error(), within(1e-8));
        Estimate here = fit.at(1, 2).quantile(0.3);
        Estimate there = other.at(1, 2e5 + 1e9).quantile(0.3);
        assertThat(there.value() / 1e6).isCloseTo(here.value(), within(1e-5));
        assertThat(there.upper() / 1e6).isCloseTo(here.upper(), within(1e-5 * here.upper()));
    }

    /** Lives as in everyKind, time and load in other units, load also from another zero. */
    private static CovariateLives rescaled(double time, double load, double shift) {
        double[] entry = {0, 200, 0, 0, 500, 900, 0, 800, 100, 100, 0};
        double[] lower = {700, 1500, 0, 400, 500, 1300, 1000, 2500, 100, 1200, 800};
        double[] upper = {700, 1500, 300, 900, 1100, 2200, NEVER, NEVER, NEVER, 1300, 1300};
        double[] weight = {1, 1, 1, 2, 1, 1, 3, 1, 1, 1, 1};
        double[] partB = {0, 1, 0, 1, 0, 1, 0, 1, 1, 0, 1};
        double[] loads = {1.5, 2.5, 3.5, 1, 2, 1.2, 2.2, 3.1, 9, 0.4, 0.9};
        return CovariateLives.of(times(entry, time), times(lower, time), times(upper, time), weight)
                .withColumn("partB", partB)
                .withColumn(
                        "load", Arrays.stream(loads).map(x -> x * load + shift).toArray());
    }

    private static double[] times(double[] all, double factor) {
        return Arrays.stream(all).map(x -> x * factor).toArray();
    }

    /** A group on scale and shape is two fits apart. */
    @ParameterizedTest
    @EnumSource(
            value = LifeFamily.class,
            names = {"WEIBULL", "LOGNORMAL", "LOGLOGISTIC"})
    void aGroupOnScaleAndShapeIsTwoFits(LifeFamily family) {
        CovariateLives all = SimulatedFleet.of(11, 600);
        double[] group =
                IntStream.range(0, 600).mapToDouble(i -> i % 3 == 0 ? 1 : 0).toArray();
        int[] inside = IntStream.range(0, 600).filter(i -> i % 3 == 0).toArray();
        int[] outside = IntStream.range(0, 600).filter(i -> i % 3 != 0).toArray();
        CovariateLives bare = all.only();
        LifeRegression regression = LifeRegression.of(family);
        RegressionFit both = regression.withShapeOn("group").fit(bare.withColumn("group", group));
        RegressionFit first = regression.fit(bare.rows(inside));
        RegressionFit second = regression.fit(bare.rows(outside));
        assertThat(both.logLikelihood()).isCloseTo(first.logLikelihood() + second.logLikelihood(), within(1e-8));
        assertThat(both.at(1).scale().upper()).isCloseTo(first.at().scale().upper(), within(1e-4));
        assertThat(both.at(0).shape().lower()).isCloseTo(second.at().shape().lower(), within(1e-7));
        RatioTest test = both.against(regression.fit(bare));
        assertThat(test.degrees()).isEqualTo(2);
        assertThat(test.statistic()).isNotNegative();
    }

    @Test
    void withoutCovariatesItIsThePlainFit() {
        double[] entry = {0, 0, 100, 300};
        double[] lower = {500, 900, 700, 300};
        double[] upper = {500, NEVER, 1000, 1400};
        double[] weight = {2, 3, 1, 1};
        ParametricFit plain = ParametricFitter.of(Family.WEIBULL).fit(LifetimeSample.of(entry, lower, upper, weight));
        RegressionFit fit = WEIBULL.fit(CovariateLives.of(entry, lower, upper, weight));
        assertThat(fit.at().life().shape()).isCloseTo(plain.life().shape(), within(1e-9));
        assertThat(fit.at().life().covLogs()).isCloseTo(plain.life().covLogs(), within(1e-9));
        assertThat(fit.at().survival(600).lower()).isCloseTo(plain.survival(600).lower(), within(1e-9));
        assertThat(fit.at().quantile(0.1).upper()).isCloseTo(plain.quantile(0.1).upper(), within(1e-5));
        double[] within300 = plain.life().failureWithinLimits(400, 300, 1, 0);
        assertThat(fit.at().failureWithin(400, 300).lower()).isCloseTo(within300[0], within(1e-9));
        assertThat(fit.logLikelihood()).isCloseTo(plain.logLikelihood(), within(1e-9));
    }

    /**
     * By hand: exponential, clusters {2, 4} and {6}, all exact. The mean life is 4; the scores of log scale, life / 4 - 1,
     * are -1/2 + 0 and 1/2 by cluster; the information is 3, half of it, life / 4, from each cluster. Leaving one out moves log
     * scale by (1/2) / (3 - 3/2) = 1/3 either way: the jackknife variance is (1/2) (1/9 + 1/9) = 1/9, the plain one 1/3. With
     * two clusters t has one degree: limits tan(.475 pi) errors away.
     */
    @Test
    void errorsByClusterSolvedByHand() {
        double[] age = {2, 4, 6};
        CovariateLives lives = CovariateLives.of(new double[3], age, age, new double[] {1, 1, 1})
                .withClusters(new int[] {7, 7, 2});
        LifeRegression exponential = LifeRegression.of(LifeFamily.EXPONENTIAL);
        assertThat(exponential.fit(lives).covariance()[0][0]).isCloseTo(1 / 3.0, within(1e-12));
        RegressionFit robust = exponential.with(Errors.BY_CLUSTER).fit(lives);
        assertThat(robust.covariance()[0][0]).isCloseTo(1 / 9.0, within(1e-12));
        assertThat(Math.log(robust.at().scale().upper() / 4)).isCloseTo(Math.tan(0.475 * Math.PI) / 3, within(1e-9));
    }

    /** All of a group in one vehicle: without it nothing is known of the group, however many its lives. */
    @Test
    void whatRestsOnOneClusterHasNoErrorByCluster() {
        double[] age = {3, 5, 7, 9, 2, 4, 6, 8};
        int[] vehicle = {0, 0, 1, 1, 2, 2, 2, 2};
        CovariateLives lives = CovariateLives.of(new double[8], age, age, new double[] {1, 1, 1, 1, 1, 1, 1, 1})
                .withColumn("van", new double[] {0, 0, 0, 0, 1, 1, 1, 1})
                .withClusters(vehicle);
        assertThat(WEIBULL.fit(lives).converged()).isTrue();
        RegressionFit fit = WEIBULL.with(Errors.BY_CLUSTER).fit(lives);
        assertThat(fit.status()).isEqualTo(RegressionStatus.ONE_CLUSTER);
        assertThat(fit.column()).contains("van");
        assertThat(fit.cause()).startsWith("without the lives of one cluster the others do not determine van");
    }

    /** A life counted thrice in one cluster is one life as far as the robust error goes. */
    @Test
    void copiesWithinAClusterAddNoInformation() {
        CovariateLives once = SimulatedFleet.of(3, 400);
        int[] thrice = IntStream.range(0, 1200).map(i -> i / 3).toArray();
        CovariateLives copied = once.rows(thrice);
        RegressionFit single = WEIBULL.with(Errors.BY_CLUSTER).fit(once);
        RegressionFit robust = WEIBULL.with(Errors.BY_CLUSTER).fit(copied);
        RegressionFit plain = WEIBULL.fit(copied);
        Coefficient heat = single.coefficient(Part.LOG_SCALE, "heat");
        assertThat(robust.coefficient(Part.LOG_SCALE, "heat").error()).isCloseTo(heat.error(), within(1e-9));
        assertThat(plain.coefficient(Part.LOG_SCALE, "heat").error()).isLessThan(0.7 * heat.error());
    }

    /** For an exponential mean the likelihood ratio is 2 d (r - 1 - log r), r the ratio of means: limits in closed form. */
    @Test
    void profileLimitsInClosedForm() {
        double[] age = {2, 4, 6, 10};
        CovariateLives lives = CovariateLives.of(new double[4], age, age, new double[] {1, 1, 1, 1});
        RegressionFit fit = LifeRegression.of(LifeFamily.EXPONENTIAL).fit(lives);
        Estimate scale = ProfileLimits.of(lives, fit).scale();
        for (double limit : new double[] {scale.lower(), scale.upper()}) {
            double ratio = 5.5 / limit;
            assertThat(2 * 4 * (ratio - 1 - Math.log(ratio))).isCloseTo(3.841458820694124, within(1e-7));
        }
    }

    /** The table of laws gives few failures the limits of ProfileLimits, whose coverage is in docs/coverage.md. */
    @Test
    void theLadderGivesFewFailuresProfileLimits() {
        double[] entry = {0, 200, 500, 0, 100, 0, 900};
        double[] lower = {900, 1100, 1700, 300, 1500, 2000, 1400};
        double none = Double.POSITIVE_INFINITY;
        double[] upper = {900, 1300, 1700, 600, none, none, 1500};
        double[] weight = {1, 2, 1, 1, 4, 2, 1};
        CovariateLives lives = CovariateLives.of(entry, lower, upper, weight);
        ProfileLimits profile =
                ProfileLimits.of(lives, LifeRegression.of(LifeFamily.WEIBULL).fit(lives));
        CohortFit row = CohortLadder.withDefaults()
                .fit(Map.of("A", LifetimeSample.of(entry, lower, upper, weight)))
                .get(CohortLadder.POOL)
                .fit();
        assertThat(row.failures()).isEqualTo(6);
        assertThat(row.scaleLower()).isCloseTo(profile.scale().lower(), within(1e-3));
        assertThat(row.scaleUpper()).isCloseTo(profile.scale().upper(), within(1e-3));
        assertThat(row.shapeLower()).isCloseTo(profile.shape().lower(), within(1e-6));
        assertThat(row.shapeUpper()).isCloseTo(profile.shape().upper(), within(1e-6));
    }

    /** At a profile limit of a coefficient, the fit with the coefficient's share taken off the time scale loses 1.92. */
    @Test
    void profileLimitsOfACoefficientLoseWhatTheyShould() {
        CovariateLives lives = SimulatedFleet.everyKind();
        RegressionFit fit = WEIBULL.fit(lives);
        Estimate limits = ProfileLimits.of(lives, fit).coefficient(Part.LOG_SCALE, "partB");
        Coefficient wald = fit.coefficient(Part.LOG_SCALE, "partB");
        assertThat(limits.value()).isCloseTo(wald.value(), within(1e-9));
        assertThat(limits.lower()).isLessThan(limits.value()).isCloseTo(wald.lower(), within(0.5));
        assertThat(limits.upper()).isGreaterThan(limits.value()).isCloseTo(wald.upper(), within(0.5));
        for (double beta : new double[] {limits.lower(), limits.upper()}) {
            double loss = fit.logLikelihood() - shortened(beta);
            assertThat(2 * loss).isCloseTo(3.841458820694124, within(1e-6));
        }
    }

    /** Log L with partB's effect given: its lives' ages divided by exp(beta), exact ones' densities with them. */
    private static double shortened(double beta) {
        double[] entry = {0, 200, 0, 0, 500, 900, 0, 800, 100, 100, 0};
        double[] lower = {700, 1500, 0, 400, 500, 1300, 1000, 2500, 100, 1200, 800};
        double[] upper = {700, 1500, 300, 900, 1100, 2200, NEVER, NEVER, NEVER, 1300, 1300};
        double[] weight = {1, 1, 1, 2, 1, 1, 3, 1, 1, 1, 1};
        double[] partB = {0, 1, 0, 1, 0, 1, 0, 1, 1, 0, 1};
        double[] loads = {1.5, 2.5, 3.5, 1, 2, 1.2, 2.2, 3.1, 9, 0.4, 0.9};
        double densities = 0;
        for (int i = 0; i < entry.length; i++) {
            double factor = Math.exp(-beta * partB[i]);
            densities += lower[i] == upper[i] ? weight[i] * -beta * partB[i] : 0;
            entry[i] *= factor;
            lower[i] *= factor;
            upper[i] *= factor;
        }
        return WEIBULL.fit(CovariateLives.of(entry, lower, upper, weight).withColumn("load", loads))
                        .logLikelihood()
                + densities;
    }

    @Test
    void aWeightIsTheLifeSeenThatOften() {
        CovariateLives lives = SimulatedFleet.of(17, 500);
        RegressionFit twice =
                WEIBULL.fit(lives.rows(IntStream.range(0, 1000).map(i -> i / 2).toArray()));
        RegressionFit once = WEIBULL.fit(lives);
        assertThat(twice.logLikelihood()).isCloseTo(2 * once.logLikelihood(), within(1e-7));
        assertThat(twice.coefficient(Part.LOG_SCALE, "heat").error())
                .isCloseTo(once.coefficient(Part.LOG_SCALE, "heat").error() / Math.sqrt(2), within(1e-9));
    }

    @Test
    void criteriaCountParametersAndFailures() {
        RegressionFit fit = WEIBULL.fit(SimulatedFleet.everyKind());
        assertThat(fit.parameters()).isEqualTo(4);
        assertThat(fit.aic()).isCloseTo(8 - 2 * fit.logLikelihood(), within(1e-12));
        assertThat(fit.failures()).isEqualTo(9);
        assertThat(fit.bic()).isCloseTo(4 * Math.log(9) - 2 * fit.logLikelihood(), within(1e-12));
    }

    /** 95 % limits by cluster cover a covariate that vehicles share, where lives within a vehicle are alike; plain ones do not. */
    @Test
    void errorsByClusterCoverWherePlainOnesDoNot() {
        Random random = new Random(20261125);
        int plain = 0;
        int robust = 0;
        for (int study = 0; study < 200; study++) {
            int vehicles = 100;
            double[] age = new double[4 * vehicles];
            double[] cold = new double[age.length];
            int[] vehicle = new int[age.length];
            for (int v = 0; v < vehicles; v++) {
                double alike = 0.6 * random.nextGaussian();
                for (int i = 4 * v; i < 4 * v + 4; i++) {
                    vehicle[i] = v;
                    cold[i] = v % 2;
                    age[i] = Math.exp(7 - 0.3 * cold[i] + alike + 0.4 * random.nextGaussian());
                }
            }
            double[] weight = new double[age.length];
            Arrays.fill(weight, 1);
            CovariateLives lives = CovariateLives.of(new double[age.length], age, age, weight)
                    .withClusters(vehicle)
                    .withColumn("cold", cold);
            LifeRegression regression = LifeRegression.of(LifeFamily.LOGNORMAL);
            plain += covers(regression.fit(lives)) ? 1 : 0;
            robust += covers(regression.with(Errors.BY_CLUSTER).fit(lives)) ? 1 : 0;
        }
        assertThat(robust).isBetween(180, 199);
        assertThat(plain).isLessThan(170);
    }

    private static boolean covers(RegressionFit fit) {
        Coefficient cold = fit.coefficient(Part.LOG_SCALE, "cold");
        return cold.lower() < -0.3 && cold.upper() > -0.3;
    }

    @Test
    void whatCannotBeAskedIsSaid() {
        CovariateLives lives = SimulatedFleet.everyKind();
        assertThatThrownBy(() -> WEIBULL.withShapeOn("rust").fit(lives)).hasMessageContaining("rust");
        assertThatThrownBy(() -> LifeRegression.of(LifeFamily.EXPONENTIAL).withShapeOn("load"))
                .hasMessageContaining("no shape");
        assertThatThrownBy(() -> WEIBULL.with(Errors.BY_CLUSTER).fit(lives)).hasMessageContaining("withClusters");
        assertThatThrownBy(() -> WEIBULL.fit(lives).at(1)).hasMessageContaining("[partB, load]");
        assertThatThrownBy(() -> lives.withColumn("load", new double[11])).hasMessageContaining("name of its own");
        assertThatThrownBy(() -> lives.withColumn("salt", new double[] {0, 1, Double.NaN, 0, 0, 0, 0, 0, 0, 0, 0}))
                .hasMessageContaining("row 2");
        assertThatThrownBy(
                        () -> CovariateLives.of(new double[] {5}, new double[] {4}, new double[] {9}, new double[] {1}))
                .hasMessageContaining("row 0");
        ProfileLimits limits = ProfileLimits.of(lives, WEIBULL.fit(lives));
        assertThatThrownBy(() -> limits.coefficient(Part.LOG_SCALE, Coefficient.CONSTANT))
                .hasMessageContaining("at a point");
    }
}
