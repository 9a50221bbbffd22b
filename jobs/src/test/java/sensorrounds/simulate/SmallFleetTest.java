package sensorrounds.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sensorrounds.simulate.ReviewedFleet.Forecast;
import sensorrounds.simulate.SimulationSettings.Output;
import sensorrounds.survival.CohortFit;
import sensorrounds.survival.CohortLadder;

/** Fifty simulated vehicles watched for a year, with too few failures for a law: what is said of them against what then happens. */
class SmallFleetTest {
    @TempDir
    Path temp;

    /** Failures within the year to come lie within limits that are wide, and the answer says on what it rests. */
    @Test
    void aPriorAndFewFailuresGiveAnAnswerWithWideLimits() throws IOException {
        List<Forecast> forecasts = new ArrayList<>();
        // Of seeds 1 to 5 the third has five failures, enough for a law of its own.
        for (int seed : new int[] {1, 2, 4, 5}) {
            ReviewedFleet fleet = ReviewedFleet.of(
                    SimulationSettings.large(seed, 50, Output.LARGE_CSV).withYears(2), temp.resolve("fleet" + seed));
            CohortFit pool = fleet.review().estimates().fits().stream()
                    .filter(fit -> fit.cohort().equals(CohortLadder.POOL))
                    .findFirst()
                    .orElseThrow();
            assertThat(pool.failures()).isBetween(1L, 4L);
            assertThat(pool.rung()).isEqualTo("WEAK_PRIOR");
            CohortFit.Shares shares = pool.law().shares();
            assertThat(shares.prior()).isBetween(0.2, 0.9);
            assertThat(shares.own()).isCloseTo(1 - shares.prior(), within(1e-12));
            assertThat(pool.scaleUpper() / pool.scaleLower()).isBetween(2.5, 7.0);
            assertThat(pool.note())
                    .contains("a prior was declared (median life 3 to 20 years, shape 1 to 5)")
                    .contains("the prior's part of what is known is");
            forecasts.addAll(fleet.forecasts());
        }
        long seen = forecasts.stream().filter(f -> f.failsInDays() <= 365).count();
        double expected = forecasts.stream()
                .mapToDouble(f -> f.outlook().chances().p365())
                .sum();
        assertThat(seen / expected).isBetween(0.6, 1.6);
        assertThat(forecasts).allSatisfy(f -> {
            assertThat(f.outlook().chances().pHorizonUpper())
                    .isGreaterThan(1.3 * f.outlook().chances().pHorizon());
            assertThat(f.outlook().chances().pHorizonLower())
                    .isLessThan(f.outlook().chances().pHorizon());
        });
    }
}
