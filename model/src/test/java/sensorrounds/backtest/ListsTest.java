package sensorrounds.backtest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Index.atIndex;
import static sensorrounds.backtest.Plant.NEVER;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import sensorrounds.outlook.LastReport;
import sensorrounds.replacement.Advice;

class ListsTest {
    /**
     * A hundred sensors, one in ten of which fails. The engine lists just these; their chances are the highest; they are the
     * youngest; half of them reported low, as did ten others; the thirty oldest are seven years old.
     */
    private static List<Judged> fleet() {
        List<Judged> fleet = new ArrayList<>();
        for (int i = 0; i < 100; i++) {
            boolean fails = i < 10;
            fleet.add(Plant.judged(
                    i,
                    fails ? 0.9 : 0.01,
                    0.1,
                    i >= 70 ? 2600 : fails ? i : 1000,
                    i < 5 || i >= 90 ? LastReport.LOW_BATTERY : LastReport.SOUND,
                    fails ? Advice.REPLACE_NOW : i == 50 ? Advice.READ_FIRST : Advice.KEEP,
                    fails ? 20 : 400,
                    fails ? 25 : NEVER));
        }
        return fleet;
    }

    private static ListRow row(ListKind list, ListRule rule) {
        return Lists.row(Plant.CUT, List.of(KnownBy.of(fleet(), Horizon.YEAR)), list, rule, Horizon.YEAR);
    }

    private static void expect(ListRule rule, double precision, double captured, double lift) {
        ListRow row = row(ListKind.REPLACE, rule);
        assertThat(row.sensors()).isCloseTo(10, within(1e-12));
        assertThat(row.precision().value()).isCloseTo(precision, within(1e-12));
        assertThat(row.failures()).isCloseTo(10 * precision, within(1e-12));
        assertThat(row.captured()).isCloseTo(captured, within(1e-12));
        assertThat(row.lift()).isCloseTo(lift, within(1e-12));
    }

    @Test
    void theListOfASeerHitsEveryFailureAndLiftsTenfold() {
        expect(ListRule.ENGINE, 1, 1, 10);
        expect(ListRule.HIGHEST_CHANCE, 1, 1, 10);
    }

    @Test
    void aListThatLooksTheWrongWayHitsNone() {
        expect(ListRule.OLDEST_FIRST, 0, 0, 0);
    }

    @Test
    void drawingAmongSensorsThatARuleCannotTellApartGivesTheirAverage() {
        expect(ListRule.AT_RANDOM, 0.1, 0.1, 1);
        expect(ListRule.AT_SEVEN_YEARS, 0, 0, 0);
        // Fifteen reported low, five of which fail.
        expect(ListRule.LAST_REPORT_WEAK, 1 / 3.0, 1 / 3.0, 10 / 3.0);
    }

    /**
     * By hand: the ten that fail between day 20 and day 25 cost 200 each, and were of use for 22.5 days at 0.05; the engine's
     * stops cost 10 a sensor. A sensor that lives through the year was of use for 365 days.
     */
    @Test
    void theMoneyIsWhatFailuresCostLessTheDaysOfUseLost() {
        assertThat(row(ListKind.REPLACE, ListRule.ENGINE).saving().value()).isCloseTo(200 - 22.5 * 0.05, within(1e-9));
        assertThat(row(ListKind.REPLACE, ListRule.ENGINE).stops()).isCloseTo(100, within(1e-9));
        assertThat(row(ListKind.REPLACE, ListRule.HIGHEST_CHANCE).saved())
                .isCloseTo(10 * (200 - 22.5 * 0.05), within(1e-9));
        assertThat(row(ListKind.REPLACE, ListRule.OLDEST_FIRST).saving().value())
                .isCloseTo(-365 * 0.05, within(1e-9));
    }

    @Test
    void thePartsOfTheListAddUpToIt() {
        ListRow all = row(ListKind.REPLACE, ListRule.ENGINE);
        double sensors = 0;
        double saved = 0;
        for (ListKind part : ListKind.parts()) {
            ListRow row = row(part, ListRule.ENGINE);
            sensors += row.sensors();
            saved += row.saved();
        }
        assertThat(sensors).isEqualTo(all.sensors());
        assertThat(saved).isCloseTo(all.saved(), within(1e-9));
    }

    /** Of two sensors to be read first the likelier is replaced whatever the reading says: the list is longer by one, for every rule. */
    @Test
    void aSensorReadFirstIsOnTheListWhenItIsReplacedInAnyCase() {
        List<Judged> fleet = fleet();
        fleet.set(20, Plant.judged(20, 0.8, 0.1, 1000, LastReport.SOUND, Advice.READ_FIRST, 20, 25));
        List<KnownBy> known = List.of(KnownBy.of(fleet, Horizon.YEAR));
        for (ListRule rule : List.of(ListRule.ENGINE, ListRule.HIGHEST_CHANCE)) {
            ListRow row = Lists.row(Plant.CUT, known, ListKind.REPLACE, rule, Horizon.YEAR);
            assertThat(row.sensors()).isEqualTo(11);
            assertThat(row.failures()).isCloseTo(11, within(1e-9));
        }
        assertThat(Lists.row(Plant.CUT, known, ListKind.REPLACE_AFTER_READING, ListRule.ENGINE, Horizon.YEAR)
                        .sensors())
                .isEqualTo(1);
    }

    @Test
    void aRuleThatFindsFewerHasAShorterList() {
        List<Judged> fleet = fleet();
        double[] shares = Lists.shares(fleet.subList(0, 80), ListKind.REPLACE, ListRule.LAST_REPORT_WEAK, Horizon.YEAR);
        assertThat(shares).contains(1, atIndex(4));
        assertThat(Arrays.stream(shares).sum()).isEqualTo(5);
    }

    @Test
    void whatIsToBeSeenToNowHoldsSensorsToBeReadFirst() {
        assertThat(row(ListKind.SEE_TO_NOW, ListRule.ENGINE).sensors()).isEqualTo(11);
        assertThat(row(ListKind.ONE_IN_TWENTY, ListRule.HIGHEST_CHANCE).sensors())
                .isCloseTo(5, within(1e-12));
        assertThat(ListKind.ONE_IN_TWENTY.rules()).doesNotContain(ListRule.ENGINE);
    }

    @ParameterizedTest
    @EnumSource(ListRule.class)
    void noListIsLongerThanTheEngines(ListRule rule) {
        double[] shares = Lists.shares(fleet(), ListKind.REPLACE, rule, Horizon.YEAR);
        assertThat(Arrays.stream(shares).sum()).isLessThanOrEqualTo(10 + 1e-9);
        assertThat(Arrays.stream(shares).boxed()).allMatch(s -> s >= 0 && s <= 1);
    }
}
