package sensorrounds.recurrence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sensorrounds.condition.Histories.answer;
import static sensorrounds.condition.Histories.battery;
import static sensorrounds.condition.Histories.day;
import static sensorrounds.condition.Histories.episode;
import static sensorrounds.condition.Histories.finding;
import static sensorrounds.condition.Histories.history;
import static sensorrounds.condition.Histories.life;
import static sensorrounds.condition.Histories.read;
import static sensorrounds.condition.Histories.silent;
import static sensorrounds.condition.Histories.visit;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sensorrounds.condition.Histories;
import sensorrounds.condition.WakeCells;
import sensorrounds.condition.WakeModel;
import sensorrounds.history.Finding;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.LifeReading;
import sensorrounds.history.OriginBasis;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VisitSummary;
import sensorrounds.history.WarningEpisode;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.FaultCode;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.Warning;

class RecurrenceTest {
    private static final LocalDate AS_OF = day("2026-08-01");
    private static final RecurrenceSettings SETTINGS = RecurrenceSettings.defaults();
    private static final SuspectFigures FIGURES = SuspectFigures.declared(SETTINGS);
    private static final WakeModel MODEL = Histories.ordinaryModel();
    private static final PeerRates PEERS = PeerRates.fit(
            new PeerCells().count("van", 0, 24, 80).count("van", 1, 24, 30).count("van", 4, 24, 6), SETTINGS);
    private static final String[] DAYS = {"2026-02-10", "2026-04-14", "2026-06-20"};
    private static final FaultCode NAMELESS = new FaultCode("C1A56", FaultCode.State.CURRENT, null);

    private static SensorLife sound(String place) {
        return life(place, reads(place, 1, 1, 1));
    }

    private static LifeReading[] reads(String place, int... tries) {
        LifeReading[] all = new LifeReading[tries.length];
        for (int i = 0; i < tries.length; i++) {
            all[i] = read(DAYS[i], place, Histories.READER, ReadOutcome.OK, tries[i], BatteryReport.OK, 12.0);
        }
        return all;
    }

    private static List<VisitSummary> visits(FaultCode... codes) {
        List<VisitSummary> all = new ArrayList<>();
        all.add(visit("2025-08-01", Warning.NONE));
        for (String d : DAYS) {
            all.add(visit(d, Warning.SYSTEM_FAULT, codes));
        }
        return all;
    }

    /** Three episodes and one return in half a year, every sensor answering. */
    private static List<WarningEpisode> intermittent() {
        return List.of(
                episode(Warning.SYSTEM_FAULT, DAYS[0], DAYS[0], 0, true, false),
                episode(Warning.SYSTEM_FAULT, DAYS[1], DAYS[1], 1, true, false),
                episode(Warning.SYSTEM_FAULT, DAYS[2], DAYS[2], 0, true, false));
    }

    private static RecurringVehicle judge(VehicleHistory history) {
        return Recurrence.of(history, PEERS, MODEL, SETTINGS, AS_OF).orElseThrow();
    }

    private static VehicleHistory with(List<SensorLife> lives, Finding... findings) {
        return history(lives, visits(), intermittent(), List.of(findings));
    }

    @Test
    void intermittentVehicleWithOneSlowWheelSuspectsThatWheelWithReasons() {
        RecurringVehicle v =
                judge(with(List.of(sound("1L"), sound("1R"), life("2L", reads("2L", 3, 1, 4)), sound("2R"))));
        assertThat(v.pattern()).isEqualTo(RecurringVehicle.Pattern.RECURRING_INTERMITTENT);
        assertThat(v.episodes()).isEqualTo(3);
        assertThat(v.returnsAfterRepair()).isEqualTo(1);
        assertThat(v.exposureYears()).isCloseTo(365 / 365.25, within(1e-12));
        assertThat(v.ratePerYear()).isCloseTo(4 / (365 / 365.25), within(1e-12));
        assertThat(v.shrunkRatePerYear()).isLessThan(v.ratePerYear());
        assertThat(v.probabilityAbovePeers()).isGreaterThan(0.9);
        assertThat(v.suspects()).hasSize(5);
        Suspect first = v.suspects().get(0);
        assertThat(first.position()).isEqualTo(Histories.place("2L"));
        assertThat(first.probability()).isGreaterThan(0.5);
        assertThat(first.reasons().get(0))
                .startsWith("needed 3, 1, 4 tries at its last 3 reads, a sound sensor under the same readers needs 1.1")
                .contains("(×");
        assertThat(first.reasons())
                .anyMatch(r -> r.startsWith("battery reported OK on 2026-06-20, never low in 3 reports (×0."));
        assertThat(first.nextStep()).contains("another reader");
        assertThat(v.story())
                .startsWith("System warning in 3 episodes within 365 days, back 1 time after work, last on 2026-06-20;"
                        + " every sensor answered each time and no lasting cause was found. First suspect: axle 2, left"
                        + " (sensor 5E2L) at ")
                .contains("needed 3, 1, 4 tries");
    }

