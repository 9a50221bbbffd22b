package sensorrounds.recurrence;

import static org.assertj.core.api.Assertions.assertThat;
import static sensorrounds.condition.Histories.day;
import static sensorrounds.condition.Histories.episode;
import static sensorrounds.condition.Histories.history;
import static sensorrounds.condition.Histories.life;
import static sensorrounds.condition.Histories.place;
import static sensorrounds.condition.Histories.read;
import static sensorrounds.condition.Histories.visit;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sensorrounds.condition.Histories;
import sensorrounds.condition.WakeModel;
import sensorrounds.condition.WatchList;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.LifeReading;
import sensorrounds.history.OriginBasis;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VisitSummary;
import sensorrounds.history.WarningEpisode;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.FaultCode;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.Source;
import sensorrounds.visit.Warning;

/** What any technician knows of suspects (common practice, no source), as acceptance cases. */
class TradeFactsTest {
    private static final LocalDate AS_OF = day("2026-08-01");
    private static final String[] DAYS = {"2026-02-10", "2026-04-14", "2026-06-20"};
    private static final RecurrenceSettings SETTINGS = RecurrenceSettings.defaults();
    private static final WakeModel MODEL = Histories.ordinaryModel();

    private static SensorLife sensor(String place, int... tries) {
        return life(place, reads(place, tries));
    }

    private static LifeReading[] reads(String place, int... tries) {
        LifeReading[] all = new LifeReading[tries.length];
        for (int i = 0; i < tries.length; i++) {
            String day = DAYS[DAYS.length - tries.length + i];
            all[i] = read(day, place, Histories.READER, ReadOutcome.OK, tries[i], BatteryReport.OK, 12.0);
        }
        return all;
    }

    private static List<Suspect> suspects(List<SensorLife> lives, FaultCode... codes) {
        List<VisitSummary> visits = new ArrayList<>(List.of(visit("2025-08-01", Warning.NONE)));
        List<WarningEpisode> episodes = new ArrayList<>();
        for (String d : DAYS) {
            visits.add(visit(d, Warning.SYSTEM_FAULT, codes));
            episodes.add(episode(Warning.SYSTEM_FAULT, d, d, 0, true, false));
        }
        return Suspects.of(history(lives, visits, episodes, List.of()), MODEL, SETTINGS, AS_OF);
    }

    private static double probability(List<Suspect> suspects, String place) {
        return suspects.stream()
                .filter(s -> s.isSensor() && s.position().equals(place(place)))
                .findFirst()
                .orElseThrow()
                .probability();
    }

    @Test
    void twoAttemptsAreOrdinary() {
        List<SensorLife> lives =
                List.of(sensor("1L", 1, 1, 1), sensor("1R", 1, 2, 1), sensor("2L", 1, 1, 1), sensor("2R", 1, 1, 2));
        assertThat(suspects(lives).get(0).isSensor()).isFalse();
        assertThat(WatchList.of(Histories.history(lives.toArray(SensorLife[]::new)), MODEL, SETTINGS.condition()))
                .isEmpty();
    }

    @Test
    void threeAttemptsOnOneWheelWhileTheOthersAnswerAtOnceMakeItTheFirstSuspectThoughItsBatteryIsReportedOk() {
        for (int visits = 1; visits <= 3; visits++) {
            int[] at = {1, 1, 1};
            int[] slow = {3, 3, 3};
            int[] once = java.util.Arrays.copyOf(at, visits);
            Suspect first = suspects(List.of(
                            sensor("1L", once),
                            sensor("1R", java.util.Arrays.copyOf(slow, visits)),
                            sensor("2L", once),
                            sensor("2R", once)))
                    .get(0);
            assertThat(first.isSensor()).isTrue();
            assertThat(first.position()).isEqualTo(place("1R"));
            assertThat(first.reasons())
                    .anyMatch(r -> r.startsWith("needed 3"))
                    .anyMatch(r -> r.startsWith("battery reported OK"));
            assertThat(first.nextStep()).contains("another reader");
        }
    }

    @Test
    void aRecentlyReplacedSensorIsNotTheFirstSuspect() {
        SensorLife fresh =
                life("2R", "2026-04-20", OriginBasis.RECORDED_FITTING, LifeEnd.IN_SERVICE, null, reads("2R", 3));
        List<Suspect> suspects =
                suspects(List.of(sensor("1L", 1, 1, 1), sensor("1R", 1, 1, 1), sensor("2L", 1, 1, 1), fresh));
        assertThat(suspects.get(0).position()).isNotEqualTo(place("2R"));
        assertThat(probability(suspects, "2R")).isLessThan(0.1);
    }

