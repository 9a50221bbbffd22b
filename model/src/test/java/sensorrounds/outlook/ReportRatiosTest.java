package sensorrounds.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ReportRatiosTest {
    private static final OutlookSettings SETTINGS = OutlookSettings.defaults();

    @Test
    void withoutDataThePriorStands() {
        ReportRatios ratios = ReportRatios.fit(new ReportCells(), SETTINGS);
        assertThat(ratios.all()).extracting(ReportRatios.Ratio::ratio).containsExactly(1.0, 3.0, 6.0, 8.0);
        assertThat(ratios.all()).extracting(ReportRatios.Ratio::report).containsExactly(LastReport.values());
    }

    @Test
    void observedOverExpectedIsPulledToThePriorByItsWeight() {
        ReportCells cells = new ReportCells();
        for (int i = 0; i < 6; i++) {
            cells.addWindow(LastReport.LOW_BATTERY, 90, 0.25, i < 2);
        }
        // O = 2, E = 4 x .25 + 2 x .125 = 1.25, prior 6 with weight .5: (2 + 3)/(1.25 + .5).
        ReportRatios.Ratio low = ReportRatios.fit(cells, SETTINGS).of(LastReport.LOW_BATTERY);
        assertThat(low.ratio()).isCloseTo(5 / 1.75, within(1e-9));
        // Trigamma(5) = pi^2/6 - 1 - 1/4 - 1/9 - 1/16.
        double trigamma5 = Math.PI * Math.PI / 6 - 1 - 0.25 - 1.0 / 9 - 1.0 / 16;
        assertThat(low.varLogRatio()).isCloseTo(trigamma5, within(1e-12));
        assertThat(low.landmarks()).isEqualTo(6);
    }

    /** Abramowitz and Stegun (1964), 6.4.2 and 6.4.4: trigamma(1) = pi^2/6, trigamma(1/2) = pi^2/2. */
    @Test
    void trigammaAtItsClosedForms() {
        assertThat(ReportRatios.trigamma(1)).isCloseTo(Math.PI * Math.PI / 6, within(1e-13));
        assertThat(ReportRatios.trigamma(0.5)).isCloseTo(Math.PI * Math.PI / 2, within(1e-12));
        assertThat(ReportRatios.trigamma(1e6)).isCloseTo(1e-6 + 5e-13, within(1e-18));
    }

    @Test
    void refusesAPriorThatIsNone() {
        assertThatThrownBy(() -> new OutlookSettings.Prior(0, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("mean 0.0, weight 1.0");
        assertThatThrownBy(() ->
                        new OutlookSettings(0, SETTINGS.sound(), SETTINGS.slow(), SETTINGS.low(), SETTINGS.silent()))
                .hasMessageContaining("horizon of 0 days");
    }
}