    @Test
    void probabilitiesAddUpToOneAndComeInOrder() {
        List<Suspect> suspects = judge(
                        with(List.of(sound("1L"), life("1R", reads("1R", 2, 3, 1)), sound("2L"), sound("2R"))))
                .suspects();
        assertThat(suspects.stream().mapToDouble(Suspect::probability).sum()).isCloseTo(1, within(1e-12));
        for (int i = 0; i < suspects.size(); i++) {
            assertThat(suspects.get(i).order()).isEqualTo(i + 1);
            assertThat(suspects.get(i).probability())
                    .isLessThanOrEqualTo(suspects.get(Math.max(0, i - 1)).probability());
        }
        assertThat(suspects).filteredOn(s -> !s.isSensor()).hasSize(1);
    }

    /** What one read with the warning on, of a sensor past the beginning of its weakness, weighs. */
    private static double weight(SignLaw law, java.util.function.DoubleUnaryOperator seen, double[] levels) {
        double[] likelihood = java.util.Arrays.stream(levels).map(seen).toArray();
        return SignLaw.mean(law.cause(), likelihood) / SignLaw.mean(law.other(), likelihood);
    }

    private static double heardWithTheWarningOn() {
        return weight(FIGURES.silence(), s -> 1 - s, SuspectFigures.SILENCE);
    }

    /** Bayes' rule by hand: old sensors weigh 0.5, "not a sensor" 1; both answered once with the warning on. */
    @Test
    void probabilityByHand() {
        SensorLife low = life("1L", read(DAYS[2], "1L", null, ReadOutcome.OK, null, BatteryReport.LOW, 12.0));
        SensorLife other = life("1R", read(DAYS[2], "1R", null, ReadOutcome.OK, null, null, 12.0));
        List<Suspect> suspects = Suspects.of(with(List.of(low, other)), MODEL, SETTINGS, AS_OF);
        double plain = 0.5 * heardWithTheWarningOn();
        double reported = plain * weight(FIGURES.low(), r -> r, SuspectFigures.LOW);
        assertThat(suspects).extracting(Suspect::sensorId).containsExactly("5E1L", null, "5E1R");
        assertThat(suspects.get(0).probability()).isCloseTo(reported / (1 + reported + plain), within(1e-12));
        assertThat(suspects.get(1).probability()).isCloseTo(1 / (1 + reported + plain), within(1e-12));
        assertThat(suspects.get(2).probability()).isCloseTo(plain / (1 + reported + plain), within(1e-12));
        assertThat(reported / plain).isBetween(6.0, 9.0);
    }

    /** However many tries, slow waking weighs at most slowIfCause / slowPrior = 10. */
    @Test
    void noSingleSignWeighsWithoutBound() {
        VehicleHistory h = with(List.of(life("1L", reads("1L", 20, 20, 20))));
        List<Suspects.Candidate> all =
                Suspects.candidates(h, h.episodes(), MODEL, FIGURES, Optional.empty(), SETTINGS, AS_OF);
        assertThat(all.get(0).evidence())
                .filteredOn(e -> e.sign() == Evidence.Sign.SLOW_WAKING)
                .singleElement()
                .satisfies(e -> assertThat(Math.exp(e.logWeight())).isBetween(5.0, 10.0));
    }

    @Test
    void aPlaceThatKeepsFailingIsFirstOfAllNoSensor() {
        RecurringVehicle v = judge(with(
                List.of(sound("1L"), sound("1R"), sound("2L"), sound("2R")),
                finding(Finding.Kind.PLACE_KEEPS_FAILING, "2L", "2026-05-01")));
        assertThat(v.pattern()).isEqualTo(RecurringVehicle.Pattern.RECURRING_AT_ONE_PLACE);
        Suspect first = v.suspects().get(0);
        assertThat(first.isSensor()).isFalse();
        assertThat(first.position()).isEqualTo(Histories.place("2L"));
        assertThat(first.probability()).isGreaterThan(0.7);
        assertThat(first.nextStep()).contains("axle 2, left").contains("receiver");
        assertThat(v.suspects().get(4).position()).isEqualTo(Histories.place("2L"));
        assertThat(v.story()).contains("not a sensor, but the place axle 2, left");
    }

