package sensorrounds.run;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The simulator wrote down what each file of the sample data holds and what should become of it; the engine never read that. */
class TruthCountsTest {
    @Test
    void everyRowOfEveryFileBecameWhatItShould() throws IOException {
        JsonNode run = new JsonMapper()
                .readTree(SampleRun.get().folder().resolve("run.json").toFile());
        Map<String, String> found = new HashMap<>();
        for (JsonNode f : run.get("files")) {
            found.put(
                    f.get("file").asText(),
                    f.get("read") + " rows, " + f.get("accepted") + " accepted, " + f.get("quarantined")
                            + " quarantined, " + f.get("duplicates") + " duplicates");
        }
        Map<String, String> truth = new HashMap<>();
        for (Map<String, String> f : SampleRun.csv(SampleRun.DATA.resolve("truth/files.csv"))) {
            int duplicates = Integer.parseInt(f.get("duplicateRows")) + Integer.parseInt(f.get("supersededRows"));
            truth.put(
                    f.get("file"),
                    f.get("rows") + " rows, " + f.get("acceptedRows") + " accepted, " + f.get("quarantinedRows")
                            + " quarantined, " + duplicates + " duplicates");
        }
        assertThat(truth).hasSizeGreaterThan(40);
        assertThat(found).isEqualTo(truth);
    }

    @Test
    void nothingIsLost() throws IOException {
        JsonNode rows = new JsonMapper()
                .readTree(SampleRun.get().folder().resolve("run.json").toFile())
                .get("rows");
        assertThat(rows.get("quarantined").asLong()).isPositive();
        assertThat(rows.get("duplicates").asLong()).isPositive();
        assertThat(rows.get("accepted").asLong()
                        + rows.get("quarantined").asLong()
                        + rows.get("duplicates").asLong())
                .isEqualTo(rows.get("read").asLong());
    }
}
