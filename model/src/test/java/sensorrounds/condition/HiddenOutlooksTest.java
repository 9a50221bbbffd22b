package sensorrounds.condition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static sensorrounds.condition.Histories.READER;
import static sensorrounds.condition.Histories.answer;
import static sensorrounds.condition.Histories.battery;
import static sensorrounds.condition.Histories.day;
import static sensorrounds.condition.Histories.finding;
import static sensorrounds.condition.Histories.history;
import static sensorrounds.condition.Histories.life;
import static sensorrounds.condition.Histories.read;
import static sensorrounds.condition.Histories.silent;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sensorrounds.history.FailureCause;
import sensorrounds.history.Finding;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.LifeReading;
import sensorrounds.history.OriginBasis;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.outlook.LastReport;
import sensorrounds.outlook.LifeLaws;
import sensorrounds.outlook.OutlookSettings;
import sensorrounds.outlook.Outlooks;
import sensorrounds.outlook.ReportCells;
import sensorrounds.outlook.ReportRatios;
import sensorrounds.outlook.SensorOutlook;
import sensorrounds.survival.WeibullLife;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.ReadOutcome;

/** From sensor lives to condition and outlook, with the fallback named. Judgements: common practice, no source. */
class HiddenOutlooksTest {
    private static final LocalDate AS_OF = day("2026-08-01");
    private static final WeibullLife LAW = new WeibullLife(2.5, 2900, 0.01, 0.004, 0.001);
    private static final LifeLaws LAWS = (vehicleClass, part) -> Optional.of(new LifeLaws.Law("van", "own fit", LAW));
    private static final OutlookSettings SETTINGS = OutlookSettings.defaults();
    private static final HiddenFit FIT = fit();

    private static HiddenFit fit() {
        int n = HiddenFleet.TRUTH.size();
        double[][] covariance = new double[n][n];
        for (int i = 0; i < n; i++) {
            covariance[i][i] = 0.01;
        }
        WakeChances wake = new WakeChances(Histories.ordinaryModel(), ConditionSettings.defaults());
        return new HiddenFit(
                HiddenFit.Status.CONVERGED,
                "",
                1,
                0,
                1,
                -1,
                1,
                0,
                1,
                HiddenFleet.TRUTH,
                covariance,
                HiddenModel.of(HiddenSettings.defaults(), wake));
    }

    private static SensorOutlook outlook(HiddenFit fit, VehicleHistory history) {
        List<SensorOutlook> simple = Outlooks.of(
                history,
                LAWS,
                ReportRatios.fit(new ReportCells(), SETTINGS),
                (l, d) -> LastReport.SOUND,
                SETTINGS,
                AS_OF);
        return new HiddenOutlooks(fit, SetLikeness.none("one sensor"), LAWS, (h, life) -> life.part(), SETTINGS, AS_OF)
                .of(history, simple)
                .get(0);
    }

    private static double weak(LifeReading... readings) {
        return outlook(FIT, history(life("1L", readings))).chances().pWeak();
    }

    @Test
    void whatIsReadMovesTheConditionTheRightWay() {
        LifeReading first = answer("2024-05-02", "1L", 1);
        double sound = weak(first, answer("2026-06-02", "1L", 1));
        double slow = weak(first, answer("2026-06-02", "1L", 3));
        double slowUnderSlowReader =
                weak(first, read("2026-06-02", "1L", "reader-slow", ReadOutcome.OK, 3, null, 12.0));
        assertThat(slow).isGreaterThan(3 * sound);
        assertThat(slowUnderSlowReader).as("a slow reader explains the tries").isLessThan(0.5 * slow);

        double ok = weak(first, battery("2026-06-02", "1L", BatteryReport.OK, 15.0));
        double low = weak(first, battery("2026-06-02", "1L", BatteryReport.LOW, 15.0));
        double lowInTheCold = weak(first, battery("2026-06-02", "1L", BatteryReport.LOW, -8.0));
        assertThat(ok).isLessThan(sound);
        assertThat(low).isGreaterThan(lowInTheCold);
        assertThat(lowInTheCold).isGreaterThan(sound);
        double recovered = weak(
                first,
                battery("2026-01-15", "1L", BatteryReport.LOW, -8.0),
                battery("2026-06-02", "1L", BatteryReport.OK, 15.0));
        assertThat(recovered).as("low in winter, OK in summer").isLessThan(low);
    }