    @Test
    void aRecentlyReplacedSensorIsNotTheFirstSuspect() {
        SensorLife fresh = life(
                "2L",
                "2026-04-20",
                OriginBasis.RECORDED_FITTING,
                LifeEnd.IN_SERVICE,
                null,
                read(DAYS[2], "2L", Histories.READER, ReadOutcome.OK, 4, null, 12.0));
        RecurringVehicle v = judge(with(List.of(sound("1L"), sound("1R"), fresh, sound("2R"))));
        assertThat(v.suspects().get(0).position()).isNotEqualTo(Histories.place("2L"));
        Suspect replaced = v.suspects().get(4);
        assertThat(replaced.position()).isEqualTo(Histories.place("2L"));
        assertThat(replaced.reasons()).contains("fitted on 2026-04-20, the warning was there on 2026-02-10 (×0.10)");
    }

    @Test
    void aCodeThatNamesNoWheelChangesNoProbability() {
        List<SensorLife> lives = List.of(sound("1L"), life("1R", reads("1R", 1, 3, 1)));
        List<Double> without = judge(history(lives, visits(), intermittent(), List.of())).suspects().stream()
                .map(Suspect::probability)
                .toList();
        RecurringVehicle coded = judge(history(lives, visits(NAMELESS), intermittent(), List.of()));
        assertThat(coded.suspects().stream().map(Suspect::probability)).isEqualTo(without);
        assertThat(coded.story()).contains("The code C1A56 names no wheel.");
    }

    /** Two old sensors alike but for the code: a current one weighs more than a stored one, a cleared one nothing. */
    @Test
    void aCurrentCodeWithAPlaceNamesThatPlaceAndSpeaksForNoOther() {
        List<SensorLife> lives = List.of(
                life("1L", read(DAYS[2], "1L", null, ReadOutcome.OK, null, null, 12.0)),
                life("1R", read(DAYS[2], "1R", null, ReadOutcome.OK, null, null, 12.0)));
        List<Suspect> current = coded(lives, FaultCode.State.CURRENT);
        List<Suspect> stored = coded(lives, FaultCode.State.STORED);
        assertThat(current.get(0).position()).isEqualTo(Histories.place("1R"));
        assertThat(current.get(0).probability())
                .isGreaterThan(stored.get(0).probability())
                .isLessThan(0.95);
        assertThat(stored.get(0).probability()).isGreaterThan(0.45);
        assertThat(current.get(2).position()).isEqualTo(Histories.place("1L"));
        assertThat(coded(lives, FaultCode.State.CLEARED)).isEqualTo(coded(lives, null));
        assertThat(coded(lives, null).get(0).isSensor()).isFalse();
    }

    /** The code at one visit only. */
    private static List<Suspect> coded(List<SensorLife> lives, FaultCode.State state) {
        List<VisitSummary> visits = new ArrayList<>(visits());
        if (state != null) {
            visits.set(2, visit(DAYS[1], Warning.SYSTEM_FAULT, new FaultCode("C1A56", state, Histories.place("1R"))));
        }
        return Suspects.of(history(lives, visits, intermittent(), List.of()), MODEL, SETTINGS, AS_OF);
    }

    @Test
    void aCodeFromBeforeItsFittingDoesNotAccuseTheNewSensor() {
        FaultCode current = new FaultCode("C1A56", FaultCode.State.CURRENT, Histories.place("1R"));
        List<VisitSummary> visits = List.of(visit(DAYS[0], Warning.SYSTEM_FAULT, current));
        SensorLife fresh = life(
                "1R", "2026-03-01", OriginBasis.RECORDED_FITTING, LifeEnd.IN_SERVICE, null, answer(DAYS[2], "1R", 1));
        VehicleHistory h = history(List.of(fresh), visits, intermittent(), List.of());
        assertThat(Suspects.candidates(h, h.episodes(), MODEL, FIGURES, Optional.empty(), SETTINGS, AS_OF)
                        .get(0)
                        .evidence())
                .filteredOn(e -> e.sign() == Evidence.Sign.FAULT_CODE || e.sign() == Evidence.Sign.FITTED_AFTER)
                .hasSize(2)
                .allMatch(e -> e.logWeight() < 0);
    }

