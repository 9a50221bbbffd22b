package sensorrounds.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import sensorrounds.replacement.Advice;

/**
 * The five vehicles of the sample data whose story is known. What each must come out as is common practice, no source; the
 * engine knows them only by their data.
 */
class PatternVehiclesTest {
    private static final String AS_OF = "2026-09-30";
    private static final Set<Advice> NOW = EnumSet.of(Advice.REPLACE_NOW, Advice.READ_FIRST, Advice.CHECK_PLACE_FIRST);

    private final SampleRun run = SampleRun.get();

    @Test
    void aWarningThatComesAndGoesPointsToTheWheelThatIsSlowToWake() {
        String vehicle = SampleRun.vehicle("intermittent");
        Map<String, String> row = one("recurring-vehicles", vehicle);
        assertThat(row.get("pattern")).isEqualTo("RECURRING_INTERMITTENT");
        assertThat(row.get("first_suspect")).isEqualTo("2R");
        assertThat(row.get("follow_up_open")).isEqualTo("true");
        assertThat(row.get("story"))
                .contains("every sensor answered each time and no lasting cause was found")
                .contains("names no wheel")
                .contains("not yet proven by a drive");
        Map<String, String> suspect = of("suspects", vehicle).get(0);
        assertThat(suspect.get("reasons")).startsWith("needed 3, 4, 3, 3, 4, 4 tries");
        assertThat(of("follow-ups", vehicle)).anyMatch(f -> f.get("state").equals("OPEN"));
        assertThat(of("watch-list", vehicle))
                .singleElement()
                .satisfies(
                        w -> assertThat(w.get("position") + " " + w.get("sign")).isEqualTo("2R SLOW_TO_WAKE"));
        // Every battery was reported OK: a report must not have been read into it.
        assertThat(of("sensor-lives", vehicle))
                .allMatch(l -> l.get("first_weak").isEmpty());
    }

    @Test
    void aPlaceThatSilencesNewSensorsIsSuspectedInsteadOfThem() {
        String vehicle = SampleRun.vehicle("silent-place");
        Map<String, String> row = one("recurring-vehicles", vehicle);
        assertThat(row.get("pattern")).isEqualTo("RECURRING_AT_ONE_PLACE");
        assertThat(row.get("first_suspect")).isEqualTo("not a sensor");
        assertThat(of("suspects", vehicle).get(0).get("position")).isEqualTo("2R");
        assertThat(of("sensor-lives", vehicle))
                .filteredOn(
                        l -> l.get("position").equals("2R") && l.get("basis").equals("RECORDED_FITTING"))
                .noneMatch(l -> l.get("life_end").equals("FAILED"));
        assertThat(of("ranked-replacements", vehicle))
                .filteredOn(r -> r.get("position").equals("2R"))
                .allMatch(r -> r.get("advice").equals("CHECK_PLACE_FIRST"));
    }

    @Test
    void aSetThatAgesTogetherIsASetOfSensorsNearTheirEnd() {
        String vehicle = SampleRun.vehicle("ageing-set");
        assertThat(of("sensor-lives", vehicle))
                .filteredOn(l -> l.get("life_end").equals("FAILED"))
                .hasSize(2);
        assertThat(of("recurring-vehicles", vehicle))
                .noneMatch(r -> r.get("pattern").equals("RECURRING_AT_ONE_PLACE")
                        || r.get("pattern").equals("RECURRING_INTERMITTENT"));
        List<Map<String, String>> lines = of("ranked-replacements", vehicle);
        assertThat(lines)
                .filteredOn(r -> r.get("basis").equals("VEHICLE_FIRST_USE"))
                .allMatch(r -> Integer.parseInt(r.get("rank"))
                        < run.csv("ranked-replacements").size() / 2);
        assertThat(lines.get(0).get("last_report")).isEqualTo("LOW_BATTERY");
        noSoundSensorThatWaitsStandsBefore(lines.get(0));
    }

    /**
     * Its stop is booked eight weeks on, and one of its own would cost more than waiting risks. So what asks for a stop now goes
     * before it; of what waits for one, only sensors that were on their way out as well, by the simulation's own books.
     */
    private void noSoundSensorThatWaitsStandsBefore(Map<String, String> line) {
        Set<String> weak = SampleRun.csv(SampleRun.DATA.resolve("truth/sensors.csv")).stream()
                .filter(s -> s.get("weakFrom").compareTo(AS_OF) <= 0)
                .map(s -> s.get("vehicleId") + " " + s.get("sensorId"))
                .collect(Collectors.toSet());
        assertThat(line.get("advice")).isEqualTo("AT_NEXT_STOP");
        assertThat(line.get("next_stop")).isEqualTo("2026-11-24");
        assertThat(run.csv("ranked-replacements"))
                .filteredOn(r -> Integer.parseInt(r.get("rank")) < Integer.parseInt(line.get("rank")))
                .filteredOn(r -> !NOW.contains(Advice.valueOf(r.get("advice"))))
                .allMatch(r -> weak.contains(r.get("vehicle_id") + " " + r.get("sensor_id")));
    }

    @Test
    void pressureWarningsOnColdMorningsBlameNoSensor() {
        String vehicle = SampleRun.vehicle("cold-mornings");
        assertThat(of("warning-episodes", vehicle))
                .isNotEmpty()
                .allMatch(e -> e.get("warning").equals("LOW_PRESSURE")
                        && e.get("explained_by_cold").equals("true"));
        assertThat(of("recurring-vehicles", vehicle)).isEmpty();
        assertThat(of("watch-list", vehicle)).isEmpty();
        assertThat(of("sensor-lives", vehicle)).allMatch(l -> l.get("life_end").equals("IN_SERVICE"));
    }

    @Test
    void aSlowReaderMakesNoSensorASuspect() {
        String vehicle = SampleRun.vehicle("slow-reader");
        assertThat(of("watch-list", vehicle)).isEmpty();
        assertThat(of("recurring-vehicles", vehicle))
                .noneMatch(r -> r.get("pattern").startsWith("RECURRING"));
        assertThat(of("ranked-replacements", vehicle))
                .allMatch(r -> r.get("last_report").equals("SOUND"));
        assertThat(run.csv("reader-quality"))
                .filteredOn(r -> r.get("slow").equals("true"))
                .singleElement()
                .satisfies(r -> assertThat(Double.parseDouble(r.get("chance"))).isBetween(0.35, 0.5));
    }

    private List<Map<String, String>> of(String table, String vehicle) {
        return run.csv(table).stream()
                .filter(r -> r.get("vehicle_id").equals(vehicle))
                .toList();
    }

    private Map<String, String> one(String table, String vehicle) {
        assertThat(of(table, vehicle)).hasSize(1);
        return of(table, vehicle).get(0);
    }
}
