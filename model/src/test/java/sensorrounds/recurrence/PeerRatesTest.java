package sensorrounds.recurrence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static sensorrounds.condition.Histories.day;
import static sensorrounds.condition.Histories.episode;
import static sensorrounds.condition.Histories.visit;

import java.util.List;
import org.junit.jupiter.api.Test;
import sensorrounds.condition.Histories;
import sensorrounds.history.VehicleHistory;
import sensorrounds.visit.Warning;

class PeerRatesTest {
    private static final RecurrenceSettings SETTINGS = RecurrenceSettings.defaults();
    /** Bins of 30 days nearest to one and to three years. */
    private static final int ONE = 12;

    private static final int THREE = 37;

    private static PeerCells fleet() {
        return new PeerCells()
                .count("van", 0, ONE, 60)
                .count("van", 1, ONE, 25)
                .count("van", 2, THREE, 15)
                .count("van", 6, THREE, 4)
                .count("tractor", 0, ONE, 5)
                .count("tractor", 3, ONE, 2);
    }

    private static VehicleHistory warned() {
        return Histories.history(
                List.of(),
                List.of(visit("2025-08-01", Warning.SYSTEM_FAULT), visit("2026-02-01", Warning.SYSTEM_FAULT)),
                List.of(
                        episode(Warning.SYSTEM_FAULT, "2025-08-01", "2025-08-01", 1, true, false),
                        episode(Warning.LOW_PRESSURE, "2025-11-01", "2025-11-01", 4, true, false),
                        episode(Warning.MESSAGE, "2026-02-01", "2026-02-01", 0, true, false),
                        episode(Warning.SYSTEM_FAULT, "2026-09-01", "2026-09-01", 0, true, false)),
                List.of());
    }

    /** Two episodes and one return by the day; low pressure and what comes later do not count; 365 days are 12 bins. */
    @Test
    void cellsCountSystemWarningsUpToTheDay() {
        PeerCells cells = new PeerCells().add(warned(), day("2026-08-01"));
        assertThat(cells.vehicles()).containsOnlyKeys(new PeerCells.Key("van", 3, 12));
        assertThat(new PeerCells().add(warned(), day("2025-07-31")).vehicles()).isEmpty();
        assertThat(new PeerCells().add(warned(), day("2025-08-02")).vehicles())
                .containsOnlyKeys(new PeerCells.Key("van", 2, 1));
    }

    @Test
    void anySplitMergedInAnyOrderGivesTheSameCells() {
        PeerCells a = new PeerCells().count("van", 1, 12, 3).count("bus", 0, 2, 1);
        PeerCells b = new PeerCells().count("van", 1, 12, 4);
        PeerCells whole = new PeerCells().count("bus", 0, 2, 1).count("van", 1, 12, 7);
        assertThat(new PeerCells().merge(a).merge(b)).isEqualTo(whole);
        assertThat(new PeerCells().merge(b).merge(a)).isEqualTo(whole);
        assertThat(new PeerCells().merge(a)).isNotEqualTo(whole);
    }

    @Test
    void aSmallClassStandsOnAllVehicles() {
        PeerRates rates = PeerRates.fit(fleet(), SETTINGS);
        assertThat(rates.law("van").cohort()).isEqualTo("van");
        assertThat(rates.law("van").status()).isEqualTo(PeerRates.Status.FITTED);
        assertThat(rates.law("tractor").cohort()).isEqualTo(PeerRates.ALL);
        assertThat(rates.law(null).vehicles()).isEqualTo(111);
    }

    /** The rate lies between the peers' and what was counted, and more warnings in the same time make a worse vehicle. */
    @Test
    void rateIsShrunkToThePeers() {
        PeerRates rates = PeerRates.fit(fleet(), SETTINGS);
        PeerRates.Law van = rates.law("van");
        PeerRates.Shrunk s = rates.shrunk("van", 5, 2);
        assertThat(s.perYear()).isBetween(van.meanPerYear(), 2.5);
        assertThat(s.probabilityAbovePeers())
                .isGreaterThan(rates.shrunk("van", 2, 2).probabilityAbovePeers())
                .isGreaterThan(0.8);
        assertThat(rates.shrunk("van", 0, 5).probabilityAbovePeers()).isLessThan(0.2);
    }

