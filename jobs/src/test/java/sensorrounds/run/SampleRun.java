package sensorrounds.run;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** One run of the engine on the sample data, shared by the tests that look at its outputs. */
final class SampleRun {
    static final Path DATA = Path.of("../sample-data");

    private static SampleRun run;

    private final Path folder;

    private SampleRun(Path folder) {
        this.folder = folder;
    }

    static synchronized SampleRun get() {
        if (run == null) {
            try {
                Path out = Files.createTempDirectory("sample-run");
                Runtime.getRuntime().addShutdownHook(new Thread(() -> delete(out)));
                RunOptions options = new RunOptions(DATA.toString(), null, null, out.toString(), null);
                run = new SampleRun(
                        Path.of(new Pipeline(options, Progress.SILENT).run().folder()));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return run;
    }

    Path folder() {
        return folder;
    }

    /** Rows of a result table as people get it, by column name. */
    List<Map<String, String>> csv(String name) {
        return csv(folder.resolve("csv/" + name + ".csv"));
    }

    /** The one vehicle with this story, by the truth that the engine never reads. */
    static String vehicle(String story) {
        return csv(DATA.resolve("truth/patterns.csv")).stream()
                .filter(r -> r.get("story").equals(story))
                .map(r -> r.get("vehicleId"))
                .findFirst()
                .orElseThrow();
    }

    static List<Map<String, String>> csv(Path file) {
        try (CsvReader<CsvRecord> records = CsvReader.builder().ofCsvRecord(file)) {
            List<String> header = null;
            List<Map<String, String>> rows = new ArrayList<>();
            for (CsvRecord record : records) {
                if (header == null) {
                    header = record.getFields();
                    continue;
                }
                Map<String, String> row = new LinkedHashMap<>();
                for (int i = 0; i < header.size(); i++) {
                    row.put(header.get(i), record.getField(i));
                }
                rows.add(row);
            }
            return rows;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static void delete(Path folder) {
        try (Stream<Path> all = Files.walk(folder)) {
            all.sorted(Comparator.reverseOrder()).forEach(p -> p.toFile().delete());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
