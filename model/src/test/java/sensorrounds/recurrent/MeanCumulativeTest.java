package sensorrounds.recurrent;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MeanCumulativeTest {
    private static final MeanCumulative MCF = MeanCumulative.withDefaults();

    /** By hand: two units, the second away in (4, 8]; events at 2, 6 and 10 of the first, 10 of the second. */
    @Test
    void aUnitAwayIsNotAtRisk() {
        List<EventHistory> units = List.of(
                EventHistory.observed(0, 12, 2, 6, 10),
                EventHistory.of(List.of(new ObservationWindow(8, 12), new ObservationWindow(0, 4)), 10));
        MeanCumulativeFit fit = MCF.fit(units);
        assertThat(fit.steps()).extracting(MeanCumulativeFit.Step::atRisk).containsExactly(2L, 1L, 2L);
        assertThat(fit.steps()).extracting(MeanCumulativeFit.Step::mean).containsExactly(0.5, 1.5, 2.5);
        // At 2 the units depart by 1/4 and -1/4; at 6 the first alone cannot depart; at 10 both had one.
        assertThat(fit.steps())
                .extracting(MeanCumulativeFit.Step::variance)
                .allSatisfy(v -> assertThat(v).isCloseTo(0.125, within(1e-15)));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void theOnePassVarianceIsTheFormulas(long seed) {
        List<EventHistory> units = new ArrayList<>(RandomUnits.of(40, seed));
        units.add(EventHistory.of(
                List.of(new ObservationWindow(5, 20), new ObservationWindow(40, 90), new ObservationWindow(100, 101)),
                7,
                41,
                41,
                101));
        MeanCumulativeFit fit = MCF.fit(units);
        assertThat(fit.steps())
                .isNotEmpty()
                .allSatisfy(
                        s -> assertThat(s.variance()).isCloseTo(RandomUnits.variance(units, s.time()), within(1e-12)));
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 60, 2000})
    void countsGiveTheSameAsTheHistories(int n) {
        List<EventHistory> units = RandomUnits.of(n, 17);
        RecurrenceCells cells = new RecurrenceCells(1);
        units.forEach(u -> RandomUnits.addTo(cells, u));
        RandomUnits.same(MCF.fit(cells), MCF.fit(units));
        assertThat(cells.laplace().statistic())
                .isCloseTo(TrendTests.laplace(units, Truncation.TIME).statistic(), within(1e-12));
        assertThat(cells.robustLaplace().statistic())
                .isCloseTo(TrendTests.robustLaplace(units).statistic(), within(1e-12));
    }

    @Test
    void anySplitMergedInAnyOrderIsTheSame() {
        List<EventHistory> units = new ArrayList<>(RandomUnits.of(300, 5));
        RecurrenceCells whole = new RecurrenceCells(7);
        units.forEach(u -> RandomUnits.addTo(whole, u));
        Collections.shuffle(units, new Random(3));
        RecurrenceCells merged = new RecurrenceCells(7);
        for (int from = 0; from < units.size(); from += 70) {
            RecurrenceCells part = new RecurrenceCells(7);
            units.subList(from, Math.min(units.size(), from + 70)).forEach(u -> RandomUnits.addTo(part, u));
            merged = part.merge(merged);
        }
        assertThat(merged.merge(new RecurrenceCells(7))).isEqualTo(whole).hasSameHashCodeAs(whole);
        assertThat(MCF.fit(merged).steps()).isEqualTo(MCF.fit(whole).steps());
        assertThatThrownBy(() -> new RecurrenceCells(1).merge(whole))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("steps of 1 and 7");
    }

    /** The number of cells follows the length of time, not the number of units. */
    @Test
    void cellsDoNotGrowWithTheFleet() {
        RecurrenceCells few = new RecurrenceCells(7);
        RecurrenceCells many = new RecurrenceCells(7);
        RandomUnits.of(20_000, 1).forEach(u -> RandomUnits.addTo(few, u));
        RandomUnits.of(80_000, 2).forEach(u -> RandomUnits.addTo(many, u));
        assertThat(many.size()).isLessThan(few.size() + few.size() / 20);
    }

    @Test
    void roundingToAStepKeepsEventsInTheirWindow() {
        RecurrenceCells cells = new RecurrenceCells(7).add(6, 8, 7, 8).add(-1, 7, 7);
        MeanCumulativeFit fit = MCF.fit(cells);
        assertThat(fit.steps()).extracting(MeanCumulativeFit.Step::time).containsExactly(7.0, 14.0);
        assertThat(fit.steps()).extracting(MeanCumulativeFit.Step::atRisk).containsExactly(2L, 1L);
        assertThat(cells.exposure()).isEqualTo(10);
    }

    /** With one event at most for each unit, which then leaves, the mean number is the Nelson-Aalen cumulative hazard. */
    @Test
    void isNelsonAalenForLives() {
        List<EventHistory> lives = List.of(
                EventHistory.observed(0, 6, 6),
                EventHistory.observed(0, 7, 7),
                EventHistory.observed(0, 9),
                EventHistory.observed(0, 10, 10));
        MeanCumulativeFit fit = MCF.fit(lives);
        assertThat(fit.at(10).mean()).isCloseTo(1 / 4.0 + 1 / 3.0 + 1, within(1e-15));
    }

    /** Where units differ the Poisson error is too small: half of them have four events, half none. */
    @Test
    void theRobustErrorSeesThatUnitsDiffer() {
        List<EventHistory> units = new ArrayList<>();
        for (int i = 0; i < 50; i++) {
            units.add(EventHistory.observed(0, 100, 10 + i * .1, 30 + i * .1, 50 + i * .1, 70 + i * .1));
            units.add(EventHistory.observed(0, 100));
        }
        MeanCumulativeFit.Step last = MCF.fit(units).at(100);
        assertThat(last.mean()).isCloseTo(2, within(1e-12));
        // A unit has 4 or 0 events, so the mean of 100 has standard error 2/10; Poisson would be sqrt(200)/100.
        assertThat(last.standardError()).isCloseTo(0.2, within(1e-12));
        assertThat(last.poissonError()).isCloseTo(Math.sqrt(2) / 10, within(1e-12));
    }

    @Test
    void limitsCoverOnAverage() {
        int covered = 0;
        Random random = new Random(11);
        for (int run = 0; run < 400; run++) {
            List<EventHistory> units = new ArrayList<>();
            for (int i = 0; i < 60; i++) {
                double rate = random.nextInt(2) == 0 ? 0.5 : 1.5;
                List<Double> events = new ArrayList<>();
                for (double t = -Math.log(1 - random.nextDouble()) / rate;
                        t <= 2;
                        t -= Math.log(1 - random.nextDouble()) / rate) {
                    events.add(t);
                }
                units.add(EventHistory.observed(
                        0, 2, events.stream().mapToDouble(t -> t).toArray()));
            }
            MeanCumulativeFit.Step s = MCF.fit(units).at(2);
            covered += s.lower() <= 2 && 2 <= s.upper() ? 1 : 0;
        }
        // 95 % of 400 is 380, with a standard error of 4.4; small samples cover a little less.
        assertThat(covered).isBetween(362, 396);
    }

    @Test
    void differenceOfTwoGroups() {
        List<EventHistory> a = RandomUnits.of(50, 1);
        List<EventHistory> b = RandomUnits.of(50, 2);
        MeanDifference d = MCF.fit(a).minus(MCF.fit(b), 60, 0.95);
        assertThat(d.difference())
                .isCloseTo(MCF.fit(a).at(60).mean() - MCF.fit(b).at(60).mean(), within(1e-15));
        assertThat(d.standardError())
                .isCloseTo(Math.sqrt(RandomUnits.variance(a, 60) + RandomUnits.variance(b, 60)), within(1e-12));
        assertThat((d.upper() - d.lower()) / 2 / d.standardError()).isCloseTo(1.959963984540054, within(1e-9));
        assertThat(MCF.fit(a).minus(MCF.fit(a), 60, 0.9).pValue()).isEqualTo(1);
        assertThat(MCF.fit(List.of(EventHistory.observed(0, 9)))
                        .minus(MCF.fit(List.of(EventHistory.observed(0, 9))), 5, 0.9)
                        .pValue())
                .isNaN();
    }

    @Test
    void saysWhereNobodyWasWatched() {
        MeanCumulativeFit fit = MCF.fit(List.of(
                EventHistory.observed(0, 10, 4), EventHistory.observed(0, 8), EventHistory.observed(30, 50, 40)));
        assertThat(fit.unwatched()).containsExactly(new ObservationWindow(10, 30));
        assertThat(fit.atRisk(0)).isZero();
        assertThat(fit.atRisk(20)).isZero();
        assertThat(fit.atRisk(30)).isZero();
        assertThat(fit.atRisk(31)).isEqualTo(1);
        assertThat(fit.at(20).mean()).isEqualTo(0.5);
    }

    @Test
    void answersOnlyWhereItWasWatched() {
        MeanCumulativeFit fit = MCF.fit(List.of(EventHistory.observed(2, 10, 4)));
        assertThat(fit.at(3).mean()).isZero();
        assertThat(fit.at(3).upper()).isNaN();
        assertThat(fit.at(3).atRisk()).isEqualTo(1);
        assertThatThrownBy(() -> fit.at(11))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("watched from 2.0 to 10.0, not at 11.0");
        MeanCumulativeFit none = MCF.fit(List.of());
        assertThat(none.steps()).isEmpty();
        assertThat(none.covers(0)).isFalse();
        assertThat(MCF.fit(new RecurrenceCells(1)).covers(0)).isFalse();
    }

    @Test
    void refusesWhatCannotBe() {
        assertThatThrownBy(() -> EventHistory.observed(0, 10, 10.5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("an event at 10.5 lies in no window");
        assertThatThrownBy(() -> EventHistory.observed(0, 10, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("opened the observation");
        assertThatThrownBy(() -> EventHistory.observed(0, 10, Double.NaN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("NaN");
        assertThatThrownBy(() -> EventHistory.observed(10, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("finite from < to");
        assertThatThrownBy(() -> EventHistory.observed(0, Double.POSITIVE_INFINITY))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> EventHistory.of(List.of(new ObservationWindow(0, 5), new ObservationWindow(4, 6)), 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("overlap");
        assertThat(EventHistory.of(List.of(new ObservationWindow(5, 6), new ObservationWindow(0, 5)))
                        .windows())
                .containsExactly(new ObservationWindow(0, 6));
        assertThatThrownBy(() -> new RecurrenceCells(1).add(3, 3))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("from < to");
        assertThatThrownBy(() -> new RecurrenceCells(1).add(3, 9, 3))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("outside the window");
        assertThatThrownBy(() -> new RecurrenceCells(0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> MCF.withLevel(1)).isInstanceOf(IllegalArgumentException.class);
    }

    /** Efron and Stein (1981): (n - 1) / n times the squares of what leaving one unit out changes. */
    @Test
    void varianceForFewUnitsIsThatOfLeavingOneOut() {
        int[][] units = {{0, 9, 2, 5}, {0, 7, 5}, {1, 9}, {0, 9, 3, 4, 8}, {2, 6, 3}};
        MeanCumulative few = MCF.with(MeanCumulative.Reference.FEW_UNITS);
        double all = few.fit(counted(units, -1)).at(8).mean();
        double squares = 0;
        for (int left = 0; left < units.length; left++) {
            squares += Math.pow(all - few.fit(counted(units, left)).at(8).mean(), 2);
        }
        assertThat(few.fit(counted(units, -1)).at(8).variance()).isCloseTo(squares * 4 / 5, within(1e-12));
        assertThat(MCF.fit(counted(units, -1)).at(8).variance()).isLessThan(squares * 4 / 5);
        List<EventHistory> histories = new ArrayList<>();
        for (int[] u : units) {
            histories.add(EventHistory.of(
                    List.of(new ObservationWindow(u[0], u[1])),
                    Arrays.stream(u).skip(2).asDoubleStream().toArray()));
        }
        assertThat(few.fit(histories).at(8))
                .isEqualTo(few.fit(counted(units, -1)).at(8));
    }

    private static RecurrenceCells counted(int[][] units, int leftOut) {
        RecurrenceCells cells = new RecurrenceCells(1);
        for (int i = 0; i < units.length; i++) {
            if (i != leftOut) {
                cells.add(units[i][0], units[i][1], Arrays.copyOfRange(units[i], 2, units[i].length));
            }
        }
        return cells;
    }
}
