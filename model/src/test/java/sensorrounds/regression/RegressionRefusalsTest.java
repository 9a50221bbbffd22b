package sensorrounds.regression;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A shelf of inputs that break maximisers: each has its name, its column where one is to blame, and no coefficients. */
class RegressionRefusalsTest {
    private static final double NEVER = Double.POSITIVE_INFINITY;
    private static final LifeRegression WEIBULL = LifeRegression.of(LifeFamily.WEIBULL);
    private static final CovariateLives FLEET = SimulatedFleet.of(1, 300);

    private static CovariateLives lives(double[]... rows) {
        double[][] columns = new double[4][rows.length];
        for (int i = 0; i < rows.length; i++) {
            for (int j = 0; j < 3; j++) {
                columns[j][i] = rows[i][j];
            }
            columns[3][i] = 1;
        }
        return CovariateLives.of(columns[0], columns[1], columns[2], columns[3]);
    }

    private static void refused(CovariateLives lives, RegressionStatus status, String column, String words) {
        RegressionFit fit = WEIBULL.fit(lives);
        assertThat(fit.status()).as(fit.cause()).isEqualTo(status);
        assertThat(fit.column().orElse("")).isEqualTo(column);
        assertThat(fit.cause()).contains(words);
        assertThatThrownBy(fit::coefficients).hasMessageContaining(status.name());
        assertThatThrownBy(() -> fit.at(0)).isInstanceOf(IllegalStateException.class);
    }

    @Test
    void tooLittle() {
        refused(lives(), RegressionStatus.NO_LIVES, "", "no lives");
        double[] leftAtOnce = {50, 50, NEVER};
        refused(lives(leftAtOnce, leftAtOnce), RegressionStatus.EMPTY_WINDOWS, "", "on the day it entered");
        refused(lives(new double[] {0, 50, NEVER}), RegressionStatus.NO_FAILURES, "", "lower bound");
        refused(
                lives(new double[] {0, 50, 50}, new double[] {0, 90, NEVER}),
                RegressionStatus.ONE_FAILURE,
                "",
                "single failure");
        // One failure does determine the one parameter of an exponential law.
        assertThat(LifeRegression.of(LifeFamily.EXPONENTIAL)
                        .fit(lives(new double[] {0, 50, 50}, new double[] {0, 90, NEVER}))
                        .at()
                        .scale()
                        .value())
                .isCloseTo(140, org.assertj.core.api.Assertions.within(1e-9));
    }

    @Test
    void columnsThatFollowFromOthers() {
        int n = FLEET.size();
        double[] constant = new double[n];
        Arrays.fill(constant, 7);
        refused(FLEET.withColumn("tyres", constant), RegressionStatus.COLLINEAR_COLUMN, "tyres", "constant");
        double[] some = IntStream.range(0, n).mapToDouble(i -> i % 5).toArray();
        double[] twice = Arrays.stream(some).map(x -> 3 - 2 * x).toArray();
        refused(
                FLEET.withColumn("door", some).withColumn("window", twice),
                RegressionStatus.COLLINEAR_COLUMN,
                "window",
                "follows from");
        double[] a = IntStream.range(0, n).mapToDouble(i -> i % 3 == 0 ? 1 : 0).toArray();
        double[] b = IntStream.range(0, n).mapToDouble(i -> i % 3 == 1 ? 1 : 0).toArray();
        double[] c = IntStream.range(0, n).mapToDouble(i -> i % 3 == 2 ? 1 : 0).toArray();
        refused(
                FLEET.withColumn("front", a).withColumn("rear", b).withColumn("spare", c),
                RegressionStatus.COLLINEAR_COLUMN,
                "spare",
                "leave one of them out");
        // Far from 0 is not constant.
        double[] years = IntStream.range(0, n).mapToDouble(i -> 2000 + i % 7).toArray();
        assertThat(WEIBULL.fit(FLEET.withColumn("year", years)).converged()).isTrue();
    }

    @Test
    void aColumnOnlyEmptyWindowsTellApartIsConstant() {
        CovariateLives lives = lives(
                        new double[] {0, 50, 50}, new double[] {0, 70, 70}, new double[] {0, 95, NEVER}, new double[] {
                            60, 60, NEVER
                        })
                .withColumn("depot", new double[] {0, 0, 0, 1});
        refused(lives, RegressionStatus.COLLINEAR_COLUMN, "depot", "under observation");
    }

    @Test
    void groupsWithoutAFailureOrWithoutASurvivor() {
        double[] noFailure = {0, 0, 0, 0, 1, 1};
        CovariateLives lives = lives(
                new double[] {0, 50, 50},
                new double[] {0, 70, 70},
                new double[] {0, 20, 90},
                new double[] {0, 95, NEVER},
                new double[] {0, 80, NEVER},
                new double[] {10, 60, NEVER});
        refused(lives.withColumn("partB", noFailure), RegressionStatus.SEPARATED_COLUMN, "partB", "never failed");
        // Found failed on the first look after entry, whatever the look: no scale is too short.
        CovariateLives early = lives(
                new double[] {0, 50, 50},
                new double[] {0, 70, 70},
                new double[] {0, 95, NEVER},
                new double[] {30, 30, 90},
                new double[] {0, 0, 40});
        refused(
                early.withColumn("salt", new double[] {0, 0, 0, 1, 1}),
                RegressionStatus.SEPARATED_COLUMN,
                "salt",
                "no finite estimate");
    }

    /** The group without failures is what the constant stands for, so that no single column separates. */
    @Test
    void aReferenceGroupWithoutAFailure() {
        CovariateLives lives = lives(
                        new double[] {0, 50, 50},
                        new double[] {0, 70, 70},
                        new double[] {0, 60, 60},
                        new double[] {0, 85, 85},
                        new double[] {0, 90, NEVER},
                        new double[] {0, 95, NEVER})
                .withColumn("partB", new double[] {1, 1, 0, 0, 0, 0})
                .withColumn("partC", new double[] {0, 0, 1, 1, 0, 0});
        RegressionFit fit = WEIBULL.fit(lives);
        assertThat(fit.converged()).isFalse();
        assertThat(fit.status()).isIn(RegressionStatus.FLAT_LIKELIHOOD, RegressionStatus.NOT_CONVERGED);
        assertThat(fit.cause()).isNotEmpty();
    }

    @Test
    void coincidentFailuresAndOneInterval() {
        double[] same = {0, 400, 400};
        refused(lives(same, same, same), RegressionStatus.FLAT_LIKELIHOOD, "", "no finite maximum");
        double[] interval = {0, 100, 800};
        refused(lives(interval, interval, interval), RegressionStatus.FLAT_LIKELIHOOD, "", "no finite maximum");
    }

    @ParameterizedTest
    @EnumSource(value = LifeFamily.class, mode = EnumSource.Mode.EXCLUDE, names = "GENERALISED_GAMMA")
    void wildScalesConverge(LifeFamily family) {
        double[] age = {1e-7, 3e-7, 2e-7, 9e-7, 4e-7, 6e-7, 5e-7, 2.5e-7};
        double[] upper = {1e-7, 3e-7, 2.2e-7, NEVER, 4e-7, NEVER, 5e-7, 2.5e-7};
        double[] weight = {1, 1e5, 1, 1e6, 2e5, 1, 1e5, 1e5};
        RegressionFit fit = LifeRegression.of(family)
                .fit(CovariateLives.of(new double[8], age, upper, weight)
                        .withColumn("load", new double[] {1e12, 2e12, 1e12, 2e12, 3e12, 1e12, 1.5e12, 2e12}));
        assertThat(fit.converged()).as(fit.cause()).isTrue();
    }
}
