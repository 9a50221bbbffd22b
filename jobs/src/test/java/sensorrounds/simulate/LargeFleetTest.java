package sensorrounds.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sensorrounds.simulate.SimulationSettings.Output;

class LargeFleetTest {
    @TempDir
    Path temp;

    @Test
    void jsonAndCsvHoldTheSameReadings() throws IOException {
        SimulationSettings asJson =
                SimulateTask.forReadings(SimulationSettings.large(5, 1, Output.LARGE_JSON_LINES), 20_000);
        SimulationSummary json = new SimulateTask().run(asJson, temp.resolve("json"));
        SimulationSummary csv = new SimulateTask().run(asJson.withOutput(Output.LARGE_CSV), temp.resolve("csv"));
        assertThat(json.rows()).isEqualTo(csv.rows()).isCloseTo(20_000, withinPercentage(10));
        ObjectMapper mapper = new ObjectMapper();
        try (CsvReader<NamedCsvRecord> rows =
                CsvReader.builder().ofNamedCsvRecord(temp.resolve("csv/visit-logs/fleet-00001.csv"))) {
            var next = rows.iterator();
            long read = 0;
            for (String line : Files.readAllLines(temp.resolve("json/visit-logs/fleet-00001.jsonl"))) {
                JsonNode visit = mapper.readTree(line);
                int wheels = Math.max(1, visit.get("wheels").size());
                for (int i = 0; i < wheels; i++, read++) {
                    NamedCsvRecord row = next.next();
                    JsonNode wheel = visit.get("wheels").path(i);
                    for (String field : new String[] {"visitId", "visitedAt", "vehicleId", "odometer", "warning"}) {
                        assertThat(row.getField(field))
                                .isEqualTo(visit.path(field).asText());
                    }
                    for (String field : new String[] {"position", "sensorId", "read", "wakeAttempts", "battery"}) {
                        assertThat(row.getField(field))
                                .isEqualTo(wheel.path(field).asText());
                    }
                    assertThat(row.getField("pressure").isEmpty())
                            .isEqualTo(wheel.path("pressure").isMissingNode());
                }
            }
            assertThat(next.hasNext()).isFalse();
            assertThat(read).isEqualTo(json.rows());
        }
    }

    @Test
    void twoRunsGiveTheSameBytes() throws IOException {
        SimulationSettings settings = SimulationSettings.large(5, 7000, Output.LARGE_JSON_LINES);
        new SimulateTask().run(settings, temp.resolve("a"));
        new SimulateTask().run(settings, temp.resolve("b"));
        for (String file : new String[] {"visit-logs/fleet-00001.jsonl", "visit-logs/fleet-00002.jsonl", "fleet.csv"}) {
            assertThat(Files.mismatch(
                            temp.resolve("a").resolve(file), temp.resolve("b").resolve(file)))
                    .as(file)
                    .isEqualTo(-1);
        }
    }
}
