package sensorrounds.ingest;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.hadoop.conf.Configuration;
import sensorrounds.intake.Rejection;
import sensorrounds.tables.LogRow;
import sensorrounds.visit.LoggedWheel;

/** Files for tests, and the short way to read them without Spark. */
final class Fixtures {
    static final Configuration HADOOP = new Configuration();
    static final Path TRAPS = folder("/fixtures/traps");
    static final Path REFUSED = folder("/fixtures/refused");
    /** The examples of docs/visit-log.md, which users copy. */
    static final Path EXAMPLES = repositoryRoot().resolve("docs/visit-log-examples");

    private Fixtures() {}

    private static Path folder(String name) {
        try {
            return Path.of(Fixtures.class.getResource(name).toURI());
        } catch (URISyntaxException e) {
            throw new IllegalStateException(name, e);
        }
    }

    static Path repositoryRoot() {
        Path here = Path.of("").toAbsolutePath();
        return here.getFileName().toString().equals("jobs") ? here.getParent() : here;
    }

    static List<LogFile> find(Path dataFolder, Path where) {
        return new LogFiles(
                        HADOOP,
                        dataFolder.toString(),
                        new LayoutReader(HADOOP)
                                .read(dataFolder.resolve("layouts").toString()))
                .find(where.toString());
    }

    static List<LogRow> read(Path file) {
        return read(file.getParent(), file);
    }

    static List<LogRow> read(Path dataFolder, Path where) {
        List<LogRow> rows = new ArrayList<>();
        for (LogFile file : find(dataFolder, where)) {
            LogReader.open(LogSlice.whole(file), HADOOP).forEachRemaining(rows::add);
        }
        return rows;
    }

    static List<LoggedWheel> accepted(List<LogRow> rows) {
        return rows.stream().map(LogRow::accepted).filter(r -> r != null).toList();
    }

    static List<Rejection> rejected(List<LogRow> rows) {
        return rows.stream().map(LogRow::quarantined).filter(r -> r != null).toList();
    }

    static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