    @Test
    void oneGenericCodeWithoutAPositionNamesNobody() {
        List<SensorLife> lives =
                List.of(sensor("1L", 1, 1, 1), sensor("1R", 1, 3, 1), sensor("2L", 1, 1, 1), sensor("2R", 1, 2, 1));
        List<Suspect> coded = suspects(lives, new FaultCode("C1A56", FaultCode.State.CURRENT, null));
        assertThat(coded).isEqualTo(suspects(lives));
    }

    @Test
    void aCodeThatNamesAWheelSpeaksAgainstCausesOutsideTheSensorsToo() {
        List<SensorLife> lives =
                List.of(sensor("1L", 1, 1, 1), sensor("1R", 1, 1, 1), sensor("2L", 1, 1, 1), sensor("2R", 1, 1, 1));
        List<Suspect> coded = suspects(lives, new FaultCode("C1A56", FaultCode.State.CURRENT, place("2L")));
        assertThat(coded.get(0).position()).isEqualTo(place("2L"));
        assertThat(probabilityOutside(coded)).isLessThan(0.6 * probabilityOutside(suspects(lives)));
    }

    private static double probabilityOutside(List<Suspect> suspects) {
        return suspects.stream()
                .filter(s -> !s.isSensor())
                .findFirst()
                .orElseThrow()
                .probability();
    }

    @Test
    void aSensorThatDisagreesWithTheGaugeWhileItsMatesAgreeIsSuspectedAndOneGaugeOffAtEveryWheelBlamesNone() {
        List<SensorLife> one =
                List.of(gauged("1L", 230, 228), gauged("1R", 190, 229), gauged("2L", 231, 231), gauged("2R", 228, 230));
        List<SensorLife> all =
                List.of(gauged("1L", 230, 260), gauged("1R", 190, 229), gauged("2L", 231, 262), gauged("2R", 228, 260));
        assertThat(probability(suspects(one), "1R")).isGreaterThan(1.5 * probability(suspects(one), "1L"));
        Suspect apart = suspects(one).stream()
                .filter(s -> place("1R").equals(s.position()))
                .findFirst()
                .orElseThrow();
        assertThat(apart.reasons())
                .anyMatch(r -> r.startsWith("sent 190 kPa on 2026-06-20 where the hand gauge read 229 (×1."));
        assertThat(apart.nextStep()).contains("another gauge");
        assertThat(probability(suspects(all), "1R")).isEqualTo(probability(suspects(all), "1L"));
    }

    private static SensorLife gauged(String place, double sent, double gauge) {
        return life(
                place,
                new LifeReading(
                        day(DAYS[2]),
                        "visit-" + DAYS[2],
                        place(place),
                        Histories.READER,
                        "tech-1",
                        ReadOutcome.OK,
                        null,
                        null,
                        sent,
                        gauge,
                        12.0,
                        new Source("rounds.csv", 2)));
    }

    @Test
    void oneIdInTroubleAtTwoPlacesSpeaksForTheSensor() {
        SensorLife moved = life(
                "2L",
                read(DAYS[0], "1L", Histories.READER, ReadOutcome.OK, 4, BatteryReport.OK, 12.0),
                read(DAYS[1], "2L", Histories.READER, ReadOutcome.OK, 4, BatteryReport.OK, 12.0));
        SensorLife stayed = life(
                "2L",
                read(DAYS[0], "2L", Histories.READER, ReadOutcome.OK, 4, BatteryReport.OK, 12.0),
                read(DAYS[1], "2L", Histories.READER, ReadOutcome.OK, 4, BatteryReport.OK, 12.0));
        List<Suspect> at = suspects(List.of(sensor("1R", 1, 1, 1), moved));
        assertThat(probability(at, "2L"))
                .isGreaterThan(probability(suspects(List.of(sensor("1R", 1, 1, 1), stayed)), "2L"));
        assertThat(at.get(0).reasons())
                .contains(
                        "silent or slow at axle 1, left and at axle 2, left: the trouble went with the sensor (×4.0)");
    }

