package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;
import static sensorrounds.ingest.Sheets.row;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sensorrounds.ingest.StoreUpdate.Outcome;
import sensorrounds.ingest.StoreUpdate.Scrutiny;

/** A store takes in the sheets of a workbook one by one, and looks into a workbook again only when it has changed. */
class OtherFormsStoreTest {
    private static final List<Object> HEADER = row("visitId", "visitedAt", "vehicleId", "position", "read");

    @TempDir
    private Path dir;

    private long clock = 1_700_000_000_000L;

    private Path workbook() {
        return dir.resolve("visit-logs/t.xlsx");
    }

    private void write(String... months) throws IOException {
        Sheets sheets = new Sheets();
        sheets.add("Words", List.of(row("ok")));
        for (String month : months) {
            sheets.add(month, List.of(HEADER, row("V-" + month, "2025-11-18", "K1", "1L", "ok")));
        }
        sheets.write(workbook());
        touch();
    }

    private void touch() throws IOException {
        clock += 60_000;
        Files.setLastModifiedTime(workbook(), FileTime.fromMillis(clock));
    }

    private Outcome update() {
        try (LogStore store = LogStore.open(dir.resolve("store").toString(), Fixtures.HADOOP)) {
            List<LogFile> logs = new LogFiles(Fixtures.HADOOP, dir.toString(), List.of())
                    .find(dir.resolve("visit-logs").toString(), store.knows());
            return new StoreUpdate(
                            () -> {
                                throw new AssertionError("an update of this size needs no Spark");
                            },
                            store,
                            40,
                            Long.MAX_VALUE)
                    .run(logs, Scrutiny.SIZE_AND_TIME);
        }
    }

    private static List<Long> numbers(Outcome done) {
        return List.of(
                (long) done.unchanged(),
                (long) done.fresh(),
                (long) done.changed(),
                (long) done.withdrawn(),
                done.logs().rows());
    }

    @Test
    void sheetsComeChangeAndGoAndAnUnchangedWorkbookIsNotOpened() throws IOException {
        write("November");
        assertThat(numbers(update())).containsExactly(0L, 2L, 0L, 0L, 1L);

        FileTime time = Files.getLastModifiedTime(workbook());
        byte[] whole = Files.readAllBytes(workbook());
        Files.write(workbook(), new byte[whole.length]);
        Files.setLastModifiedTime(workbook(), time);
        assertThat(numbers(update())).containsExactly(2L, 0L, 0L, 0L, 1L);

        write("November", "December");
        assertThat(numbers(update())).containsExactly(0L, 1L, 2L, 0L, 2L);

        write("December");
        Outcome last = update();
        assertThat(last.withdrawn()).isEqualTo(1);
        assertThat(last.logs().rows()).isEqualTo(1);
        assertThat(last.logs().files())
                .extracting(LogFile::name)
                .containsExactly("visit-logs/t.xlsx#December", "visit-logs/t.xlsx#Words");
    }
}
