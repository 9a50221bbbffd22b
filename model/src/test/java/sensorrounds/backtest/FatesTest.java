package sensorrounds.backtest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import sensorrounds.backtest.Fate.Ending;
import sensorrounds.history.LifeEnd;

class FatesTest {
    private static final LocalDate CUT = LocalDate.of(2025, 1, 1);

    private static LocalDate day(int days) {
        return CUT.plusDays(days);
    }

    @Test
    void aFailureLiesBetweenTheLastAnswerAndTheDayItIsKnown() {
        Fates fates = new Fates(List.of(new LifeFate("V/A/1", null, day(100), day(250), LifeEnd.FAILED)));
        assertThat(fates.of("V/A/1", CUT)).isEqualTo(new Fate(100, 250, Ending.FAILED));
        assertThat(fates.of("V/A/1", day(260))).isEqualTo(new Fate(-160, -10, Ending.FAILED));
    }

    @Test
    void onlyAFailureIsOne() {
        Fates fates = new Fates(List.of(
                new LifeFate("V/A/1", null, day(100), null, LifeEnd.IN_SERVICE),
                new LifeFate("V/B/1", null, day(100), null, LifeEnd.PREVENTIVE),
                new LifeFate("V/C/1", null, day(100), null, LifeEnd.LEFT_FLEET),
                new LifeFate("V/D/1", null, day(100), null, LifeEnd.PLACE_SUSPECTED)));
        assertThat(fates.of("V/A/1", CUT)).isEqualTo(new Fate(100, Plant.NEVER, Ending.IN_SERVICE));
        assertThat(fates.of("V/B/1", CUT).ending()).isEqualTo(Ending.REPLACED_WORKING);
        assertThat(fates.of("V/C/1", CUT).ending()).isEqualTo(Ending.OTHER);
        assertThat(fates.of("V/D/1", CUT).failed()).isFalse();
        assertThat(fates.of("V/E/1", CUT).ending()).isEqualTo(Ending.NOT_FOUND);
    }

    @Test
    void aSensorThatWentToAnotherVehicleIsFollowed() {
        Fates fates = new Fates(List.of(
                new LifeFate("V/A/1", null, day(-10), null, LifeEnd.MOVED),
                new LifeFate("W/A/1", "V/A/1", day(60), null, LifeEnd.MOVED),
                new LifeFate("X/A/1", "W/A/1", day(90), day(130), LifeEnd.FAILED)));
        assertThat(fates.of("V/A/1", CUT)).isEqualTo(new Fate(90, 130, Ending.FAILED));
        Fates gone = new Fates(List.of(new LifeFate("V/A/1", null, day(-10), null, LifeEnd.MOVED)));
        assertThat(gone.of("V/A/1", CUT)).isEqualTo(new Fate(-10, Plant.NEVER, Ending.OTHER));
    }

    @Test
    void aFateInDisorderIsRefused() {
        assertThatThrownBy(() -> new Fate(10, 10, Ending.FAILED))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("failed by day 10.0 and worked on day 10");
    }

    /** Over two years and a half: a year to learn, a year ahead and half a year to find out leave room for one more cut. */
    @Test
    void cutsLeaveTimeBeforeAndAfter() {
        BacktestSettings settings = BacktestSettings.defaults();
        LocalDate first = LocalDate.of(2022, 1, 1);
        assertThat(settings.cutsBetween(first, first.plusDays(909))).isEmpty();
        assertThat(settings.cutsBetween(first, first.plusDays(910))).containsExactly(first.plusDays(365));
        assertThat(settings.cutsBetween(first, first.plusDays(1090)))
                .containsExactly(first.plusDays(365), first.plusDays(545));
        assertThat(settings.cutsBetween(first, first.plusDays(5000))).hasSize(4).endsWith(first.plusDays(4455));
        assertThat(settings.horizons()).hasSize(4);
        assertThat(new BacktestSettings(1, 1, Horizon.QUARTER, 1, 0).horizons())
                .containsExactly(Horizon.MONTH, Horizon.QUARTER);
        assertThat(Horizon.ofDays(91)).isEmpty();
    }
}
