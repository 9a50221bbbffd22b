package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;
import sensorrounds.fleet.Vehicle;
import sensorrounds.simulate.SimulateTask;
import sensorrounds.simulate.SimulationSettings;

/** Faults that only nested lines can have, planted as in {@link PlantedFaultsTest}. Fleet seed 7, places seed 43. */
class PlantedJsonFaultsTest {
    private static final int FAULTS_OF_A_KIND = 25;
    private static final ObjectMapper JSON = new ObjectMapper();

    private interface Spoiler {
        /** @return the line spoiled, or null when it does not lend itself to it */
        String spoil(ObjectNode visit) throws IOException;
    }

    private record Kind(String name, String expected, Spoiler spoiler) {
        @Override
        public String toString() {
            return name;
        }
    }

    private static ObjectNode wheel(ObjectNode visit) {
        return visit.path("wheels").isEmpty()
                ? null
                : (ObjectNode) visit.path("wheels").get(0);
    }

    private static final List<Kind> KINDS = List.of(
            new Kind("a line cut off", "NOT_JSON", visit -> {
                String line = visit.toString();
                return line.substring(0, line.length() * 2 / 3);
            }),
            new Kind("two visits on a line", "NOT_JSON", visit -> visit + " " + visit),
            new Kind(
                    "a name that is unknown",
                    "UNKNOWN_KEY",
                    visit -> visit.put("milage", 5).toString()),
            new Kind("an unknown name of a wheel", "UNKNOWN_KEY", visit -> {
                ObjectNode wheel = wheel(visit);
                if (wheel != null) {
                    wheel.put("sensorID", "0A1B2C3D");
                }
                return wheel == null ? null : visit.toString();
            }),
            new Kind("an ID as a number", "WRONG_KIND", visit -> {
                ObjectNode wheel = wheel(visit);
                if (wheel != null) {
                    wheel.put("sensorId", 12345678);
                }
                return wheel == null ? null : visit.toString();
            }),
            new Kind(
                    "a name twice",
                    "NAMED_TWICE",
                    visit -> visit.toString()
                            .replaceFirst("\\{", "{\"readerId\":\"R1\",\"readerId\":\"R2\",")
                            .replaceFirst(",\"readerId\":\"RD[^\"]*\"", "")),
            new Kind("wheels that are no list", "WRONG_KIND", visit -> {
                visit.putObject("wheels");
                return visit.toString();
            }),
            new Kind("a VIN with one character wrong", "VIN_CHECK_DIGIT", visit -> {
                if (!visit.hasNonNull("vin")) {
                    return null;
                }
                String vin = visit.get("vin").asText();
                visit.put("vin", vin.substring(0, 16) + (char) ('0' + (vin.charAt(16) - '0' + 1) % 10));
                return visit.toString();
            }));

    @TempDir
    private static Path folder;

    private static List<String> clean;
    private static LogReading cleanReading;
    private static Map<String, Vehicle> register;

    @BeforeAll
    static void simulate() throws IOException {
        Path data = folder.resolve("data");
        new SimulateTask().run(SimulationSettings.large(7, 120, SimulationSettings.Output.LARGE_JSON_LINES), data);
        Path log = data.resolve("visit-logs/fleet-00001.jsonl");
        clean = Files.readAllLines(log);
        register = new RegisterReader(Fixtures.HADOOP, data.toString()).fleet();
        cleanReading = LogReading.of(log, register);
    }

    @ParameterizedTest
    @FieldSource("KINDS")
    void everyFaultIsSeenAndNoOtherRowTouched(Kind kind) throws IOException {
        List<String> lines = new ArrayList<>(clean);
        Set<Long> faults = plant(kind, lines);
        Path file = folder.resolve("faulty.jsonl");
        Files.write(file, lines);

        LogReading reading = LogReading.of(file, register);

        assertThat(faults).hasSize(FAULTS_OF_A_KIND);
        assertThat(reading.rowsOut).isEqualTo(reading.rowsIn);
        assertThat(unseen(kind, faults, reading)).as("faults not seen").isEmpty();
        assertThat(cleanReading.accepted.entrySet().stream()
                        .filter(e -> !faults.contains(e.getValue().source().line()))
                        .filter(e -> reading.accepted.get(e.getKey()) == null
                                || !e.getValue()
                                        .visit()
                                        .equals(reading.accepted.get(e.getKey()).visit())
                                || !java.util.Objects.equals(
                                        e.getValue().wheel(),
                                        reading.accepted.get(e.getKey()).wheel()))
                        .map(Map.Entry::getKey))
                .as("other rows that came out differently")
                .isEmpty();
    }

    private static Set<Long> plant(Kind kind, List<String> lines) throws IOException {
        List<Integer> order =
                new ArrayList<>(IntStream.range(0, lines.size()).boxed().toList());
        Collections.shuffle(order, new Random(43));
        Set<Long> faults = new HashSet<>();
        for (int i : order) {
            String spoiled = kind.spoiler().spoil((ObjectNode) JSON.readTree(lines.get(i)));
            if (spoiled != null && faults.size() < FAULTS_OF_A_KIND) {
                lines.set(i, spoiled);
                faults.add(i + 1L);
            }
        }
        return faults;
    }

    private static List<Long> unseen(Kind kind, Set<Long> faults, LogReading reading) {
        long counted = reading.notes.entrySet().stream()
                .filter(e -> e.getKey().name().equals(kind.expected()))
                .mapToLong(e -> e.getValue() - cleanReading.notes.getOrDefault(e.getKey(), 0L))
                .sum();
        return counted >= faults.size()
                ? List.of()
                : faults.stream()
                        .filter(line -> !reading.namesAt(line).contains(kind.expected()))
                        .toList();
    }
}
