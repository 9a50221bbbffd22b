package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;
import sensorrounds.fleet.Vehicle;
import sensorrounds.simulate.SimulateTask;
import sensorrounds.simulate.SimulationSettings;
import sensorrounds.visit.LoggedWheel;

/**
 * Faults planted into the clean log of a simulated fleet: each must be refused, counted, resolved as a duplicate, or
 * reported with a row of its own, and no other row may come out differently. The fleet is drawn with seed 7, the places of
 * the faults with seed 41.
 */
class PlantedFaultsTest {
    private static final int FAULTS_OF_A_KIND = 25;
    private static final int VEHICLES = 240;
    private static final List<PlantedFaults.Kind> KINDS = PlantedFaults.ALL;

    @TempDir
    private static Path folder;

    private static FaultyCsv clean;
    private static LogReading cleanReading;
    private static Map<String, Vehicle> register;

    @BeforeAll
    static void simulate() throws IOException {
        Path data = folder.resolve("data");
        new SimulateTask().run(SimulationSettings.large(7, VEHICLES, SimulationSettings.Output.LARGE_CSV), data);
        Path log = data.resolve("visit-logs/fleet-00001.csv");
        clean = FaultyCsv.of(log);
        register = new RegisterReader(Fixtures.HADOOP, data.toString()).fleet();
        cleanReading = LogReading.of(log, register);
    }

    @Test
    void theCleanLogIsAcceptedWhollyAndHardlyDoubted() {
        assertThat(cleanReading.accepted).hasSize(clean.size() - 1);
        assertThat(cleanReading.fileDoubts).isEmpty();
        assertThat(KINDS).hasSizeGreaterThanOrEqualTo(40);
        // Flats, broken stems and sensors that fall silent are true; nothing else is remarked on.
        assertThat(cleanReading.remarked())
                .as(() -> cleanReading.remarks().toString())
                .isLessThan(clean.size() / 50);
    }

    @ParameterizedTest
    @FieldSource("KINDS")
    void everyFaultIsSeenAndNoOtherRowTouched(PlantedFaults.Kind kind) throws IOException {
        FaultyCsv log = clean.copy();
        List<Set<Long>> faults = plant(kind, log);
        Path file = folder.resolve("faulty.csv");
        log.write(file);

        LogReading reading = LogReading.of(file, register);

        assertThat(faults).as("places that lend themselves to it").hasSize(FAULTS_OF_A_KIND);
        assertThat(reading.rowsOut).isEqualTo(reading.rowsIn).isEqualTo(log.size() - 1);
        assertThat(unseen(kind, faults, reading)).as("faults not seen").isEmpty();
        assertThat(touched(faults, reading))
                .as("other rows that came out differently")
                .isEmpty();
    }

    /** At most one to a vehicle, so that no two faults explain each other. */
    private static List<Set<Long>> plant(PlantedFaults.Kind kind, FaultyCsv log) {
        List<Integer> rows =
                new ArrayList<>(IntStream.range(1, log.size()).boxed().toList());
        Collections.shuffle(rows, new Random(41));
        Set<String> vehicles = new HashSet<>();
        List<Set<Long>> faults = new ArrayList<>();
        for (int row : rows) {
            String vehicle = clean.get(row, "vehicleId");
            if (faults.size() < FAULTS_OF_A_KIND
                    && !vehicles.contains(vehicle)
                    && kind.planter().plant(log, row)) {
                vehicles.add(vehicle);
                faults.add(log.takeTouched());
            }
        }
        return faults;
    }

    private static List<Set<Long>> unseen(PlantedFaults.Kind kind, List<Set<Long>> faults, LogReading reading) {
        boolean note = reading.notes.keySet().stream().anyMatch(n -> n.name().equals(kind.expected()));
        if (note) {
            long counted = reading.notes.entrySet().stream()
                    .filter(e -> e.getKey().name().equals(kind.expected()))
                    .mapToLong(e -> e.getValue() - cleanReading.notes.getOrDefault(e.getKey(), 0L))
                    .sum();
            return counted >= faults.size() ? List.of() : faults;
        }
        return faults.stream()
                .filter(lines -> lines.stream()
                        .noneMatch(line -> reading.namesAt(line).contains(kind.expected())
                                && !reading.remarksBeyond(cleanReading, line).isEmpty()))
                .toList();
    }

    private static List<String> touched(List<Set<Long>> faults, LogReading reading) {
        Set<Long> lines = new HashSet<>();
        faults.forEach(lines::addAll);
        return cleanReading.accepted.entrySet().stream()
                .filter(e -> !lines.contains(e.getValue().source().line()))
                .filter(e -> !sameContent(e.getValue(), reading.accepted.get(e.getKey())))
                .map(Map.Entry::getKey)
                .toList();
    }

    /** The files have different names, so that sources are compared by line. */
    private static boolean sameContent(LoggedWheel a, LoggedWheel b) {
        return b != null
                && a.visit().equals(b.visit())
                && java.util.Objects.equals(a.wheel(), b.wheel())
                && a.source().line() == b.source().line();
    }
}
