package sensorrounds.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A run on twelve simulated vehicles against the tables it gave when they were last read by a person, cell by cell. A change
 * that is meant: look at each differing cell, then write the tables anew with {@code -Dgolden.write=true}.
 */
class GoldenRunTest {
    private static final Path EXPECTED = Path.of("src/test/resources/fixtures/twelve-vehicles-expected");
    /** Figures are equal on one Java; another may differ in the last bits of its mathematics. */
    private static final double RELATIVE = 1e-8;

    @Test
    void everyTableIsAsItWas() throws IOException {
        Path csv = TwelveVehicles.csv();
        if (Boolean.getBoolean("golden.write")) {
            Files.createDirectories(EXPECTED);
            for (Path table : tables(csv)) {
                Files.writeString(EXPECTED.resolve(table.getFileName()), Files.readString(table));
            }
        }
        List<String> names =
                tables(csv).stream().map(t -> t.getFileName().toString()).toList();
        assertThat(tables(EXPECTED).stream().map(t -> t.getFileName().toString()))
                .isEqualTo(names);
        List<String> differences = new ArrayList<>();
        for (String name : names) {
            compare(name, SampleRun.csv(EXPECTED.resolve(name)), SampleRun.csv(csv.resolve(name)), differences);
        }
        if (!differences.isEmpty()) {
            fail(differences.size() + " cells differ:\n"
                    + String.join("\n", differences.subList(0, Math.min(30, differences.size()))));
        }
    }

    @Test
    void aLargeTableStandsInTheSameOrderAsASmallOne(@TempDir Path out) throws IOException {
        RunOptions options = new RunOptions(TwelveVehicles.DATA.toString(), null, null, out.toString(), null);
        Path small = TwelveVehicles.csv();
        Path large = Path.of(new Pipeline(options, Progress.SILENT, 3).run().folder())
                .resolve("csv");
        for (Path table : tables(small)) {
            assertThat(Files.readString(large.resolve(table.getFileName())))
                    .as(table.getFileName().toString())
                    .isEqualTo(Files.readString(table));
        }
    }

    private static List<Path> tables(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(f -> f.toString().endsWith(".csv")).sorted().toList();
        }
    }

    private static void compare(
            String name,
            List<Map<String, String>> expected,
            List<Map<String, String>> actual,
            List<String> differences) {
        if (expected.size() != actual.size()) {
            differences.add(name + ": " + expected.size() + " rows expected, " + actual.size() + " written");
        }
        for (int i = 0; i < Math.min(expected.size(), actual.size()); i++) {
            Map<String, String> e = expected.get(i);
            Map<String, String> a = actual.get(i);
            if (!e.keySet().equals(a.keySet())) {
                differences.add(name + ": columns " + e.keySet() + " expected, " + a.keySet() + " written");
                return;
            }
            for (String column : e.keySet()) {
                if (!same(e.get(column), a.get(column))) {
                    differences.add(name + ", row " + (i + 1) + ", " + column + ": '" + e.get(column) + "' expected, '"
                            + a.get(column) + "' written");
                }
            }
        }
    }

    private static boolean same(String expected, String actual) {
        if (expected.equals(actual)) {
            return true;
        }
        try {
            double e = Double.parseDouble(expected);
            double a = Double.parseDouble(actual);
            return Math.abs(e - a) <= RELATIVE * Math.abs(e);
        } catch (NumberFormatException notNumbers) {
            return false;
        }
    }
}