    @Test
    void silenceIsDeathOnlyWhenItLasts() {
        LifeReading first = answer("2024-05-02", "1L", 1);
        SensorOutlook once =
                outlook(FIT, history(life("1L", first, answer("2026-02-02", "1L", 1), silent("2026-06-02", "1L", 1))));
        SensorOutlook thrice = outlook(
                FIT,
                history(life(
                        "1L",
                        first,
                        answer("2026-02-02", "1L", 1),
                        silent("2026-06-02", "1L", 3),
                        silent("2026-06-20", "1L", 3))));
        SensorOutlook again =
                outlook(FIT, history(life("1L", first, silent("2026-06-02", "1L", 3), answer("2026-07-30", "1L", 1))));
        assertThat(once.chances().pNow()).isBetween(0.05, 0.7);
        assertThat(thrice.chances().pNow()).isGreaterThan(0.9);
        assertThat(again.chances().pNow()).isLessThan(0.01);
        VehicleHistory deaf = history(
                List.of(life("1L", first, answer("2026-02-02", "1L", 1), silent("2026-06-02", "1L", 3))),
                List.of(),
                List.of(),
                List.of(finding(Finding.Kind.READER_HEARD_NOTHING, null, "2026-06-02")));
        assertThat(outlook(FIT, deaf).chances().pNow())
                .as("the reader was deaf")
                .isLessThan(0.1);
    }

    /** A reading taken after the sensor was known dead: no age makes it possible. */
    @Test
    void readingsThatContradictEachOtherGiveNoChances() {
        VehicleHistory history = history(life("1L", answer("2024-05-02", "1L", 1)));
        SensorOutlook simpler = outlook(FIT, history);
        HiddenReadings broken = new HiddenReadings.Builder(100)
                .dead(200)
                .read(300, HiddenReadings.code(0, 1, true, 0), true)
                .build();
        HiddenReadings sound = new HiddenReadings.Builder(100)
                .read(300, HiddenReadings.code(0, 1, true, 0), true)
                .build();
        HiddenOutlooks outlooks = new HiddenOutlooks(
                FIT, SetLikeness.none("one sensor"), LAWS, (h, life) -> life.part(), SETTINGS, AS_OF);
        outlooks.of(history, List.of());
        assertThat(outlooks.chances(List.of(new HiddenOutlooks.Mixed(broken, 1, day("2024-01-01"))), simpler))
                .isEmpty();
        assertThat(outlooks.chances(
                        List.of(
                                new HiddenOutlooks.Mixed(broken, 0.5, day("2024-01-01")),
                                new HiddenOutlooks.Mixed(broken, 0.5, day("2024-01-01"))),
                        simpler))
                .isEmpty();
        assertThat(outlooks.chances(
                        List.of(
                                new HiddenOutlooks.Mixed(broken, 0.5, day("2024-01-01")),
                                new HiddenOutlooks.Mixed(sound, 0.5, day("2024-01-01"))),
                        simpler))
                .isEqualTo(outlooks.chances(List.of(new HiddenOutlooks.Mixed(sound, 1, day("2024-01-01"))), simpler));
    }

