package sensorrounds.condition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sensorrounds.condition.Histories.answer;
import static sensorrounds.condition.Histories.battery;
import static sensorrounds.condition.Histories.day;
import static sensorrounds.condition.Histories.life;
import static sensorrounds.condition.Histories.read;
import static sensorrounds.condition.Histories.silent;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import sensorrounds.history.Finding;
import sensorrounds.history.LifeReading;
import sensorrounds.history.SensorLife;
import sensorrounds.outlook.LastReport;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.Mount;
import sensorrounds.visit.ReadOutcome;

class SlowWakingTest {
    private static final ConditionSettings SETTINGS = ConditionSettings.defaults();
    private static final WakeModel MODEL = Histories.ordinaryModel();
    private static final LocalDate AS_OF = day("2026-08-01");

    private static double slow(LifeReading... readings) {
        return SlowWaking.of(life("1L", readings), MODEL, SETTINGS, AS_OF).probabilitySlow();
    }

    /** Bayes' rule by hand: odds 1/19 times q (1-q)^3 / (p (1-p)^3), q from p's odds divided by 8. */
    @Test
    void posteriorByHand() {
        double p = MODEL.chance(Histories.READER, Mount.SINGLE, false);
        double q = p / 8 / (1 - p + p / 8);
        double odds = 0.05 / 0.95 * q * Math.pow(1 - q, 3) / (p * Math.pow(1 - p, 3));
        SensorCondition c = SlowWaking.of(life("1L", answer("2026-07-02", "1L", 4)), MODEL, SETTINGS, AS_OF);
        assertThat(c.probabilitySlow()).isCloseTo(odds / (1 + odds), within(1e-12));
        assertThat(c.reads()).isEqualTo(1);
        assertThat(c.lastAttempts()).isEqualTo(4);
        assertThat(c.expectedAttempts()).isCloseTo(1 / p, within(1e-12));
    }

    @Test
    void givingUpIsTheGeometricTail() {
        double p = MODEL.chance(Histories.READER, Mount.SINGLE, false);
        double q = p / 8 / (1 - p + p / 8);
        assertThat(SlowWaking.logRatio(silent("2026-07-02", "1L", 3), MODEL, SETTINGS))
                .isCloseTo(3 * Math.log((1 - q) / (1 - p)), within(1e-12));
        assertThat(SlowWaking.logRatio(silent("2026-07-02", "1L", null), MODEL, SETTINGS))
                .isZero();
    }

    @Test
    void withoutReadsThePriorStands() {
        assertThat(slow()).isCloseTo(0.05, within(1e-15));
        assertThat(slow(read("2026-07-02", "1L", Histories.READER, ReadOutcome.OK, null, null, 5.0)))
                .isCloseTo(0.05, within(1e-15));
    }

    /** Common practice, no source. */
    @Test
    void twoTriesOnceAreOrdinaryAndThreeAtSeveralVisitsAreSlow() {
        assertThat(slow(answer("2026-05-02", "1L", 1), answer("2026-06-02", "1L", 2)))
                .isLessThan(SETTINGS.watchProbability());
        assertThat(slow(answer("2026-07-02", "1L", 2))).isLessThan(SETTINGS.watchProbability());
        assertThat(slow(answer("2026-05-02", "1L", 3), answer("2026-06-02", "1L", 3), answer("2026-07-02", "1L", 3)))
                .isGreaterThan(0.95);
    }

    @Test
    void goodReadsLowerItAndOldOnesFallOut() {
        double bad = slow(answer("2026-01-02", "1L", 5));
        double once = slow(answer("2026-01-02", "1L", 5), answer("2026-02-02", "1L", 1));
        double six = slow(
                answer("2026-01-02", "1L", 5),
                answer("2026-02-02", "1L", 1),
                answer("2026-03-02", "1L", 1),
                answer("2026-04-02", "1L", 1),
                answer("2026-05-02", "1L", 1),
                answer("2026-06-02", "1L", 1),
                answer("2026-07-02", "1L", 1));
        assertThat(once).isLessThan(bad);
        assertThat(six).isLessThan(SETTINGS.slowPrior());
    }

    @Test
    void aSlowReaderDoesNotMakeItsSensorsSlow() {
        LifeReading[] reads = new LifeReading[3];
        LifeReading[] same = new LifeReading[3];
        for (int i = 0; i < 3; i++) {
            String day = "2026-0" + (i + 4) + "-02";
            reads[i] = read(day, "1L", "reader-slow", ReadOutcome.OK, 3, null, 12.0);
            same[i] = answer(day, "1L", 3);
        }
        assertThat(slow(reads)).isLessThan(SETTINGS.watchProbability());
        assertThat(slow(same)).isGreaterThan(0.95);
    }

