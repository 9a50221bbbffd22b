package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sensorrounds.SparkTest;
import sensorrounds.intake.FileDoubt;
import sensorrounds.tables.LogRow;

/** A log copied in half: a line of CSV cut inside its last value looks whole but for its line end. */
class OpenEndsTest {
    private static final String HEADER = "visitId,visitedAt,vehicleId,position,read,odometer\n";
    private static final String FIRST = "V1,2025-03-04,K1,1L,ok,50000\n";

    @TempDir
    private Path dir;

    private Path log;

    private List<LogRow> read(String name, String text) throws IOException {
        log = Files.writeString(dir.resolve(name), text);
        return Fixtures.read(dir, log);
    }

    private static List<FileDoubt> doubts(List<LogRow> rows) {
        return FileDoubt.of(rows.get(rows.size() - 1).file());
    }

    @Test
    void aLastLineWithoutAnEndIsUsedAndTold() throws IOException {
        List<LogRow> rows = Fixtures.read(Fixtures.TRAPS.resolve("half-copied.csv"));

        assertThat(Fixtures.accepted(rows)).hasSize(2);
        assertThat(doubts(rows)).singleElement().satisfies(d -> {
            assertThat(d.kind()).isEqualTo(FileDoubt.Kind.LAST_LINE_OPEN);
            assertThat(d.what()).startsWith("line 3, the last,");
        });
    }

    @Test
    void everyKindOfLineEndIsAnEnd() throws IOException {
        for (String end : List.of("\n", "\r\n", "\r", "\n\n")) {
            assertThat(doubts(read("a.csv", (HEADER + FIRST).replace("\n", end))))
                    .as(end.replace("\n", "LF").replace("\r", "CR"))
                    .isEmpty();
        }
    }

    /** A line of JSON is whole when its braces are; one that is not goes to quarantine. */
    @Test
    void jsonShowsByItselfWhetherALineIsWhole() throws IOException {
        String visit = "{\"visitId\":\"V1\",\"visitedAt\":\"2025-03-04\",\"vehicleId\":\"K1\",\"odometer\":50000}";

        assertThat(doubts(read("a.jsonl", visit))).isEmpty();
        List<LogRow> cut = read("b.jsonl", visit + "\n" + visit.substring(0, visit.length() - 3));
        assertThat(Fixtures.accepted(cut)).hasSize(1);
        assertThat(Fixtures.rejected(cut)).hasSize(1);
    }

    @Test
    void aPackedLogIsLookedAtAsWell() throws IOException {
        log = dir.resolve("a.csv.gz");
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(log))) {
            out.write((HEADER + FIRST + "V2,2025-06-04,K1,1L,ok,5").getBytes());
        }
        assertThat(doubts(Fixtures.read(dir, log))).hasSize(1);
    }

    /** Of a log read in several parts only the last one ends the file. */
    @Test
    void aBigLogInPartsHasOneEnd() throws IOException {
        StringBuilder text = new StringBuilder(HEADER);
        for (int i = 0; i < 400; i++) {
            text.append("V").append(i).append(",2025-03-04,K1,1L,ok,50000\n");
        }
        Files.writeString(dir.resolve("a.csv"), text);
        IngestJob job = new IngestJob(SparkTest.spark(), 2, 2000);
        assertThat(job.check(Fixtures.find(dir, dir.resolve("a.csv"))).summary().fileDoubts())
                .isEmpty();

        Files.writeString(dir.resolve("a.csv"), text.substring(0, text.length() - 3));
        Examination cut = job.check(Fixtures.find(dir, dir.resolve("a.csv")));

        assertThat(cut.summary().fileDoubts()).hasSize(1);
        assertThat(CheckReport.text(cut))
                .contains("1: log without a last line end")
                .contains("a.csv: line 401, the last, has no line end");
    }

    @Test
    void theStoreReadsTheLogAgainWhenItHasGrown() throws IOException {
        read("a.csv", HEADER + FIRST + "V2,2025-06-04,K1,1L,ok,5");
        String store = dir.resolve("store").toString();
        assertThat(update(store)).contains("1 new").contains("1: log without a last line end");

        Files.writeString(log, HEADER + FIRST + "V2,2025-06-04,K1,1L,ok,51000\n");
        String again = update(store);

        assertThat(again).contains("1 changed").doesNotContain("line end");
        try (LogStore open = LogStore.open(store, Fixtures.HADOOP)) {
            IngestJob job = new IngestJob(SparkTest.spark(), 1);
            String table = dir.resolve("table").toString();
            job.run(new StoredLogs(open, open.state(), Fixtures.find(dir, log)), table);
            assertThat(LogTable.accepted(SparkTest.spark(), table).collect())
                    .extracting(r -> r.visit().odometerKm())
                    .containsExactly(50000.0, 51000.0);
        }
    }

    private String update(String store) {
        try (LogStore open = LogStore.open(store, Fixtures.HADOOP)) {
            return CheckReport.text(new StoreUpdate(SparkTest::spark, open)
                    .run(Fixtures.find(dir, log), StoreUpdate.Scrutiny.SIZE_AND_TIME));
        }
    }
}
