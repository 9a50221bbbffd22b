package sensorrounds.coverage;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/**
 * The quick part of docs/coverage.md: 200 seeded fleets. A share of 200 is known to 1.5 points, so right limits lie in
 * 90.5-99.5 % by three standard errors; errors that leave the likeness of set-mates out lie below.
 */
class CoverageTest {
    private static final double LEAST = 0.905;
    private static final double MOST = 0.995;

    @Test
    void kaplanMeierNelsonAalenAndHazardByBands() {
        Tallies curves = CurveCoverage.curves(200, 200);
        assertThat(curves.share("S(4) | Kaplan-Meier, LOG_LOG")).isBetween(LEAST, MOST);
        assertThat(curves.share("S(8) | Kaplan-Meier, LOG_LOG")).isBetween(LEAST, MOST);
        assertThat(curves.share("H(6) | Nelson-Aalen, log")).isBetween(LEAST, MOST);
        assertThat(CurveCoverage.bands(200, 200).share("S(6) | hazard by bands, log H"))
                .isBetween(LEAST, MOST);
    }

    @Test
    void causes() {
        assertThat(CauseCoverage.study(200, 400).share("battery by 6 | log(-log)"))
                .isBetween(LEAST, MOST);
    }

    @Test
    void errorsByVehicleHoldWhereErrorsByLifeDoNot() {
        Tallies tallies = ClusterCoverage.study(200, 100);

        assertThat(tallies.share("cold depot (by vehicle) | BY_CLUSTER")).isBetween(LEAST, MOST);
        assertThat(tallies.share("cold depot (by vehicle) | INFORMATION")).isLessThan(LEAST);
    }

    @Test
    void meansOfEventsHoldWherePoissonErrorsDoNot() {
        Tallies tallies = EventCoverage.study(200, 100);

        assertThat(tallies.share("M(4) | robust, LOG")).isBetween(LEAST, MOST);
        assertThat(tallies.share("M(4) | as if Poisson, for contrast")).isLessThan(LEAST);
    }
}