    /** Three silent tries at a visit with the warning on. */
    @Test
    void silenceAtAWarningVisitSpeaksForTheSensor() {
        SensorLife quiet = life("1L", silent(DAYS[0], "1L", 3), answer(DAYS[1], "1L", 1), answer(DAYS[2], "1L", 1));
        List<WarningEpisode> episodes = new ArrayList<>(intermittent());
        episodes.set(0, episode(Warning.SYSTEM_FAULT, DAYS[0], DAYS[0], 1, false, false));
        VehicleHistory h = history(List.of(quiet, sound("1R")), visits(), episodes, List.of());
        assertThat(Suspects.candidates(h, episodes, MODEL, FIGURES, Optional.empty(), SETTINGS, AS_OF)
                        .get(0)
                        .evidence())
                .filteredOn(e -> e.sign() == Evidence.Sign.SILENCE)
                .singleElement()
                .satisfies(e -> assertThat(Math.exp(e.logWeight())).isBetween(4.0, 12.0));
        assertThat(judge(h).pattern()).isEqualTo(RecurringVehicle.Pattern.RECURRING_INTERMITTENT);
    }

    @Test
    void aSlowReadersSensorsAreNotSuspected() {
        LifeReading[] slow = new LifeReading[3];
        for (int i = 0; i < 3; i++) {
            slow[i] = read(DAYS[i], "1L", "reader-slow", ReadOutcome.OK, 2, null, 12.0);
        }
        Suspect first = judge(with(List.of(life("1L", slow), life("1R", reads("1R", 1, 1, 1)))))
                .suspects()
                .get(0);
        assertThat(first.isSensor()).isFalse();
    }

    @Test
    void aKnownFailedSensorOnTheWheelComesFirst() {
        SensorLife dead = life(
                "1L",
                "2019-03-01",
                OriginBasis.VEHICLE_FIRST_USE,
                LifeEnd.FAILED,
                DAYS[1],
                silent(DAYS[0], "1L", 4),
                silent(DAYS[1], "1L", 4),
                silent(DAYS[2], "1L", 4));
        List<WarningEpisode> episodes = List.of(
                episode(Warning.SYSTEM_FAULT, DAYS[0], DAYS[0], 1, false, false),
                episode(Warning.SYSTEM_FAULT, DAYS[1], DAYS[2], 1, false, false));
        RecurringVehicle v = judge(history(List.of(dead, sound("1R")), visits(), episodes, List.of()));
        assertThat(v.pattern()).isEqualTo(RecurringVehicle.Pattern.RECURRING_WITH_FAILURES);
        assertThat(v.suspects().get(0).sensorId()).isEqualTo("5E1L");
        assertThat(v.suspects().get(0).nextStep()).startsWith("replace the sensor");
    }

    /** Weights by hand: outside 1 x 0.05 x 0.05 = 0.0025; 1L 0.40, 1R 0.20; slow waking 0.53 and an OK battery 0.6 on both. */
    @Test
    void whereDeadSensorsWereFoundTheNextOfTheSetIsSought() {
        List<WarningEpisode> found = List.of(
                episode(Warning.SYSTEM_FAULT, DAYS[0], DAYS[0], 0, false, true),
                episode(Warning.SYSTEM_FAULT, DAYS[1], DAYS[1], 0, false, true),
                episode(Warning.SYSTEM_FAULT, DAYS[2], DAYS[2], 0, false, true));
        VehicleHistory h = history(List.of(sound("1L"), sound("1R")), visits(), found, List.of());

        RecurringVehicle v = Recurrence.of(
                        h, PEERS, MODEL, FIGURES, life -> life.sensorId().equals("5E1L") ? 0.4 : 0.2, SETTINGS, AS_OF)
                .orElseThrow();

        assertThat(v.pattern()).isEqualTo(RecurringVehicle.Pattern.RECURRING_WITH_FAILURES);
        assertThat(v.suspects()).extracting(Suspect::sensorId).containsExactly("5E1L", "5E1R", null);
        assertThat(v.suspects().get(0).probability() / v.suspects().get(1).probability())
                .isCloseTo(2, within(1e-9));
        assertThat(v.suspects().get(2).reasons())
                .anySatisfy(r -> assertThat(r)
                        .isEqualTo("3 of 3 episodes ended with a dead sensor found and replaced (×0.0025)"));
        assertThat(v.suspects().get(0).reasons())
                .anySatisfy(r -> assertThat(r).contains("by its law of life 40 % not to work a year from now"));
        assertThat(v.story())
                .contains("3 of 3 ended with a dead sensor found and replaced", "Next of the set: axle 1, left")
                .doesNotContain("First suspect");
        // With sensors as good as new and one find (0.05) the outside leads; the story still says which of them is
        // next:
        // the floor of 0.05 times 0.53 and 0.6 is less.
        List<WarningEpisode> back = List.of(episode(Warning.SYSTEM_FAULT, DAYS[0], DAYS[2], 2, false, true));
        RecurringVehicle sound = Recurrence.of(
                        history(List.of(sound("1L"), sound("1R")), visits(), back, List.of()),
                        PEERS,
                        MODEL,
                        FIGURES,
                        life -> 0.001,
                        SETTINGS,
                        AS_OF)
                .orElseThrow();
        assertThat(sound.story())
                .contains("First suspect: not a sensor", "Next of the set, if it is a sensor: axle 1, left");
        assertThat(v.suspects().get(0).nextStep()).startsWith("read every sensor of the set");
        // The same vehicle with nothing found keeps the declared weights, and the outside first.
        assertThat(judge(with(List.of(sound("1L"), sound("1R"))))
                        .suspects()
                        .get(0)
                        .isSensor())
                .isFalse();
    }

