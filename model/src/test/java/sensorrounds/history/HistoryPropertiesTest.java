package sensorrounds.history;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.survival.Lifetime;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.Source;
import sensorrounds.visit.Visit;
import sensorrounds.visit.WheelWork;

/** What must hold for any log whatsoever: seeded random ones, most of them contradictory. */
class HistoryPropertiesTest {
    private static final int LOGS = 400;

    @ParameterizedTest
    @ValueSource(longs = {11, 22, 33})
    void shuffledVisitsGiveAnEqualHistory(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < LOGS; i++) {
            Logbook log = RandomLogs.next(random);
            List<Visit> shuffled = new ArrayList<>(log.visits());
            Collections.shuffle(shuffled, random);

            assertThat(HistoryBuilder.build(log.vehicle(), shuffled, HistorySettings.defaults(), Logbook.FAR_AHEAD))
                    .isEqualTo(log.history());
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {44, 55, 66})
    void everyReadingBelongsToExactlyOneLife(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < LOGS; i++) {
            Logbook log = RandomLogs.next(random);
            Map<Source, Integer> owners = new HashMap<>();
            log.history().lives().forEach(l -> l.readings().forEach(r -> owners.merge(r.source(), 1, Integer::sum)));

            assertThat(owners.values()).as("log %d of seed %d", i, seed).allMatch(n -> n == 1);
            for (Visit visit : log.visits()) {
                visit.rows().stream()
                        .filter(r -> r.wheel() != null && r.wheel().read() == ReadOutcome.OK)
                        .forEach(r -> assertThat(owners).containsKey(r.source()));
            }
            Set<Source> answers = new HashSet<>();
            log.visits().forEach(v -> v.rows().forEach(r -> answers.add(r.source())));
            assertThat(answers).containsAll(owners.keySet());
        }
    }

    /** As of each visit there is one sensor at a place at most, so no two lives at one place overlap. */
    @ParameterizedTest
    @ValueSource(longs = {77, 88, 99})
    void noTwoSensorsSitAtOnePlaceAtOnce(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < LOGS; i++) {
            Logbook log = RandomLogs.next(random);
            for (Visit visit : log.visits()) {
                VehicleHistory history = log.historyAsOf(visit.day());
                assertThat(history.findings())
                        .extracting(Finding::what)
                        .noneMatch(w -> w.startsWith("the lives built here overlap"));
                List<Place> seated = history.lives().stream()
                        .filter(SensorLife::onVehicle)
                        .map(l -> new Place(l.wheelSet(), l.position()))
                        .toList();
                assertThat(seated).as("log %d of seed %d", i, seed).doesNotHaveDuplicates();
            }
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {111, 222, 333})
    void everyLifeIsInTheSampleOrSaysWhyNot(long seed) {
        Random random = new Random(seed);
        int inSample = 0;
        int failed = 0;
        for (int i = 0; i < LOGS; i++) {
            VehicleHistory history = RandomLogs.next(random).history();
            assertThat(history.lives()).extracting(SensorLife::lifeId).doesNotHaveDuplicates();
            for (SensorLife life : history.lives()) {
                assertThat(life.lifetime() == null).isEqualTo(life.exclusion() != null);
                assertThat(life.fittedOn() == null).isEqualTo(life.basis() == OriginBasis.UNKNOWN);
                assertThat(life.cause() != null).isEqualTo(life.end() == LifeEnd.FAILED);
                assertThat(life.firstKnownFailed() != null).isEqualTo(life.end() == LifeEnd.FAILED);
                assertThat(life.end() == LifeEnd.IN_SERVICE && life.endedOn() != null)
                        .isFalse();
                if (life.lifetime() != null) {
                    assertThat(life.basis()).isNotEqualTo(OriginBasis.UNKNOWN);
                    assertThat(life.lifetime().failed()).isEqualTo(life.end() == LifeEnd.FAILED);
                    inSample++;
                    failed += life.lifetime().failed() ? 1 : 0;
                }
            }
        }
        assertThat(inSample).as("the random logs are not all refused").isGreaterThan(500);
        assertThat(failed).isGreaterThan(100);
    }

    @ParameterizedTest
    @ValueSource(longs = {444, 555})
    void anyMonitoringSystemIsSurvived(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < LOGS; i++) {
            Logbook log = RandomLogs.next(random);
            log.system(MonitoringSystem.values()[i % 4]);
            VehicleHistory history = log.history();
            assertThat(history.visits()).hasSize(log.visits().size());
        }
    }

    /** Ages in order; a failure has room to happen in, or it was heard on the very day it failed. */
    @ParameterizedTest
    @ValueSource(longs = {666, 777})
    void agesAreInOrder(long seed) {
        Random random = new Random(seed);
        int failures = 0;
        for (int i = 0; i < LOGS; i++) {
            for (SensorLife life : RandomLogs.next(random).history().lives()) {
                Lifetime l = life.lifetime();
                if (l == null) {
                    continue;
                }
                assertThat(0 <= l.entry() && l.entry() <= l.lower()).isTrue();
                if (l.failed()) {
                    failures++;
                    assertThat(l.lower() < l.upper()
                                    || (l.lower() == l.upper()
                                            && life.lastAnswered().equals(life.firstKnownFailed())))
                            .as("%s", life)
                            .isTrue();
                }
                life.toWeakness().ifPresent(w -> assertThat(w.entry()).isEqualTo(l.entry()));
            }
        }
        assertThat(failures).isGreaterThan(100);
    }

    /** A row that says something of a sensor is a reading of a life, or stands in a finding; silence where none is may not. */
    @ParameterizedTest
    @ValueSource(longs = {888, 999})
    void everyRowThatSaysSomethingIsUsedOrNamed(long seed) {
        Random random = new Random(seed);
        int silentWithoutSensor = 0;
        for (int i = 0; i < LOGS; i++) {
            Logbook log = RandomLogs.next(random);
            VehicleHistory history = log.history();
            Set<Source> told = new HashSet<>();
            history.lives().forEach(l -> l.readings().forEach(r -> told.add(r.source())));
            history.findings().forEach(f -> told.addAll(f.sources()));
            for (Visit visit : log.visits()) {
                for (LoggedWheel row : visit.rows()) {
                    if (row.wheel() == null || told.contains(row.source())) {
                        continue;
                    }
                    ReadOutcome read = row.wheel().read();
                    assertThat(read).as("an answer is never lost").isNotEqualTo(ReadOutcome.OK);
                    if (read == ReadOutcome.NO_ANSWER) {
                        silentWithoutSensor++;
                        assertThat(row.wheel().position().isSpare() || plainValveBefore(log, visit, row))
                                .as("silence at %s counts for nothing only where no sensor is", row.source())
                                .isTrue();
                    }
                }
            }
        }
        assertThat(silentWithoutSensor).isPositive();
    }

    private static boolean plainValveBefore(Logbook log, Visit visit, LoggedWheel row) {
        return log.visits().stream()
                .filter(v -> !v.header().visitedAt().isAfter(visit.header().visitedAt()))
                .flatMap(v -> v.rows().stream())
                .anyMatch(r -> r.wheel() != null
                        && r.wheel().position().equals(row.wheel().position())
                        && r.wheel().work() == WheelWork.PLAIN_VALVE_FITTED);
    }

    /** What is known of a sensor on a day stays as it is, whatever comes after. */
    @ParameterizedTest
    @ValueSource(longs = {1111, 2222, 3333})
    void laterVisitsChangeNothingThatWasKnown(long seed) {
        Random random = new Random(seed);
        int compared = 0;
        for (int i = 0; i < LOGS; i++) {
            Logbook log = RandomLogs.next(random);
            Map<Source, SensorLife> after = new HashMap<>();
            log.history().lives().forEach(l -> l.readings().forEach(r -> after.put(r.source(), l)));
            List<Visit> visits = log.visits();
            LocalDate then = visits.get(random.nextInt(visits.size())).day();
            for (SensorLife early : log.historyAsOf(then).lives()) {
                if (early.readings().isEmpty()) {
                    continue;
                }
                SensorLife late = after.get(early.readings().get(0).source());
                compared++;
                assertThat(late.readings().subList(0, early.readings().size())).isEqualTo(early.readings());
                assertThat(late.basis()).isEqualTo(early.basis());
                assertThat(late.fittedOn()).isEqualTo(early.fittedOn());
                assertThat(late.fittedNotBefore()).isEqualTo(early.fittedNotBefore());
                assertThat(late.firstAnswered() == null
                                || early.firstAnswered() == null
                                || late.firstAnswered().equals(early.firstAnswered()))
                        .isTrue();
                if (early.part() != null) {
                    assertThat(late.part()).isEqualTo(early.part());
                }
                if (early.firstWeak() != null) {
                    assertThat(late.firstWeak()).isEqualTo(early.firstWeak());
                    assertThat(late.lastSound()).isEqualTo(early.lastSound());
                }
            }
        }
        assertThat(compared).isGreaterThan(1000);
    }

    @ParameterizedTest
    @ValueSource(longs = {4444, 5555})
    void withoutItsLastYearAVehicleIsAsItWasThen(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < LOGS; i++) {
            Logbook log = RandomLogs.next(random);
            List<Visit> visits = log.visits();
            LocalDate then = visits.get(visits.size() - 1).day().minusYears(1);
            List<Visit> until =
                    visits.stream().filter(v -> !v.day().isAfter(then)).toList();

            assertThat(log.historyAsOf(then))
                    .isEqualTo(HistoryBuilder.build(log.vehicle(), until, HistorySettings.defaults(), then));
        }
    }
}
