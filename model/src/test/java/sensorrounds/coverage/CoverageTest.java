package sensorrounds.coverage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/**
 * The quick part of docs/coverage.md: 200 seeded fleets. A share of 200 is known to 1.5 points, so right limits lie in
 * 90.5-99.5 % by three standard errors; errors that leave the likeness of set-mates out lie below.
 */
class CoverageTest {
    private static final long SEED = 20_261_125;
    private static final double LEAST = 0.905;
    private static final double MOST = 0.995;

    @Test
    void kaplanMeierNelsonAalenAndHazardByBands() {
        Tallies curves = CurveCoverage.curves(200, 200, SEED);
        assertThat(curves.share("S(4) | Kaplan-Meier, COUNTS")).isBetween(LEAST, MOST);
        assertThat(curves.share("S(8) | Kaplan-Meier, COUNTS")).isBetween(LEAST, MOST);
        assertThat(curves.share("S(4) | Kaplan-Meier, LOG_LOG")).isBetween(LEAST, MOST);
        assertThat(curves.share("H(6) | Nelson-Aalen, as of a count")).isBetween(LEAST, MOST);
        assertThat(curves.share("median | Kaplan-Meier, inverted")).isBetween(LEAST, MOST);
        assertThat(curves.share("mean within 6 | Kaplan-Meier, as of a count")).isBetween(LEAST, MOST);
        assertThat(curves.share("mean from 2 to 6, given alive at 2 | Kaplan-Meier, as of a count"))
                .isBetween(LEAST, MOST);
        assertThat(CurveCoverage.bands(200, 200, SEED).share("S(6) | hazard by bands, log H"))
                .isBetween(LEAST, MOST);
    }

    @Test
    void causes() {
        assertThat(CauseCoverage.study(200, 400).share("battery by 6 | log(-log)"))
                .isBetween(LEAST, MOST);
    }

    @Test
    void errorsByVehicleHoldWhereErrorsByLifeDoNot() {
        Tallies tallies = ClusterCoverage.study(200, 50, SEED);

        assertThat(tallies.share("cold depot (by vehicle) | BY_CLUSTER")).isBetween(LEAST, MOST);
        assertThat(tallies.share("shape | BY_CLUSTER")).isBetween(LEAST, MOST);
        assertThat(tallies.share("shape | INFORMATION")).isLessThan(LEAST);
    }

    @Test
    void meansOfEventsHoldWherePoissonErrorsDoNot() {
        Tallies tallies = EventCoverage.study(200, 50, SEED);

        assertThat(tallies.share("M(4) | robust, LOG, few units")).isBetween(LEAST, MOST);
        assertThat(tallies.share("M(4) | as if Poisson, for contrast")).isLessThan(LEAST);
    }

    /**
     * With a mean of 1/4 the counts 0 and 1 together have chance 5/4 e^(-1/4) = .9735, 0 alone .7788: no limits that hold at least
     * 95 % hold less than the former. By hand, as the limits of a count of 0: -log(.05 / 2) exact, -log .05 by mid-P.
     */
    @Test
    void whatLimitsOfACountCanHold() {
        assertThat(CountCoverage.least(0.25)).isCloseTo(1.25 * Math.exp(-0.25), within(1e-12));
        assertThat(CountCoverage.exact(0).upper()).isCloseTo(-Math.log(0.025), within(1e-8));
        assertThat(CountCoverage.midP(0).upper()).isCloseTo(-Math.log(0.05), within(1e-8));
        for (double mean = 0.1; mean < 30; mean *= 1.3) {
            assertThat(CountCoverage.share(mean, CountCoverage::exact)).isBetween(CountCoverage.least(mean), 1.0);
            assertThat(CountCoverage.share(mean, CountCoverage::midP)).isGreaterThan(0.915);
        }
    }
}
