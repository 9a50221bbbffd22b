package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.spark.sql.SparkSession;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sensorrounds.SparkTest;
import sensorrounds.ingest.StoreUpdate.Outcome;
import sensorrounds.ingest.StoreUpdate.Scrutiny;
import sensorrounds.intake.Duplicate;

/** Whatever happens to the logs between two updates, the table from the store is the one a full reading gives, byte for byte. */
class StoreUpdateTest {
    private static final SparkSession SPARK = SparkTest.spark();
    private static final String HEAD = "visitId,visitedAt,vehicleId,revision,position,read,sensorId\n";
    private static final String JANUARY = HEAD + """
            V1,2025-01-10,K1,,1L,ok,0A1B2C01
            V1,2025-01-10,K1,,1R,no-answer,0A1B2C02
            V2,2025-01-11,K2,,1L,ok,0A1B2C03
            V2,2025-01-11,K2,,1R,maybe,0A1B2C04
            """;
    private static final String FEBRUARY = """
            {"visitId":"V3","visitedAt":"2025-02-01","vehicleId":"K1","wheels":[{"position":"1L","read":"ok","sensorId":"0A1B2C01"},{"position":"1R","read":"ok","sensorId":"0A1B2C09"}]}
            {"visitId":"V4","visitedAt":"2025-02-02","vehicleId":"K3","wheels":[]}
            """;
    private static final String MARCH = """
            visit;day;vehicle;place;answer
            V5;05.03.2025;K2;1L;ja
            V5;05.03.2025;K2;1R;nein
            """;
    private static final String LAYOUT = """
            {"name":"march","appliesTo":["visit-logs/march.csv"],"delimiter":";","dateFormat":"dd.MM.yyyy",
             "columns":{"visit":"visitId","day":"visitedAt","vehicle":"vehicleId","place":"position","answer":"read"},
             "words":{"read":{"ja":"ok","nein":"%s"}}}
            """;

    @TempDir
    private Path dir;

    private Path data;
    private long clock = 1_700_000_000_000L;

    @BeforeEach
    void threeMonthsInAStore() throws IOException {
        data = Files.createDirectories(dir.resolve("data"));
        write("layouts/march.json", String.format(LAYOUT, "no-answer"));
        write("visit-logs/january.csv", JANUARY);
        write("visit-logs/february.jsonl", FEBRUARY);
        write("visit-logs/march.csv", MARCH);
        assertThat(numbers(update("store"))).containsExactly(0, 3, 0, 0);
    }

    /** Each writing has a time of its own, long ago. */
    private void write(String name, String text) throws IOException {
        Path file = data.resolve(name);
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
        clock += 60_000;
        Files.setLastModifiedTime(file, FileTime.fromMillis(clock));
    }

    private List<LogFile> logs() {
        return Fixtures.find(data, data.resolve("visit-logs"));
    }

    private Outcome update(String store) {
        return update(store, 40, Scrutiny.SIZE_AND_TIME);
    }

    /** A store is filled on Spark and then kept up to date on threads, as happens to one of some size. */
    private long onThreads(String store) {
        return dir.resolve(store).resolve("store.json").toFile().exists() ? Long.MAX_VALUE : 0;
    }

    /** Updates a store and writes the table that follows from it. */
    private Outcome update(String store, int mostSegments, Scrutiny scrutiny) {
        try (LogStore open = LogStore.open(dir.resolve(store).toString(), Fixtures.HADOOP)) {
            Outcome done = new StoreUpdate(() -> SPARK, open, mostSegments, onThreads(store)).run(logs(), scrutiny);
            Path table = dir.resolve("from-" + store);
            delete(table);
            new IngestJob(SPARK, 3).run(done.logs(), table.toString());
            return done;
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static List<Integer> numbers(Outcome done) {
        return List.of(done.unchanged(), done.fresh(), done.changed(), done.withdrawn());
    }

    /** The table from the store, from all logs read anew, and from a store filled anew are the same bytes. */
    private IngestSummary assertSameAsFullReload() throws IOException {
        delete(dir.resolve("full"));
        IngestSummary full =
                new IngestJob(SPARK, 3).run(logs(), dir.resolve("full").toString());
        delete(dir.resolve("anew"));
        update("anew");
        assertThat(files("from-store")).isEqualTo(files("full"));
        assertThat(files("from-anew")).isEqualTo(files("full"));
        return full;
    }

    /** Content of the table's files by name, less the word that Spark makes up for each job. */
    private Map<String, String> files(String table) throws IOException {
        Path folder = dir.resolve(table);
        Map<String, String> contents = new TreeMap<>();
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path file : all.filter(f -> f.toString().endsWith(".parquet")).toList()) {
                String name = folder.relativize(file).toString().replaceAll("(part-\\d+)-[-0-9a-f]{36}", "$1");
                contents.put(name, Arrays.toString(Files.readAllBytes(file)));
            }
        }
        assertThat(contents).hasSizeGreaterThan(2);
        return contents;
    }

