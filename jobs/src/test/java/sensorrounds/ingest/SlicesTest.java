package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.GZIPOutputStream;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import sensorrounds.SparkTest;
import sensorrounds.intake.FileCount;
import sensorrounds.simulate.SimulateTask;
import sensorrounds.simulate.SimulationSettings;
import sensorrounds.tables.LogRow;

/** A file read in parts must give what it gives as a whole, line numbers included. */
class SlicesTest {
    @TempDir
    private Path folder;

    private static List<LogSlice> cut(LogFile file, long sliceBytes) {
        return new LogSlices(sliceBytes)
                .of(
                        List.of(file),
                        stretches -> stretches.stream()
                                .map(s -> SliceSurvey.of(s, Fixtures.HADOOP))
                                .toList(),
                        Fixtures.HADOOP);
    }

    private static List<LogRow> read(List<LogSlice> slices) {
        List<LogRow> rows = new ArrayList<>();
        FileCount count = null;
        for (LogSlice slice : slices) {
            LogReader reader = LogReader.open(slice, Fixtures.HADOOP);
            while (reader.hasNext()) {
                LogRow row = reader.next();
                if (row.file() == null) {
                    rows.add(row);
                } else {
                    count = count == null ? row.file() : count.plus(row.file());
                }
            }
        }
        rows.add(LogRow.of(count));
        return rows;
    }

    private LogFile log(String name, String text) throws IOException {
        Path file = folder.resolve(name);
        Files.writeString(file, text);
        return Fixtures.find(folder, file).get(0);
    }

    private static final String JSON = """
            \uFEFF{"visitId":"V1","visitedAt":"2025-03-04","vehicleId":"K1","notes":"Größe ✓","wheels":[]}

            {"visitId":"V2","visitedAt":"not a day","vehicleId":"K1"}\r
            {"visitId":"V3","visitedAt":"2025-03-05","vehicleId":"K2","wheels":[{"position":"1L","read":"ok"},{"position":"1R","read":"maybe"}]}
            {"broken
            {"visitId":"V4","visitedAt":"2025-03-05","vehicleId":"K2","notes":"%s"}

            {"visitId":"V5","visitedAt":"2025-03-05T10:00Z","vehicleId":"K2"}""".formatted("x".repeat(300));

