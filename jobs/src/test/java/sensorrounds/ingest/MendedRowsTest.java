package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sensorrounds.SparkTest;
import sensorrounds.visit.LoggedWheel;

/** A refused row comes in again once it is mended: in its own file, or in a further one when that file must not be touched. */
class MendedRowsTest {
    private static final String HEADER = "visitId,visitedAt,vehicleId,position,read,sensorId,pressure\n";
    private static final String LEFT = "V1,2025-03-04,K1,1L,ok,0A1B2C01,230\n";
    private static final String WRONG = "V1,2025-03-04,K1,1R,ok,0A1B2C02,22O\n";
    private static final String RIGHT = "V1,2025-03-04,K1,1R,ok,0A1B2C02,220\n";

    @TempDir
    private Path dir;

    @BeforeEach
    void aLogWithARefusedRow() throws IOException {
        write("march.csv", HEADER + LEFT + WRONG);
    }

    private void write(String name, String text) throws IOException {
        Files.writeString(Files.createDirectories(dir.resolve("visit-logs")).resolve(name), text);
    }

    private IngestSummary ingest() {
        return new IngestJob(SparkTest.spark(), 1)
                .run(
                        Fixtures.find(dir, dir.resolve("visit-logs")),
                        dir.resolve("table").toString());
    }

    private List<String> used() {
        return LogTable.accepted(SparkTest.spark(), dir.resolve("table").toString()).collect().stream()
                .map(LoggedWheel::wheel)
                .map(w -> w.sensorId() + " " + w.pressureKpa())
                .sorted()
                .toList();
    }

    @Test
    void asItIsTheRowIsKeptAsideWithThePlaceAndTheValue() {
        IngestSummary summary = ingest();

        assertThat(summary.accepted()).isEqualTo(1);
        assertThat(summary.quarantined()).isEqualTo(1);
        assertThat(CheckReport.text(summary)).contains("march.csv:3").contains("22O");
    }

    @Test
    void mendedInItsFileNothingIsRefused() throws IOException {
        write("march.csv", HEADER + LEFT + RIGHT);

        IngestSummary summary = ingest();

        assertThat(summary.quarantined()).isZero();
        assertThat(used()).containsExactly("0A1B2C01 230.0", "0A1B2C02 220.0");
    }

    /** The wheel joins the visit that stands in the other file; the rows of that file stay as they were counted. */
    @Test
    void mendedInAFurtherFileTheRowJoinsItsVisit() throws IOException {
        write("mended.csv", HEADER + RIGHT);

        IngestSummary summary = ingest();

        assertThat(summary.accepted()).isEqualTo(2);
        assertThat(summary.quarantined()).isEqualTo(1);
        assertThat(summary.duplicates()).isEmpty();
        assertThat(used()).containsExactly("0A1B2C01 230.0", "0A1B2C02 220.0");
    }
}
