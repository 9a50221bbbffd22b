package sensorrounds.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectOutputStream;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Map;
import java.util.Random;
import java.util.function.BiFunction;
import org.junit.jupiter.api.Test;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.SensorLife;
import sensorrounds.survival.WeibullLife;

class ReportCellsTest {
    /** H(t) = (t/1000)^2. */
    private static final WeibullLife LAW = new WeibullLife(2, 1000, 0, 0, 0);

    private static final BiFunction<SensorLife, LocalDate, LastReport> SILENT_OR_SOUND = (life, day) -> {
        boolean answered = life.readings().stream().anyMatch(r -> r.day().equals(day) && r.answered());
        return answered ? LastReport.SOUND : LastReport.SILENT_ONCE;
    };

    private static ReportCells of(Lives life) {
        ReportCells cells = new ReportCells();
        cells.add(life.life(), SILENT_OR_SOUND, LAW);
        return cells;
    }

    @Test
    void aSoundLifeCountsTheHazardBetweenItsAnswers() {
        ReportCells cells = of(new Lives("A1").ok(100, 300, 600));
        // (.09 - .01) + (.36 - .09); nothing settles the last answer.
        has(cells, LastReport.SOUND, 2, 0, 0.35);
        has(cells, LastReport.SILENT_ONCE, 0, 0, 0);
    }

    @Test
    void aFailureCountsForTheReportBeforeItAndHalfItsWindow() {
        ReportCells cells = of(new Lives("A1").ok(100, 300).failed(600));
        has(cells, LastReport.SOUND, 2, 1, 0.08 + 0.27 / 2);
    }

    @Test
    void theReportAtTheStartOfTheWindowCountsNotTheOneAtItsEnd() {
        Map<LocalDate, LastReport> reports =
                Map.of(Lives.day(100), LastReport.SOUND, Lives.day(300), LastReport.LOW_BATTERY);
        ReportCells cells = new ReportCells();
        cells.add(new Lives("A1").ok(100, 300, 600).life(), (life, day) -> reports.get(day), LAW);
        has(cells, LastReport.SOUND, 1, 0, 0.08);
        has(cells, LastReport.LOW_BATTERY, 1, 0, 0.27);
    }

    @Test
    void aSilenceThatWasNoDeathIsSettledByTheNextAnswer() {
        ReportCells cells = of(new Lives("A1").ok(100).silent(300).ok(600));
        has(cells, LastReport.SOUND, 1, 0, 0.35);
        has(cells, LastReport.SILENT_ONCE, 1, 0, 0.35);
    }

    @Test
    void aConfirmedSilenceIsAFailureOfBothItsReportsWhicheverSilenceDatesIt() {
        // Failure dated to the second silence, and to the first one in hindsight.
        ReportCells second = of(new Lives("A1").ok(100).silent(300, 600).failed(600));
        has(second, LastReport.SOUND, 1, 1, 0.35 / 2);
        has(second, LastReport.SILENT_ONCE, 1, 1, 0.35 / 2);
        ReportCells first = of(new Lives("A1").ok(100).silent(300, 600).failed(300));
        has(first, LastReport.SOUND, 1, 1, 0.08 / 2);
        has(first, LastReport.SILENT_ONCE, 1, 1, 0.35 / 2);
    }

    @Test
    void whatIsKnownAtTheVisitItselfWasNoForecast() {
        ReportCells cells = of(new Lives("A1").ok(100).silent(300).failed(300));
        has(cells, LastReport.SOUND, 1, 1, 0.04);
        has(cells, LastReport.SILENT_ONCE, 0, 0, 0);
    }

    @Test
    void aLongSilenceCountsOnce() {
        ReportCells cells = of(new Lives("A1").ok(100).silent(200, 300, 400).failed(400));
        assertThat(cells.landmarks(LastReport.SILENT_ONCE)).isEqualTo(1);
        assertThat(cells.observed(LastReport.SILENT_ONCE)).isEqualTo(1);
    }

    @Test
    void aSilenceOfTheReaderIsNoReportOfTheSensor() {
        // At 200 the reader heard nothing at all, so the sensor's last report is still the sound one.
        ReportCells cells = new ReportCells();
        cells.add(
                new Lives("A1").ok(100).silent(200, 300).ok(600).life(),
                (life, day) -> day.equals(Lives.day(200)) ? LastReport.SOUND : SILENT_OR_SOUND.apply(life, day),
                LAW);
        has(cells, LastReport.SOUND, 1, 0, 0.35);
        has(cells, LastReport.SILENT_ONCE, 1, 0, 0.35);
    }