    private static final String CSV = """
            visitId,visitedAt,vehicleId,position,read,notes
            V1,2025-03-04,K1,1L,ok,"a ""quoted"" word, and a comma"
            V1,2025-03-04,K1,1R,maybe,\r

            ,,,,,
            V2,2025-03-04,K2,1L,ok,5" nail
            V3,2025-03-04,K2,1L,ok,%s
            V4,2025-03-04,K2,1L,ok,,too many
            V5,2025-03-04,K2,1L,ok,ö
            """.formatted("y".repeat(200));

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 7, 16, 40, 64, 101, 250, 400})
    void jsonLinesInPartsAreTheSameRowsAsInOnePiece(long sliceBytes) throws IOException {
        LogFile file = log("a.jsonl", JSON);

        List<LogSlice> slices = cut(file, sliceBytes);

        assertThat(read(slices)).isEqualTo(read(List.of(LogSlice.whole(file))));
        assertThat(slices.stream().mapToLong(LogSlice::length).sum()).isEqualTo(file.bytes());
        if (sliceBytes < 100) {
            assertThat(slices).hasSizeGreaterThan(4);
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 7, 16, 40, 64, 101, 200})
    void csvInPartsIsTheSameRowsAsInOnePiece(long sliceBytes) throws IOException {
        LogFile file = log("a.csv", CSV);

        List<LogSlice> slices = cut(file, sliceBytes);

        assertThat(read(slices)).isEqualTo(read(List.of(LogSlice.whole(file))));
        assertThat(slices).hasSizeGreaterThan(1);
        assertThat(read(slices)).extracting(r -> r.source().line()).contains(6L, 7L, 8L, 9L);
    }

    /** Each of these has a line end that ends no record, or an end of line that is no line feed. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "V1,2025-03-04,K1,1L,ok,\"two\nlines\"\n",
                "V1,2025-03-04,K1,1L,ok,a\rV2,2025-03-04,K1,1R,ok,b\n",
                // The stray quote and the opening one are two, and the newline still lies inside quotes.
                "V1,2025-03-04,K1,5\",ok,\"two\nlines\"\n",
            })
    void aFileWhoseRecordsRunOverLinesStaysWhole(String rows) throws IOException {
        LogFile file = log(
                "a.csv",
                "visitId,visitedAt,vehicleId,position,read,notes\n" + rows + "V9,2025-03-04,K1,,,\n".repeat(20));

        for (long sliceBytes = 1; sliceBytes < 150; sliceBytes += 7) {
            assertThat(cut(file, sliceBytes)).containsExactly(LogSlice.whole(file));
        }
    }

    @Test
    void aCompressedFileStaysWhole() throws IOException {
        Path file = folder.resolve("a.jsonl.gz");
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(file))) {
            out.write(JSON.getBytes(StandardCharsets.UTF_8));
        }
        LogFile log = Fixtures.find(folder, file).get(0);

        assertThat(cut(log, 20)).containsExactly(LogSlice.whole(log));
        assertThat(read(cut(log, 20))).hasSameSizeAs(read(List.of(LogSlice.whole(log("b.jsonl", JSON)))));
    }

    @Test
    void encodingsInWhichALineFeedMayBeHalfACharacterStayWhole() throws IOException {
        Files.createDirectories(folder.resolve("layouts"));
        Files.writeString(
                folder.resolve("layouts/wide.json"),
                "{\"name\":\"wide\",\"appliesTo\":[\"a.csv\"],\"encoding\":\"UTF-16LE\"}");
        // U+0A0A holds the byte of a line feed twice.
        Files.write(
                folder.resolve("a.csv"),
                ("visitId,visitedAt,vehicleId,notes\n" + "V1,2025-03-04,K1,\u0a0a\n".repeat(9))
                        .getBytes(StandardCharsets.UTF_16LE));
        LogFile file = Fixtures.find(folder, folder.resolve("a.csv")).get(0);

        assertThat(cut(file, 8)).containsExactly(LogSlice.whole(file));
        assertThat(Fixtures.accepted(read(cut(file, 8)))).hasSize(9);
    }

    @ParameterizedTest
    @CsvSource({"LARGE_JSON_LINES, 5000", "LARGE_JSON_LINES, 77777", "LARGE_CSV, 5000", "LARGE_CSV, 77777"})
    void theJobGivesTheSameTableFromPartsAsFromWholeFiles(SimulationSettings.Output output, long sliceBytes)
            throws IOException {
        SparkSession spark = SparkTest.spark();
        Path data = folder.resolve("data");
        new SimulateTask().run(SimulationSettings.large(5, 30, output), data);
        List<LogFile> files = Fixtures.find(data, data.resolve("visit-logs"));

        IngestSummary whole =
                new IngestJob(spark, 3).run(files, folder.resolve("whole").toString());
        IngestSummary parts = new IngestJob(spark, 3, sliceBytes)
                .run(files, folder.resolve("parts").toString());

        assertThat(parts).isEqualTo(whole);
        assertThat(table("parts")).hasSizeGreaterThan(1000).isEqualTo(table("whole"));
        assertThat(cut(files.get(0), sliceBytes)).hasSizeGreaterThan(2);
    }

    private List<String> table(String name) {
        return LogTable.read(SparkTest.spark(), folder.resolve(name).toString()).collectAsList().stream()
                .map(Row::mkString)
                .toList();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "V9,2025-03-04,K1,1L,ok,\n"})
    void aFileThatShrankOrGrewSinceItWasListedIsRefused(String more) throws IOException {
        LogFile file = log("a.csv", CSV);
        List<LogSlice> slices = cut(file, 100);
        Files.writeString(folder.resolve("a.csv"), more.isEmpty() ? CSV.substring(0, 200) : CSV + more);

        for (List<LogSlice> parts : List.of(slices, List.of(LogSlice.whole(file)))) {
            assertThatExceptionOfType(RefusedInput.class)
                    .isThrownBy(() -> read(parts))
                    .withMessageContaining("a log changed while it was read")
                    .withMessageContaining("a.csv");
        }
    }
}
