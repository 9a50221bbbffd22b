package sensorrounds.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import org.apache.hadoop.conf.Configuration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sensorrounds.SparkTest;
import sensorrounds.ingest.LayoutReader;
import sensorrounds.ingest.OtherForms;
import sensorrounds.intake.Layout;

/**
 * Five technicians who send JSON lines and CSV, two of them in layouts of their own, and the same five with nested and flat
 * Parquet and workbooks: every table of the run is the same, but for the names of files and the numbers of lines.
 */
class MixedFormsRunTest {
    private static final Path DATA = TwelveVehicles.DATA;

    @Test
    void everyTableIsTheSameInOtherForms(@TempDir Path dir) throws IOException {
        Path data = dir.resolve("data");
        Path logs = Files.createDirectories(data.resolve("visit-logs"));
        for (String register : List.of("fleet.csv", "parts.csv", "stock.csv")) {
            Files.copy(DATA.resolve(register), data.resolve(register));
        }
        Files.createDirectories(data.resolve("layouts"));
        for (Path layout : files(DATA.resolve("layouts"))) {
            Files.writeString(
                    data.resolve("layouts").resolve(layout.getFileName()),
                    Files.readString(layout).replace(".csv.gz\"", ".xlsx\"").replace(".csv\"", ".xlsx\""));
        }
        nested("T11", dir, logs);
        nested("T21", dir, logs);
        List<Layout> layouts = new LayoutReader(new Configuration())
                .read(DATA.resolve("layouts").toString());
        for (String technician : List.of("T12", "T22", "T31")) {
            Layout layout = layouts.stream()
                    .filter(l -> l.appliesTo().get(0).contains(technician))
                    .findFirst()
                    .orElse(Layout.CANONICAL);
            for (Path csv : files(DATA.resolve("visit-logs/" + technician))) {
                String name = csv.getFileName().toString().replaceAll("\\.csv(\\.gz)?$", "");
                OtherForms forms = OtherForms.of(csv, layout);
                if (layout == Layout.CANONICAL) {
                    forms.parquet(SparkTest.spark(), logs.resolve(technician).resolve(name + ".parquet"));
                } else {
                    forms.workbook(logs.resolve(technician).resolve(name + ".xlsx"));
                }
            }
        }

        Path mixed = TwelveVehicles.run(data, dir.resolve("mixed"));
        Path plain = TwelveVehicles.csv();
        List<Path> tables = files(plain);
        assertThat(tables).hasSizeGreaterThan(20);
        assertThat(files(mixed))
                .extracting(Path::getFileName)
                .isEqualTo(tables.stream().map(Path::getFileName).toList());
        for (Path table : tables) {
            assertThat(withoutPlaces(mixed.resolve(table.getFileName())))
                    .as(table.getFileName().toString())
                    .isEqualTo(withoutPlaces(table));
        }
    }

    /** All logs of a technician, in the order of their names, as one table that Spark has written. */
    private static void nested(String technician, Path dir, Path logs) throws IOException {
        StringBuilder lines = new StringBuilder();
        for (Path file : files(DATA.resolve("visit-logs/" + technician))) {
            try (InputStream raw = Files.newInputStream(file);
                    InputStream plain = file.toString().endsWith(".gz") ? new GZIPInputStream(raw) : raw) {
                lines.append(new String(plain.readAllBytes(), StandardCharsets.UTF_8));
            }
        }
        Path json = Files.writeString(dir.resolve(technician + ".jsonl"), lines);
        Path table = logs.resolve(technician).resolve("logs.parquet");
        SparkTest.spark().read().json(json.toString()).coalesce(1).write().parquet(table.toString());
        assertThat(table.resolve("_SUCCESS")).exists();
    }

    private static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(Files::isRegularFile)
                    .filter(f -> !f.getFileName().toString().startsWith("."))
                    .sorted()
                    .toList();
        }
    }

    private static String withoutPlaces(Path table) throws IOException {
        return Files.readString(table).replaceAll("visit-logs/[^,;\"\\s]*?(,|:)\\d+", "PLACE");
    }
}
