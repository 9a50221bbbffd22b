package sensorrounds.recurrent;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class WatchedUnitsTest {
    private static final WatchedUnits.Own NEW = WatchedUnits.Own.NOTHING;

    /** n units watched alike are n - 1 degrees, however they differ. */
    @Test
    void unitsWatchedAlikeAreTheirNumberLessOne() {
        WatchedUnits units = new WatchedUnits();
        units.enter(12, NEW);
        units.rise(0.3, 0.02);
        units.rise(0.1, 0.01);
        assertThat(units.degrees(0)).isCloseTo(11, within(1e-12));
        assertThat(units.degrees(7)).isCloseTo(11, within(1e-12));
    }

    /**
     * By hand: three units share a rise of 1 with Poisson variance 1/2, two of them a second one of the same size. Shares 2, 2, 1 and
     * variances 1, 1, 1/2. Poisson alone: (5/2)^2 / (9/4) - 1 = 16/9. With squares of 23/2 the excess is (23/2 - 5/2) / 9 = 1: 5, 5
     * and 3/2, so (23/2)^2 / (209/4) - 1 = 320/209.
     */
    @Test
    void aUnitThatLeftEarlyCountsForLess() {
        WatchedUnits units = new WatchedUnits();
        units.enter(3, NEW);
        units.rise(1, 0.5);
        units.leave(1, units.since(NEW));
        units.rise(1, 0.5);
        assertThat(units.degrees(1)).isCloseTo(16.0 / 9, within(1e-12));
        assertThat(units.degrees(11.5)).isCloseTo(320.0 / 209, within(1e-12));
    }

    /** A gap at which nothing happens changes nothing. */
    @Test
    void aUnitThatComesBackGoesOnWithWhatItHad() {
        WatchedUnits whole = new WatchedUnits();
        WatchedUnits gap = new WatchedUnits();
        for (WatchedUnits units : List.of(whole, gap)) {
            units.enter(4, NEW);
            units.rise(0.4, 0.1);
        }
        WatchedUnits.Own own = gap.since(NEW);
        gap.leave(1, own);
        gap.enter(1, own);
        for (WatchedUnits units : List.of(whole, gap)) {
            units.enter(2, NEW);
            units.rise(0.7, 0.3);
        }
        assertThat(gap.degrees(6)).isCloseTo(whole.degrees(6), within(1e-12)).isBetween(2.0, 5.0);
    }

    @Test
    void nothingIsSaidBeforeAnyEventAndOneUnitIsOneDegree() {
        WatchedUnits units = new WatchedUnits();
        units.enter(1, NEW);
        assertThat(units.degrees(0)).isNaN();
        units.rise(1, 1);
        assertThat(units.degrees(1)).isEqualTo(1);
    }
}