    @Test
    void whatSaysNothingIsLeftOut() {
        has(of(new Lives("A1").notTried(100, 300)), LastReport.SOUND, 0, 0, 0);
        has(of(new Lives("A1").unknownOrigin().ok(100, 300)), LastReport.SOUND, 0, 0, 0);
        has(of(new Lives("A1").ok(100).ended(LifeEnd.PREVENTIVE, 300)), LastReport.SOUND, 0, 0, 0);
        ReportCells noReport = new ReportCells();
        noReport.add(new Lives("A1").ok(100, 300).life(), (life, day) -> null, LAW);
        has(noReport, LastReport.SOUND, 0, 0, 0);
    }

    @Test
    void anySplitAndAnyOrderGiveTheSameBytes() throws IOException {
        Random random = new Random(7);
        int n = 5000;
        double[] hazards = random.doubles(n).map(u -> 3 * Math.pow(u, 6)).toArray();
        ReportCells whole = new ReportCells();
        for (int i = 0; i < n; i++) {
            add(whole, hazards, i);
        }
        for (int parts : new int[] {1, 3, 64}) {
            ReportCells[] split = new ReportCells[parts + 1];
            Arrays.setAll(split, i -> new ReportCells());
            for (int i = n - 1; i >= 0; i--) {
                add(split[random.nextInt(parts)], hazards, i);
            }
            ReportCells merged = new ReportCells();
            for (int i = parts; i >= 0; i--) {
                merged.merge(split[i]);
            }
            assertThat(bytes(merged)).isEqualTo(bytes(whole));
        }
        // Plain floating-point sums of the same numbers do depend on the order.
        double asMet = Arrays.stream(hazards).reduce(0, (a, b) -> a + b);
        double ascending = Arrays.stream(hazards).sorted().reduce(0, (a, b) -> a + b);
        assertThat(asMet).isNotEqualTo(ascending);
    }

    private static void add(ReportCells cells, double[] hazards, int i) {
        cells.addWindow(LastReport.values()[i % 4], i, hazards[i], i % 5 == 0);
    }

    /** Failure ratio 6, windows with hazards up to 0.1 under the law, 40,000 landmarks, seed fixed. */
    @Test
    void aKnownRatioIsFoundAgain() {
        Random random = new Random(11);
        ReportCells cells = new ReportCells();
        for (int i = 0; i < 40_000; i++) {
            double hazard = 0.1 * random.nextDouble();
            cells.addWindow(LastReport.LOW_BATTERY, 90, hazard, random.nextDouble() < -Math.expm1(-6 * hazard));
        }
        OutlookSettings settings = OutlookSettings.defaults();
        ReportRatios.Ratio ratio = ReportRatios.fit(cells, settings).of(LastReport.LOW_BATTERY);
        // About 10,000 failures: standard error 1 %; the half-window convention takes off under 2 %.
        assertThat(ratio.ratio()).isCloseTo(6, within(0.25));
        // Counting the whole window of a failure would read about 5.1.
        assertThat(ratio.observed() / (ratio.expected() + wholeWindows(ratio))).isLessThan(5.3);
        assertThat(Math.sqrt(ratio.varLogRatio())).isCloseTo(1 / Math.sqrt(ratio.observed()), within(1e-4));
    }

    /** Half windows of failures: mean hazard of a failed window, weighted by its chance, is about 0.0625. */
    private static double wholeWindows(ReportRatios.Ratio ratio) {
        return ratio.observed() * 0.0625 / 2;
    }

    @Test
    void refusesAHazardThatIsNone() {
        assertThatThrownBy(() -> new ReportCells().addWindow(LastReport.SOUND, 90, Double.NaN, false))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("hazard over a window is NaN");
    }

    private static void has(ReportCells cells, LastReport report, long landmarks, long observed, double expected) {
        assertThat(cells.landmarks(report)).isEqualTo(landmarks);
        assertThat(cells.observed(report)).isEqualTo(observed);
        // Each window is rounded to 2^-32.
        assertThat(cells.expected(report)).isCloseTo(expected, within(1e-9));
    }

    private static byte[] bytes(ReportCells cells) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ObjectOutputStream objects = new ObjectOutputStream(out)) {
            objects.writeObject(cells);
        }
        return out.toByteArray();
    }
}
