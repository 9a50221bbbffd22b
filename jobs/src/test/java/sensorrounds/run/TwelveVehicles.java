package sensorrounds.run;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.stream.Stream;

/** Twelve simulated vehicles, whose tables are kept beside them, and one run on them that tests share. */
final class TwelveVehicles {
    static final Path DATA = Path.of("src/test/resources/fixtures/twelve-vehicles");

    private static Path csv;

    private TwelveVehicles() {}

    /** Folder of the tables as CSV. */
    static synchronized Path csv() {
        if (csv == null) {
            try {
                Path out = Files.createTempDirectory("twelve-vehicles");
                Runtime.getRuntime().addShutdownHook(new Thread(() -> delete(out)));
                csv = run(DATA, out);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return csv;
    }

    static Path run(Path data, Path out) {
        RunOptions options = new RunOptions(data.toString(), null, null, out.toString(), null);
        return Path.of(new Pipeline(options, Progress.SILENT).run().folder()).resolve("csv");
    }

    private static void delete(Path folder) {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path file : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