    /** Where the shape is declared the posterior is that of the gamma-Poisson pair: (k + y) / (k / m + t). */
    @Test
    void aDeclaredShapeIsShrunkByTheConjugateLaw() {
        PeerRates rates = PeerRates.fit(new PeerCells().count("van", 2, ONE, 3), SETTINGS);
        PeerRates.Law law = rates.law("van");
        assertThat(rates.shrunk("van", 5, 2).perYear()).isCloseTo((1 + 5) / (1 / law.meanPerYear() + 2), within(1e-12));
    }

    /** Of many vehicles whose rates are gamma, what the laws around it say is what the gamma law says. */
    @Test
    void whereRatesAreGammaTheGammaLawComesOut() {
        // Negative binomial counts of 100,000 vehicles in ten bins: shape 2, mean 0.5 a year.
        PeerCells cells = new PeerCells();
        double t = 10 * 30 / 365.25;
        double chance = Math.pow(2 / (2 + 0.5 * t), 2);
        for (int y = 0; y < 12; y++) {
            cells.count("van", y, 10, Math.round(100_000 * chance));
            chance *= (2 + y) / (y + 1.0) * (0.5 * t) / (2 + 0.5 * t);
        }
        PeerRates rates = PeerRates.fit(cells, SETTINGS);
        for (int y : new int[] {0, 1, 3, 5}) {
            GammaDistribution exact = new GammaDistribution(2 + y, 2 / 0.5 + t);
            PeerRates.Shrunk s = rates.shrunk("van", y, t);
            assertThat(s.perYear()).as("rate, %d", y).isCloseTo(exact.mean(), within(0.1 * exact.mean()));
            assertThat(s.probabilityAbovePeers()).as("above, %d", y).isCloseTo(exact.above(0.5), within(0.05));
        }
    }

    @Test
    void equalCountsGiveEqualLaws() {
        assertThat(PeerRates.fit(fleet(), SETTINGS).shrunk("van", 3, 2))
                .isEqualTo(PeerRates.fit(fleet(), SETTINGS).shrunk("van", 3, 2));
    }

    /** With an exponential law of rates and nothing seen for no time, P(rate > mean) = 1/e. */
    @Test
    void withoutExposureThePeersAreAllThatIsKnown() {
        PeerRates rates = PeerRates.fit(new PeerCells().count("van", 2, ONE, 3), SETTINGS);
        assertThat(rates.law("van").status()).isEqualTo(PeerRates.Status.DECLARED_SHAPE);
        assertThat(rates.shrunk("van", 0, 1e-12).probabilityAbovePeers()).isCloseTo(Math.exp(-1), within(1e-9));
        assertThat(rates.law("van").note()).contains("too few").contains("3 vehicles with 6 events");
    }

    @Test
    void aFleetWithoutWarningsSaysSo() {
        PeerRates rates = PeerRates.fit(new PeerCells().count("van", 0, ONE, 300), SETTINGS);
        assertThat(rates.law("van").status()).isEqualTo(PeerRates.Status.NO_EVENTS);
        assertThat(rates.law("van").meanPerYear()).isCloseTo(0.5 / (300 * 12 * 30 / 365.25), within(1e-12));
        assertThatThrownBy(() -> rates.shrunk("van", 1, 0)).hasMessageContaining("years > 0");
    }

    /** Most vehicles never warn, and a few do often, which no gamma law describes. */
    @Test
    void aFewBadVehiclesAmongManyThatNeverWarn() {
        PeerCells cells = new PeerCells().count("van", 0, ONE, 3000);
        for (int y = 6; y < 14; y++) {
            cells.count("van", y, ONE, 20);
        }
        PeerRates rates = PeerRates.fit(cells, SETTINGS);
        PeerRates.Law law = rates.law("van");
        assertThat(law.status()).isEqualTo(PeerRates.Status.FITTED);
        assertThat(rates.shrunk("van", 8, 1).probabilityAbovePeers()).isGreaterThan(0.999);
        assertThat(rates.shrunk("van", 0, 1).perYear()).isLessThan(0.05);
    }
}