    @Test
    void laterReadingsAreNotKnownYet() {
        SensorLife life =
                life("1L", answer("2026-01-02", "1L", 1), answer("2026-06-02", "1L", 6), silent("2026-07-02", "1L", 4));
        assertThat(LastReports.of(life, MODEL, SETTINGS, day("2025-12-31"))).isEqualTo(LastReport.SOUND);
        assertThat(LastReports.of(life, MODEL, SETTINGS, day("2026-06-01"))).isEqualTo(LastReport.SOUND);
        assertThat(LastReports.of(life, MODEL, SETTINGS, day("2026-06-02"))).isEqualTo(LastReport.SLOW_TO_WAKE);
        assertThat(LastReports.of(life, MODEL, SETTINGS, day("2026-07-02"))).isEqualTo(LastReport.SILENT_ONCE);
    }

    @Test
    void lastBatteryReportCountsAndBlankIsNoReport() {
        SensorLife life = life(
                "1L",
                battery("2026-01-02", "1L", new BatteryReport(BatteryReport.Kind.PERCENT, 12), 3.0),
                answer("2026-02-02", "1L", 1),
                battery("2026-03-02", "1L", BatteryReport.OK, 3.0));
        assertThat(LastReports.of(life, MODEL, SETTINGS, day("2026-02-02"))).isEqualTo(LastReport.LOW_BATTERY);
        assertThat(LastReports.of(life, MODEL, SETTINGS, day("2026-03-02"))).isEqualTo(LastReport.SOUND);
    }

    @Test
    void watchListGivesSignFiguresAndWhatSettlesIt() {
        List<WatchEntry> entries = WatchList.of(
                Histories.history(
                        life("1L", answer("2026-05-02", "1L", 1), answer("2026-07-02", "1L", 5)),
                        life("1R", answer("2026-07-02", "1R", 1)),
                        life("2L", answer("2026-05-02", "2L", 1), silent("2026-07-02", "2L", 2))),
                MODEL,
                SETTINGS);
        assertThat(entries)
                .extracting(WatchEntry::sign)
                .containsExactly(WatchEntry.Sign.SLOW_TO_WAKE, WatchEntry.Sign.SILENT_ONCE);
        WatchEntry slow = entries.get(0);
        assertThat(slow.reason())
                .startsWith("needed 5 tries on 2026-07-02; a sound sensor under the same reader needs 1.1");
        assertThat(slow.since()).isEqualTo(day("2026-07-02"));
        assertThat(slow.probability()).isGreaterThan(SETTINGS.watchProbability());
        assertThat(slow.settledBy()).contains("another reader");
        assertThat(slow.depot()).isEqualTo("Norrhamn");
        WatchEntry silent = entries.get(1);
        assertThat(silent.reason())
                .isEqualTo("no answer on 2026-07-02 after 2 tries; it last answered on 2026-05-02; a sound sensor stays"
                        + " silent that long in 1.0 % of such reads");
        assertThat(silent.probability()).isNaN();
    }

    @Test
    void lowInColdAndOkInWarmthStaysOnTheListOkInColdDoesNot() {
        BatteryReport low = BatteryReport.LOW;
        SensorLife warm =
                life("1L", battery("2026-01-10", "1L", low, -6.0), battery("2026-06-10", "1L", BatteryReport.OK, 22.0));
        SensorLife cold =
                life("1L", battery("2026-01-10", "1L", low, -6.0), battery("2026-02-10", "1L", BatteryReport.OK, -2.0));
        assertThat(WatchList.of(Histories.history(warm), MODEL, SETTINGS))
                .singleElement()
                .satisfies(e -> {
                    assertThat(e.sign()).isEqualTo(WatchEntry.Sign.LOW_BATTERY);
                    assertThat(e.since()).isEqualTo(day("2026-01-10"));
                    assertThat(e.reason())
                            .isEqualTo("battery reported low on 2026-01-10 at -6 °C; OK on 2026-06-10 at 22 °C, but"
                                    + " warmer, which does not take it back");
                });
        assertThat(WatchList.of(Histories.history(cold), MODEL, SETTINGS)).isEmpty();
    }

    @Test
    void aVisitAtWhichTheReaderHeardNothingIsNoSilence() {
        SensorLife life = life("1L", answer("2026-05-02", "1L", 1), silent("2026-07-02", "1L", 3));
        var history = Histories.history(
                List.of(life),
                List.of(),
                List.of(),
                List.of(Histories.finding(Finding.Kind.READER_HEARD_NOTHING, null, "2026-07-02")));
        assertThat(WatchList.of(history, MODEL, SETTINGS)).isEmpty();
        assertThat(LastReports.of(life, UnheardVisits.days(history), MODEL, SETTINGS, AS_OF))
                .isEqualTo(LastReport.SOUND);
    }
}