    private static void delete(Path folder) throws IOException {
        if (Files.exists(folder)) {
            try (Stream<Path> all = Files.walk(folder)) {
                all.sorted((a, b) -> b.compareTo(a)).forEach(p -> p.toFile().delete());
            }
        }
    }

    /** Spark's own local file system keeps a sum beside each file, which would give the change away. */
    private static void rewrite(Path file, String text) throws IOException {
        Files.deleteIfExists(file.resolveSibling("." + file.getFileName() + ".crc"));
        Files.writeString(file, text);
    }

    private Path segment(int number) {
        return dir.resolve(String.format("store/segments/%06d", number));
    }

    private Path firstParquet(int segment) throws IOException {
        try (Stream<Path> all = Files.walk(segment(segment))) {
            return all.filter(f -> f.toString().endsWith(".parquet"))
                    .sorted()
                    .findFirst()
                    .orElseThrow();
        }
    }

    @Test
    void nothingNewReadsNothing() throws IOException {
        Outcome done = update("store");

        assertThat(numbers(done)).containsExactly(3, 0, 0, 0);
        assertThat(done.read()).isNull();
        assertThat(done.logs().rows()).isEqualTo(9);
        assertThat(done.logs().quarantined()).isEqualTo(1);
        assertSameAsFullReload();
    }

    @Test
    void aNewLogIsReadAlone() throws IOException {
        write("visit-logs/april.csv", HEAD + "V6,2025-04-01,K1,,1L,ok,0A1B2C01\n");

        Outcome done = update("store");

        assertThat(numbers(done)).containsExactly(3, 1, 0, 0);
        assertThat(done.read().files())
                .extracting(IngestSummary.FileResult::file)
                .containsExactly("visit-logs/april.csv");
        assertThat(assertSameAsFullReload().accepted()).isEqualTo(9);
    }

    @Test
    void aLogThatHasGrownIsReadAgain() throws IOException {
        write("visit-logs/january.csv", JANUARY + "V7,2025-01-20,K2,,1L,ok,0A1B2C03\n");

        Outcome done = update("store");

        assertThat(numbers(done)).containsExactly(2, 0, 1, 0);
        assertThat(done.read().rowsIn()).isEqualTo(5);
        assertThat(assertSameAsFullReload().rowsIn()).isEqualTo(10);
    }

    @Test
    void aLogThatWasWithdrawnNoLongerCounts() throws IOException {
        Files.delete(data.resolve("visit-logs/january.csv"));

        assertThat(numbers(update("store"))).containsExactly(2, 0, 0, 1);
        assertThat(assertSameAsFullReload().files()).hasSize(2);

        write("visit-logs/january.csv", JANUARY);
        assertThat(numbers(update("store"))).containsExactly(2, 1, 0, 0);
        assertSameAsFullReload();
    }

    @Test
    void aLateRevisionTakesBackAVisitOfAnOlderLog() throws IOException {
        write("visit-logs/late.csv", HEAD + "V1,2025-01-10,K1,2,1L,no-answer,0A1B2C01\n");

        assertThat(numbers(update("store"))).containsExactly(3, 1, 0, 0);
        assertThat(assertSameAsFullReload().duplicates()).containsExactly(Map.entry(Duplicate.Rule.REVISED, 2L));

        Files.delete(data.resolve("visit-logs/late.csv"));
        assertThat(numbers(update("store"))).containsExactly(3, 0, 0, 1);
        assertThat(assertSameAsFullReload().duplicates()).isEmpty();
    }

    @Test
    void aCorrectionInAnotherLogCountsInsteadOfTheFormerRow() throws IOException {
        write("visit-logs/z.csv", HEAD + "V2,2025-01-11,K2,,1L,no-answer,0A1B2C03\nV1,2025-01-10,K1,,1L,ok,0A1B2C01\n");

        assertThat(numbers(update("store"))).containsExactly(3, 1, 0, 0);
        assertThat(assertSameAsFullReload().duplicates())
                .containsOnly(Map.entry(Duplicate.Rule.SUPERSEDED, 1L), Map.entry(Duplicate.Rule.EXACT, 1L));

        write("visit-logs/z.csv", HEAD + "V2,2025-06-11,K2,,1L,no-answer,0A1B2C03\n");
        assertThat(numbers(update("store"))).containsExactly(3, 0, 1, 0);
        assertThat(assertSameAsFullReload().quarantine())
                .extracting(r -> r.rule().name())
                .contains("VISIT_KEY_REUSED");
    }