    @Test
    void outlookFitsTheFilterAndTheLawMeetsItAtTheHorizon() {
        SensorOutlook o =
                outlook(FIT, history(life("1L", answer("2024-05-02", "1L", 1), answer("2026-06-02", "1L", 2))));
        assertThat(o.grounds().method()).isEqualTo(SensorOutlook.Method.HIDDEN_CONDITION);
        assertThat(o.grounds().why()).isEmpty();
        SensorOutlook s = o;
        assertThat(s.chances().p30()).isBetween(o.chances().pNow(), s.chances().p90());
        assertThat(s.chances().p90())
                .isEqualTo(s.chances().pHorizon())
                .isLessThan(s.chances().p180());
        assertThat(s.chances().p180()).isLessThan(s.chances().p365());
        assertThat(s.chances().pHorizonLower()).isLessThan(s.chances().pHorizon());
        assertThat(s.chances().pHorizonUpper()).isGreaterThan(s.chances().pHorizon());
        double lastAnswer = ChronoUnit.DAYS.between(day("2019-03-01"), day("2026-06-02"));
        double days = ChronoUnit.DAYS.between(day("2026-06-02"), AS_OF) + 90;
        assertThat(LAW.failureWithin(lastAnswer, days, s.chances().failureRatio()))
                .isCloseTo(s.chances().pHorizon(), within(1e-12));
    }

    @Test
    void fallbackIsTakenAndNamed() {
        VehicleHistory known = history(life("1L", answer("2024-05-02", "1L", 1)));
        HiddenFit few = HiddenFitter.of(FIT.model()).fit(HiddenPass.over(List.of(), FIT.model()));
        SensorOutlook o = outlook(few, known);
        assertThat(o.grounds().method()).isEqualTo(SensorOutlook.Method.SURVIVAL_AND_LAST_REPORT);
        assertThat(o.grounds().why()).contains("0 sensors");
        assertThat(o.chances().pWeak()).isNaN();
        assertThat(o.chances().p90()).isPositive();

        WakeModel none = WakeModel.fit(new WakeCells(0), ConditionSettings.defaults());
        assertThat(outlook(HiddenFit.withoutWakeModel(none), known).grounds().why())
                .contains("no read with a count of tries");
        assertThatThrownBy(() -> new WakeChances(none, ConditionSettings.defaults()))
                .hasMessageContaining("no read");

        SensorLife ageless =
                life("1L", null, OriginBasis.UNKNOWN, LifeEnd.IN_SERVICE, null, answer("2026-05-02", "1L", 1));
        assertThat(outlook(FIT, history(ageless)).grounds().method())
                .as("filtered at each age it may have")
                .isEqualTo(SensorOutlook.Method.HIDDEN_CONDITION);
        SensorLife mute = life("1L", silent("2026-05-02", "1L", 2));
        assertThat(outlook(FIT, history(mute)).grounds().why()).contains("never answered");
    }

    @Test
    void livesBecomeReadings() {
        SensorLife original = life(
                "1L",
                silent("2023-05-02", "1L", 2),
                answer("2024-05-02", "1L", 1),
                silent("2025-05-02", "1L", null),
                answer("2025-05-02", "1L", 2),
                read("2025-08-02", "1L", READER, ReadOutcome.NOT_TRIED, null, null, null),
                silent("2026-05-02", "1L", 2));
        HiddenReadings r = readings(original, AS_OF);
        assertThat(r.entryDays()).as("first answer").isEqualTo((int)
                ChronoUnit.DAYS.between(day("2019-03-01"), day("2024-05-02")));
        assertThat(r.size())
                .as("before entry, not tried and the silence of an answered day are out, the as-of day is in")
                .isEqualTo(4);
        assertThat(readings(original, day("2025-12-31")).size()).isEqualTo(3);
        assertThat(readings(original, day("2024-01-01"))).isNull();

        SensorLife silentOnWheel = life(
                "1L",
                "2020-01-01",
                OriginBasis.RECORDED_FITTING,
                LifeEnd.FAILED,
                "2026-05-02",
                answer("2025-05-02", "1L", 1),
                silent("2026-05-02", "1L", 3),
                silent("2026-06-02", "1L", 3));
        HiddenReadings onWheel = readings(silentOnWheel, AS_OF);
        assertThat(onWheel.entryDays()).isZero();
        assertThat(onWheel.failed()).isTrue();
        assertThat(onWheel.size()).isEqualTo(4);
        assertThat(onWheel.code(2)).isNotNegative();

        LocalDate outOn = day("2026-06-02");
        HiddenReadings broken = readings(takenOut(silentOnWheel, outOn, FailureCause.STEM_OR_CORROSION), AS_OF);
        assertThat(broken.size()).isEqualTo(2);
        assertThat(broken.code(1)).as("seen broken").isEqualTo(HiddenReadings.KNOWN_DEAD);
        HiddenReadings silent = readings(takenOut(silentOnWheel, outOn, FailureCause.BATTERY), AS_OF);
        assertThat(silent.size()).isEqualTo(3);
        assertThat(silent.code(2))
                .as("taken for dead, which its silence alone says")
                .isNotNegative();
        assertThat(silent.failed()).isTrue();
        assertThat(readings(takenOut(silentOnWheel, outOn, FailureCause.BATTERY), day("2026-04-01"))
                        .failed())
                .as("not known yet")
                .isFalse();
        assertThat(readings(life("1L", null, OriginBasis.RECORDED_FITTING, LifeEnd.IN_SERVICE, null), AS_OF))
                .isNull();
        SensorLife place = life(
                "1L",
                "2020-01-01",
                OriginBasis.RECORDED_FITTING,
                LifeEnd.PLACE_SUSPECTED,
                null,
                answer("2025-05-02", "1L", 1));
        assertThat(HiddenReadings.exclusion(place).orElseThrow()).contains("place");
    }

