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
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.Source;
import sensorrounds.visit.Visit;
import sensorrounds.visit.Warning;
import sensorrounds.visit.WorkReason;

/** What must hold for any log whatsoever: seeded random ones, most of them contradictory. */
class HistoryPropertiesTest {
    private static final int LOGS = 400;
    private static final String[] PLACES = {"1L", "1R", "2L", "2R"};

    private static Logbook randomLog(Random random) {
        Logbook log = new Logbook();
        if (random.nextInt(5) == 0) {
            log.leftFleet("2021-01-01");
        }
        boolean twoSets = random.nextInt(3) == 0;
        LocalDate day = Logbook.FIRST_USED.plusDays(random.nextInt(1800) - 30);
        int visits = 1 + random.nextInt(12);
        for (int v = 0; v < visits; v++) {
            day = day.plusDays(random.nextInt(4) == 0 ? 0 : random.nextInt(300));
            Logbook.Entry entry = log.on(day.toString());
            if (twoSets && random.nextInt(4) != 0) {
                entry.set(random.nextBoolean() ? "summer" : "winter");
            }
            if (random.nextBoolean()) {
                entry.warning(Warning.values()[random.nextInt(4)]);
                entry.since(day.minusDays(random.nextInt(200) - 20).toString());
            }
            if (random.nextInt(3) == 0) {
                entry.drive(random.nextInt(40) * 1.0, random.nextBoolean());
            }
            for (String place : PLACES) {
                if (random.nextInt(6) != 0) {
                    entry.wheels(randomWheel(random, place));
                }
            }
            if (random.nextInt(6) == 0) {
                entry.wheels(randomWheel(random, "spare"));
            }
        }
        return log;
    }

    private static Wheel randomWheel(Random random, String place) {
        String usual = "A" + place;
        String id = random.nextInt(4) == 0 ? "X" + random.nextInt(8) : usual;
        Wheel wheel = switch (random.nextInt(8)) {
            case 0 -> Wheel.silent(place);
            case 1 -> Wheel.silent(place, id);
            case 2 -> Wheel.untried(place);
            case 3 -> random.nextBoolean() ? Wheel.heard(place, null) : Wheel.notPresent(place);
            default -> Wheel.heard(place, id);
        };
        WorkReason reason = random.nextInt(5) == 0 ? null : WorkReason.values()[random.nextInt(12)];
        String newId = random.nextInt(4) == 0 ? null : "X" + random.nextInt(8);
        switch (random.nextInt(8)) {
            case 0, 1 -> wheel.replaced(reason, newId);
            case 2 -> wheel.replaced(reason, id).cloned();
            case 3 -> wheel.plainValve(reason);
            default -> wheel.battery(random.nextInt(3) == 0 ? BatteryReport.LOW : BatteryReport.OK);
        }
        return wheel;
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 22, 33})
    void shuffledVisitsGiveAnEqualHistory(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < LOGS; i++) {
            Logbook log = randomLog(random);
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
            Logbook log = randomLog(random);
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
            Logbook log = randomLog(random);
            for (Visit visit : log.visits()) {
                VehicleHistory history = log.historyAsOf(visit.day());
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
            VehicleHistory history = randomLog(random).history();
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
            Logbook log = randomLog(random);
            log.system(MonitoringSystem.values()[i % 4]);
            VehicleHistory history = log.history();
            assertThat(history.visits()).hasSize(log.visits().size());
        }
    }
}