    @Test
    void anIdThatCameWithoutARecordedFittingIsNotLearnedEither() {
        SensorLife before = life("2R", read("2025-08-01", "2R", Histories.READER, ReadOutcome.OK, 1, null, 12.0));
        SensorLife stranger = named("5E99", null, reads("2R", 1, 1, 1));
        List<Suspect> suspects = suspects(
                List.of(sensor("1L", 1, 1, 1), sensor("1R", 1, 1, 1), sensor("2L", 1, 1, 1), before, stranger));
        assertThat(suspects.get(0).isSensor()).isFalse();
        assertThat(suspects.get(0).reasons())
                .contains(
                        "sensor 5E99, first read on 2026-02-10, sits at axle 2, right where another was and no relearn is"
                                + " on record since (×4.0)");
        assertThat(suspects.get(0).nextStep()).startsWith("teach the vehicle the IDs now on its wheels");
        // Alone at its place it is simply the sensor that was always there.
        assertThat(suspects(List.of(sensor("1L", 1, 1, 1), stranger)).stream().flatMap(s -> s.reasons().stream()))
                .noneMatch(r -> r.contains("relearn"));
    }

    @Test
    void theOtherWheelSetIsNotLearnedUntilARelearnOrTheWarningOff() {
        SensorLife summer =
                named("5E01", "A", read("2025-08-01", "1L", Histories.READER, ReadOutcome.OK, 1, null, 12.0));
        SensorLife winter = named("5E02", "B", reads("1L", 1, 1, 1));
        List<Suspect> suspects = suspects(List.of(summer, winter));
        assertThat(suspects.get(0).reasons())
                .contains("wheel set B is on the vehicle since 2026-02-10 and no relearn is on record since (×4.0)");
        // On since before the warning was seen off, it was learned.
        SensorLife earlier = named(
                "5E02",
                "B",
                read("2025-07-20", "1L", Histories.READER, ReadOutcome.OK, 1, null, 12.0),
                reads("1L", 1)[0]);
        SensorLife off = named("5E01", "A", read("2025-07-01", "1L", Histories.READER, ReadOutcome.OK, 1, null, 12.0));
        assertThat(suspects(List.of(off, earlier)).stream().flatMap(s -> s.reasons().stream()))
                .noneMatch(r -> r.contains("relearn"));
    }

    private static SensorLife named(String id, String set, LifeReading... reads) {
        SensorLife l = life(reads[0].position().code(), reads);
        return new SensorLife(
                l.vehicleId(),
                id,
                1,
                l.part(),
                l.position(),
                set,
                null,
                OriginBasis.UNKNOWN,
                l.firstAnswered(),
                l.lastAnswered(),
                null,
                null,
                LifeEnd.IN_SERVICE,
                null,
                null,
                null,
                "built by hand",
                l.readings());
    }

    @Test
    void aWheelWithoutASensorRaisesTheWarningByItself() {
        SensorLife taken = ended(sensor("2R", 1), "2026-02-10");
        List<Suspect> suspects =
                suspects(List.of(sensor("1L", 1, 1, 1), sensor("1R", 1, 1, 1), sensor("2L", 1, 1, 1), taken));
        assertThat(suspects.get(0).isSensor()).isFalse();
        assertThat(suspects.get(0).position()).isEqualTo(place("2R"));
        assertThat(suspects.get(0).reasons())
                .contains("no sensor is on record at axle 2, right since 2026-02-10, which raises the warning by itself"
                        + " (×20)");
        assertThat(suspects.get(0).nextStep())
                .startsWith("look whether a sensor is at axle 2, right; if none, fit one");
        // Taken out after the last warning it explains none.
        assertThat(suspects(List.of(sensor("1L", 1, 1, 1), ended(sensor("2R", 1), "2026-07-01")))
                        .get(0)
                        .position())
                .isNotEqualTo(place("2R"));
    }

    private static SensorLife ended(SensorLife l, String on) {
        return new SensorLife(
                l.vehicleId(),
                l.sensorId(),
                1,
                l.part(),
                l.position(),
                null,
                l.fittedOn(),
                l.basis(),
                l.firstAnswered(),
                l.lastAnswered(),
                null,
                day(on),
                LifeEnd.LOST,
                null,
                null,
                null,
                "built by hand",
                l.readings());
    }

    @Test
    void aNewIdThatTheVehicleWasNeverTaughtPointsOutsideTheSensors() {
        SensorLife fresh =
                life("2R", "2026-02-10", OriginBasis.RECORDED_FITTING, LifeEnd.IN_SERVICE, null, reads("2R", 1, 1));
        List<Suspect> suspects =
                suspects(List.of(sensor("1L", 1, 1, 1), sensor("1R", 1, 1, 1), sensor("2L", 1, 1, 1), fresh));
        assertThat(suspects.get(0).isSensor()).isFalse();
        assertThat(suspects.get(0).reasons())
                .contains(
                        "sensor 5E2R was fitted on 2026-02-10 at axle 2, right and no relearn is on record since (×4.0)");
        assertThat(suspects.get(0).nextStep()).startsWith("teach the vehicle the IDs now on its wheels");
    }
}
