package sensorrounds.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Test;

class SpreadPosteriorTest {
    /** Ten pumps: Gaver and O'Muircheartaigh (1987), Technometrics 29:1; data as printed in the OpenBUGS manual. */
    private static final double[] FAILURES = {5, 1, 5, 14, 3, 19, 1, 1, 4, 22};

    private static final double[] HOURS = {94.3, 15.7, 62.9, 126, 5.24, 31.4, 1.05, 1.05, 2.1, 10.5};

    /**
     * Reference: R 4.2.2, dnbinom and pgamma summed over 1,701 log shapes from -5 to 12 and 2,801 log means, flat in shape^-1/2 and
     * in the log of the mean. Five points instead of 2,801 are good to half a percent.
     */
    @Test
    void tenPumpsAsByADenseGrid() {
        SpreadPosterior posterior = CohortSpread.posterior(FAILURES, HOURS);

        double[][] limits = {
            {0, 0.021100105, 0.118666471},
            {1, 0.0081783202, 0.305232339},
            {6, 0.0689006806, 2.61320012},
            {9, 1.21710385, 2.87048167}
        };
        for (double[] pump : limits) {
            int i = (int) pump[0];
            assertThat(posterior.quantile(0.025, FAILURES[i], HOURS[i])).isCloseTo(pump[1], withinPercentage(0.5));
            assertThat(posterior.quantile(0.975, FAILURES[i], HOURS[i])).isCloseTo(pump[2], withinPercentage(0.5));
        }
        double deviation = posterior.laws().stream()
                .mapToDouble(law -> law.weight() / Math.sqrt(law.shape()))
                .sum();
        assertThat(deviation).isCloseTo(1.264398, withinPercentage(0.5));
        assertThat(posterior.below(0.5, 0, 0)).isCloseTo(0.5718619, withinPercentage(0.5));
    }

    /** Very large cohorts: what is left open of their spread does not matter to them, and each stands on its own failures. */
    @Test
    void cohortsOfThousandsOfFailuresStandOnTheirOwn() {
        double[] failures = {40_000, 10_000, 90_000, 20_000};
        double[] expected = {20_000, 20_000, 20_000, 20_000};

        SpreadPosterior posterior = CohortSpread.posterior(failures, expected);

        for (int i = 0; i < failures.length; i++) {
            double half = 1.959963984540054 / Math.sqrt(failures[i]);
            double own = failures[i] / expected[i];
            assertThat(posterior.quantile(0.975, failures[i], expected[i]))
                    .isCloseTo(own * Math.exp(half), withinPercentage(0.05));
            assertThat(posterior.quantile(0.025, failures[i], expected[i]))
                    .isCloseTo(own * Math.exp(-half), withinPercentage(0.05));
        }
    }
}