    private static HiddenReadings readings(SensorLife life, LocalDate asOf) {
        return HiddenReadings.of(life, RoadVisits.of(history(life), true), Set.of(), FIT.model(), "van", asOf)
                .orElse(null);
    }

    private static SensorLife takenOut(SensorLife l, LocalDate on, FailureCause cause) {
        return new SensorLife(
                l.vehicleId(),
                l.sensorId(),
                l.generation(),
                l.part(),
                l.position(),
                l.wheelSet(),
                l.fittedOn(),
                l.basis(),
                l.firstAnswered(),
                l.lastAnswered(),
                l.firstKnownFailed(),
                on,
                l.end(),
                cause,
                l.firstWeak(),
                l.lifetime(),
                l.exclusion(),
                l.readings());
    }

    /** After each read what was to be thought then, the last as it is now but for the time since. */
    @Test
    void conditionOverTimeFollowsTheReads() {
        VehicleHistory history = history(life(
                "1L",
                answer("2024-05-02", "1L", 1),
                answer("2025-06-02", "1L", 1),
                answer("2026-01-10", "1L", 4),
                answer("2026-07-31", "1L", 4)));
        SensorOutlook now = outlook(FIT, history);
        List<ConditionMoment> path = new HiddenOutlooks(
                        FIT, SetLikeness.none("one sensor"), LAWS, (h, life) -> life.part(), SETTINGS, AS_OF)
                .overTime(history, List.of(now));
        assertThat(path)
                .extracting(ConditionMoment::day)
                .containsExactly(day("2024-05-02"), day("2025-06-02"), day("2026-01-10"), day("2026-07-31"));
        assertThat(path.get(1).pWeak()).isLessThan(0.2);
        assertThat(path.get(2).pWeak()).isGreaterThan(path.get(1).pWeak());
        assertThat(path.get(3).pWeak())
                .isGreaterThan(0.8)
                .isCloseTo(now.chances().pWeak(), within(0.01));
        assertThat(path).allMatch(m -> m.pDead() < 1e-12, "it answered");
        LifeReading[] upTo = {answer("2024-05-02", "1L", 1), answer("2025-06-02", "1L", 1)};
        VehicleHistory earlier = history(life("1L", upTo));
        assertThat(new HiddenOutlooks(
                                FIT, SetLikeness.none("one sensor"), LAWS, (h, life) -> life.part(), SETTINGS, AS_OF)
                        .overTime(earlier, List.of(outlook(FIT, earlier))))
                .isEqualTo(path.subList(0, 2));
    }
}