    @Test
    void logsOfAChangedLayoutAreReadAgain() throws IOException {
        write("layouts/march.json", String.format(LAYOUT, "not-tried"));

        assertThat(numbers(update("store"))).containsExactly(2, 0, 1, 0);
        assertSameAsFullReload();
        assertThat(LogTable.accepted(SPARK, dir.resolve("from-store").toString())
                        .collect())
                .extracting(r -> r.wheel() == null ? null : r.wheel().read().name())
                .contains("NOT_TRIED");
    }

    @Test
    void aLogWrittenAnewWithTheSameContentIsNotReadAgain() throws IOException {
        write("visit-logs/january.csv", JANUARY);

        assertThat(numbers(update("store"))).containsExactly(3, 0, 0, 0);
        assertSameAsFullReload();
    }

    /** Two writings within one tick of the clock have the same size and time, and other content. */
    @Test
    void aChangeWithinOneTickIsSeenByTheContent() throws IOException {
        Path file = data.resolve("visit-logs/january.csv");
        Files.writeString(file, JANUARY + "\n");
        assertThat(numbers(update("store"))).containsExactly(2, 0, 1, 0);
        FileTime justNow = Files.getLastModifiedTime(file);

        Files.writeString(file, JANUARY.replace("V2,2025-01-11", "V2,2025-01-12") + "\n");
        Files.setLastModifiedTime(file, justNow);

        assertThat(numbers(update("store"))).containsExactly(2, 0, 1, 0);
        assertSameAsFullReload();
    }

    @Test
    void aChangeThatHidesBehindSizeAndTimeIsSeenWhenAskedToVerify() throws IOException {
        Path file = data.resolve("visit-logs/january.csv");
        FileTime before = Files.getLastModifiedTime(file);
        Files.writeString(file, JANUARY.replace("V2,2025-01-11", "V2,2025-01-12"));
        Files.setLastModifiedTime(file, before);

        assertThat(numbers(update("store"))).containsExactly(3, 0, 0, 0);
        assertThat(numbers(update("store", 40, Scrutiny.CONTENT))).containsExactly(2, 0, 1, 0);
        assertSameAsFullReload();
    }

    @Test
    void manyUpdatesMergeTheirSegmentsAndLoseNothing() throws IOException {
        for (int day = 1; day <= 9; day++) {
            write(
                    "visit-logs/day" + day + ".csv",
                    HEAD + "D" + day + ",2025-05-0" + day + ",K" + day % 3 + ",,1L,ok,\n");
            if (day % 3 == 0) {
                write("visit-logs/day1.csv", HEAD + "D1,2025-05-01,K" + day + ",,1R,ok,\n");
            }
            update("store", 3, Scrutiny.SIZE_AND_TIME);
            assertThat(dir.resolve("store/segments").toFile().list()).hasSizeLessThanOrEqualTo(3);
        }
        assertThat(assertSameAsFullReload().rowsIn()).isEqualTo(18);
    }

    @Test
    void aTornSegmentIsReadAgainFromTheLogs() throws IOException {
        write("visit-logs/april.csv", HEAD + "V6,2025-04-01,K1,,1L,ok,0A1B2C01\n");
        update("store");
        Path part = firstParquet(2);
        Files.write(part, Arrays.copyOf(Files.readAllBytes(part), 100));

        assertThat(numbers(update("store"))).containsExactly(3, 1, 0, 0);
        assertSameAsFullReload();

        Files.delete(firstParquet(1));
        assertThat(numbers(update("store"))).containsExactly(1, 3, 0, 0);
        assertSameAsFullReload();
    }

    @Test
    void aTornStateMeansThatAllIsReadAgain() throws IOException {
        Path state = dir.resolve("store/states/000001.json");
        rewrite(state, Files.readString(state).substring(0, 200));
        assertThat(numbers(update("store"))).containsExactly(0, 3, 0, 0);
        assertSameAsFullReload();

        rewrite(dir.resolve("store/store.json"), "{}");
        try (LogStore open = LogStore.open(dir.resolve("store").toString(), Fixtures.HADOOP)) {
            assertThat(open.unusable()).contains("its state cannot be read");
        }
        assertThat(numbers(update("store"))).containsExactly(0, 3, 0, 0);
        assertSameAsFullReload();
    }

    @Test
    void whatAnotherVersionHasReadIsReadAgain() throws IOException {
        Path state = dir.resolve("store/states/000001.json");
        rewrite(state, Files.readString(state).replace(ReaderVersion.get(), "00000000-1"));

        try (LogStore open = LogStore.open(dir.resolve("store").toString(), Fixtures.HADOOP)) {
            assertThat(open.unusable()).contains("another version of this program has filled it");
        }
        assertThat(numbers(update("store"))).containsExactly(0, 3, 0, 0);
        assertSameAsFullReload();
    }