    @Test
    void oneReturnIsNotYetRecurringAndOldWarningsFallOut() {
        List<WarningEpisode> two = intermittent().subList(0, 1);
        RecurringVehicle once = judge(history(List.of(sound("1L")), visits(), two, List.of()));
        assertThat(once.pattern()).isEqualTo(RecurringVehicle.Pattern.NOT_RECURRING);
        assertThat(once.suspects()).isEmpty();
        assertThat(once.story())
                .isEqualTo(
                        "System warning in 1 episode, last seen on 2026-02-10; fewer than 2 returns within the last 365 days, so it does not count as recurring.");
        RecurringVehicle later = Recurrence.of(with(List.of(sound("1L"))), PEERS, MODEL, SETTINGS, day("2027-06-21"))
                .orElseThrow();
        assertThat(later.pattern()).isEqualTo(RecurringVehicle.Pattern.NOT_RECURRING);
        assertThat(later.episodes()).isEqualTo(3);
    }

    @Test
    void lowPressureNeverCounts() {
        List<WarningEpisode> cold = List.of(
                episode(Warning.LOW_PRESSURE, DAYS[0], DAYS[0], 2, true, false),
                episode(Warning.LOW_PRESSURE, DAYS[1], DAYS[1], 2, true, false));
        assertThat(Recurrence.of(
                        history(List.of(sound("1L")), visits(), cold, List.of()), PEERS, MODEL, SETTINGS, AS_OF))
                .isEmpty();
    }

    @Test
    void intermittentAfterADeadSensorWasReplaced() {
        List<WarningEpisode> episodes = new ArrayList<>();
        episodes.add(episode(Warning.SYSTEM_FAULT, "2025-12-01", "2025-12-01", 0, false, true));
        episodes.addAll(intermittent());
        assertThat(judge(history(List.of(sound("1L")), visits(), episodes, List.of()))
                        .pattern())
                .isEqualTo(RecurringVehicle.Pattern.RECURRING_INTERMITTENT);
        assertThat(judge(history(
                                List.of(sound("1L")),
                                visits(),
                                episodes.subList(0, 3).stream()
                                        .map(e -> episode(
                                                Warning.SYSTEM_FAULT,
                                                e.firstSeen().toString(),
                                                e.lastSeen().toString(),
                                                0,
                                                false,
                                                true))
                                        .toList(),
                                List.of()))
                        .pattern())
                .isEqualTo(RecurringVehicle.Pattern.RECURRING_WITH_FAILURES);
    }

    @Test
    void withoutReadsOrRatesItStillAnswers() {
        WakeModel none = WakeModel.fit(new WakeCells(0), SETTINGS.condition());
        PeerRates empty = PeerRates.fit(new PeerCells(), SETTINGS);
        VehicleHistory h = with(List.of(life("1L", battery(DAYS[2], "1L", BatteryReport.LOW, 12.0))));
        RecurringVehicle v = Recurrence.of(h, empty, none, SETTINGS, AS_OF).orElseThrow();
        assertThat(v.suspects().get(0).reasons().get(0)).startsWith("battery reported low");
        assertThat(v.shrunkRatePerYear()).isPositive();
        VehicleHistory bare = with(List.of());
        RecurringVehicle unread =
                Recurrence.of(bare, empty, none, SETTINGS, AS_OF).orElseThrow();
        assertThat(unread.pattern()).isEqualTo(RecurringVehicle.Pattern.RECURRING_INTERMITTENT);
        assertThat(unread.suspects())
                .as("nothing is certain of sensors nobody read")
                .isEmpty();
        assertThat(unread.story()).contains("No sensor of it was ever read", "Next: read every wheel");
    }
}
