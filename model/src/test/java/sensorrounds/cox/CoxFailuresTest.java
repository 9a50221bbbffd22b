package sensorrounds.cox;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sensorrounds.cox.CoxFit.Status;

/** The shelf of samples that have no answer: each is named, with its column, and gives no numbers. */
class CoxFailuresTest {
    private static CoxFit fit(CoxSample sample) {
        return CoxFitter.withDefaults().fit(sample);
    }

    private static void assertFails(CoxFit fit, Status status, String column, String words) {
        assertThat(fit.status()).as(fit.cause()).isEqualTo(status);
        assertThat(fit.column()).isEqualTo(column);
        assertThat(fit.cause()).contains(words);
        assertThatThrownBy(fit::values)
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining(status.name())
                .hasMessageContaining(words);
        assertThatThrownBy(fit::coefficients).isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(() -> fit.hazard(new double[fit.sample().columns().size()]))
                .isInstanceOf(IllegalStateException.class);
    }

    @Test
    void noRows() {
        assertFails(fit(CoxFixtures.of(new double[0], new int[0], new double[0])), Status.NO_ROWS, "", "no rows");
    }

    @Test
    void noFailures() {
        assertFails(
                fit(CoxFixtures.of(new double[] {1, 2}, new int[] {0, 0}, new double[] {0, 1})),
                Status.NO_FAILURES,
                "",
                "none of 2 rows");
    }

    @Test
    void aConstantColumn() {
        assertFails(
                fit(CoxFixtures.of(new double[] {1, 2, 3}, new int[] {1, 1, 0}, new double[] {0.1, 0.1, 0.1})),
                Status.CONSTANT_COLUMN,
                "x",
                "does not vary");
    }

    @Test
    void aColumnConstantWithinEachStratum() {
        assertFails(
                fit(CoxFixtures.of(new double[] {1, 2, 3, 4}, new int[] {1, 1, 1, 0}, new double[] {0, 1, 0, 1})
                        .withStrata(new int[] {0, 1, 0, 1})),
                Status.CONSTANT_COLUMN,
                "x",
                "does not vary");
    }

    @Test
    void theOnlyUnitAtRiskFails() {
        assertFails(
                fit(CoxFixtures.of(new double[] {1, 9}, new int[] {0, 1}, new double[] {0, 1})),
                Status.CONSTANT_COLUMN,
                "x",
                "at risk at any failure");
    }

    @Test
    void aColumnThatIsTheSumOfTwoOthers() {
        CoxSample fleet = CoxFixtures.fleet(3, 300);
        double[][] x = new double[300][];
        for (int i = 0; i < 300; i++) {
            double cold = fleet.covariate(i, 0);
            double late = fleet.covariate(i, 1);
            x[i] = new double[] {cold, late, 3 * cold - late + 5};
        }
        CoxSample sample = CoxSample.of(
                List.of("cold", "late build", "both"),
                CoxFitterTest.entries(fleet),
                CoxFitterTest.exits(fleet),
                CoxFitterTest.failed(fleet),
                x);
        assertFails(fit(sample), Status.COLLINEAR, "both", "[cold, late build]");
    }

    @Test
    void everyFailureInOneGroup() {
        assertFails(
                fit(CoxFixtures.of(
                        new double[] {1, 2, 3, 4, 5, 6}, new int[] {1, 0, 1, 0, 1, 0}, new double[] {1, 0, 1, 0, 1, 0
                        })),
                Status.SEPARATION,
                "x",
                "the highest x");
        assertFails(
                fit(CoxFixtures.of(new double[] {1, 2, 3, 4, 5, 6}, new int[] {1, 0, 1, 0, 1, 0}, new double[] {
                    -3, 8, -1, 8, 0.5, 8
                })),
                Status.SEPARATION,
                "x",
                "the lowest x");
    }

    @Test
    void aGroupWithoutAnyFailureBesideASoundColumn() {
        CoxSample fleet = CoxFixtures.fleet(5, 600);
        double[][] x = new double[600][];
        boolean[] failed = CoxFitterTest.failed(fleet);
        for (int i = 0; i < 600; i++) {
            x[i] = new double[] {fleet.covariate(i, 0), i % 9 == 0 ? 1 : 0};
            failed[i] &= i % 9 != 0;
        }
        CoxSample sample = CoxSample.of(
                List.of("cold", "new part"), CoxFitterTest.entries(fleet), CoxFitterTest.exits(fleet), failed, x);
        assertFails(fit(sample), Status.SEPARATION, "new part", "the lowest new part");
    }

    @Test
    void twoColumnsThatSeparateOnlyTogether() {
        Random random = new Random(1);
        int n = 200;
        double[] exit = new double[n];
        boolean[] failed = new boolean[n];
        double[][] x = new double[n][];
        for (int i = 0; i < n; i++) {
            double a = random.nextGaussian();
            double b = random.nextGaussian();
            x[i] = new double[] {a, b};
            // The higher the sum the sooner it fails.
            exit[i] = 1000 - 100 * (a + b);
            failed[i] = true;
        }
        CoxFit fit = fit(CoxSample.of(List.of("a", "b"), new double[n], exit, failed, x));
        assertFails(fit, Status.SEPARATION, "a and b", "the highest combination");
    }

    @Test
    void aStrongEffectIsNotSeparation() {
        // One failure out of order is enough for a finite coefficient.
        int n = 60;
        double[] exit = new double[n];
        int[] failed = new int[n];
        double[] x = new double[n];
        for (int i = 0; i < n; i++) {
            exit[i] = i + 1;
            failed[i] = 1;
            x[i] = i == 30 ? 5 : n - i;
        }
        CoxFit fit = fit(CoxFixtures.of(exit, failed, x));
        assertThat(fit.status()).as(fit.cause()).isEqualTo(Status.CONVERGED);
        assertThat(fit.values()[0]).isGreaterThan(0.1);
    }

    @Test
    void rowsThatCannotBe() {
        assertThatThrownBy(() -> CoxFixtures.of(new double[] {1, 0}, new int[] {1, 1}, new double[] {0, 1}))
                .hasMessageContaining("row 1")
                .hasMessageContaining("exit 0.0");
        assertThatThrownBy(() -> CoxFixtures.of(new double[] {1, 2}, new int[] {1, 1}, new double[] {0, Double.NaN}))
                .hasMessageContaining("row 1, column x")
                .hasMessageContaining("no number");
        CoxSample sample = CoxFixtures.of(new double[] {1, 2}, new int[] {1, 1}, new double[] {0, 1});
        assertThatThrownBy(() -> sample.withWeights(new double[] {1, 0})).hasMessageContaining("row 1 has weight 0.0");
        assertThatThrownBy(() -> sample.withStrata(new int[1])).hasMessageContaining("1 strata for 2 rows");
        assertThatThrownBy(() -> CoxSample.of(
                        List.of("x", "x"), new double[1], new double[] {1}, new boolean[1], new double[][] {{1, 2}}))
                .hasMessageContaining("no two of one name");
    }

    @Test
    void nothingIsToldBeyondTheData() {
        CoxFit fit = fit(CoxFixtures.fleet(2, 500));
        PredictedHazard hazard = fit.hazard(new double[] {0, 0});
        assertThatThrownBy(() -> hazard.at(hazard.to() + 1)).hasMessageContaining("known from age 0 to");
        assertThatThrownBy(() -> fit.hazard(new double[] {0, 0}, 9)).hasMessageContaining("stratum 9");
        assertThatThrownBy(() -> fit.hazard(new double[] {0})).hasMessageContaining("1 covariates for the columns");
    }
}