    /** A program that was killed has written a segment and a state, and not the pointer. */
    @Test
    void whatADeadUpdateLeftIsPassedOverAndRemoved() throws IOException {
        Files.createDirectories(segment(2));
        Files.writeString(segment(2).resolve("part-00000.parquet"), "half of it");
        Files.writeString(dir.resolve("store/states/000002.json"), "{");
        assertThat(numbers(update("store"))).containsExactly(3, 0, 0, 0);

        write("visit-logs/april.csv", HEAD + "V6,2025-04-01,K1,,1L,ok,0A1B2C01\n");
        assertThat(numbers(update("store"))).containsExactly(3, 1, 0, 0);
        assertSameAsFullReload();
        assertThat(dir.resolve("store/states").toFile().list((folder, name) -> name.endsWith(".json")))
                .hasSize(1);
    }

    @Test
    void aLogThatGrowsWhileItIsReadLeavesTheStoreAsItWas() throws IOException {
        write("visit-logs/april.csv", HEAD + "V6,2025-04-01,K1,,1L,ok,0A1B2C01\n");
        List<LogFile> listed = logs();
        write("visit-logs/april.csv", HEAD + "V6,2025-04-01,K1,,1L,ok,0A1B2C01\nV8,2025-04");
        Map<String, String> before = files("from-store");

        try (LogStore open = LogStore.open(dir.resolve("store").toString(), Fixtures.HADOOP)) {
            assertThatExceptionOfType(RefusedInput.class)
                    .isThrownBy(() -> new StoreUpdate(() -> SPARK, open).run(listed, Scrutiny.SIZE_AND_TIME))
                    .withMessageContaining("a log changed while it was read")
                    .withMessageContaining("april.csv");
        }
        Files.delete(data.resolve("visit-logs/april.csv"));
        assertThat(numbers(update("store"))).containsExactly(3, 0, 0, 0);
        assertThat(files("from-store")).isEqualTo(before);
    }

    @Test
    void aLogOfTheSameSizeWrittenWhileItIsReadIsRefused() throws IOException {
        write("visit-logs/april.csv", HEAD + "V6,2025-04-01,K1,,1L,ok,0A1B2C01\n");
        List<LogFile> listed = logs();
        write("visit-logs/april.csv", HEAD + "V6,2025-04-02,K1,,1L,ok,0A1B2C01\n");

        try (LogStore open = LogStore.open(dir.resolve("store").toString(), Fixtures.HADOOP)) {
            assertThatExceptionOfType(RefusedInput.class)
                    .isThrownBy(() -> new StoreUpdate(() -> SPARK, open).run(listed, Scrutiny.SIZE_AND_TIME))
                    .withMessageContaining("written meanwhile");
        }
    }

    @Test
    void threadsAndSparkStoreTheSameBlocks() throws IOException {
        List<String> folders = List.of("on-spark", "on-threads", "copied-on-spark", "copied-on-threads");
        try (LogStore open = LogStore.open(dir.resolve("store").toString(), Fixtures.HADOOP)) {
            List<StoreWork> works = List.of(new StoreWorkOnSpark(SPARK, open), new StoreWorkOnThreads(open, 2));
            List<LogFile> logs = logs();
            StoreState.Segment february =
                    open.state().segments().get(0).without(List.of("visit-logs/january.csv", "visit-logs/march.csv"));
            for (int i = 0; i < 2; i++) {
                StoreWork work = works.get(i);
                work.copy(List.of(february), dir.resolve(folders.get(2 + i)).toString());
                IngestSummary read =
                        work.read(logs, dir.resolve(folders.get(i)).toString()).summary();
                assertThat(read.rowsIn()).isEqualTo(9);
                assertThat(read.quarantined()).isEqualTo(1);
            }
            assertThat(works.get(1).checksums(logs)).isEqualTo(works.get(0).checksums(logs));
        }

        assertThat(blocks(folders.get(0))).hasSize(9).isEqualTo(blocks(folders.get(1)));
        assertThat(blocks(folders.get(2))).hasSize(3).isEqualTo(blocks(folders.get(3)));
    }

    private List<String> blocks(String folder) {
        return SPARK
                .read()
                .schema(BlockTable.SCHEMA)
                .parquet(dir.resolve(folder).toString())
                .toJSON()
                .collectAsList()
                .stream()
                .sorted()
                .toList();
    }

    @Test
    void anUpdateOfADaysSizeStartsNoSpark() throws IOException {
        write("visit-logs/april.csv", HEAD + "V6,2025-04-01,K1,,1L,ok,0A1B2C01\n");

        try (LogStore open = LogStore.open(dir.resolve("store").toString(), Fixtures.HADOOP)) {
            Outcome done = new StoreUpdate(
                            () -> {
                                throw new IllegalStateException("Spark was asked for");
                            },
                            open)
                    .run(logs(), Scrutiny.SIZE_AND_TIME);
            assertThat(numbers(done)).containsExactly(3, 1, 0, 0);
        }
    }
}
