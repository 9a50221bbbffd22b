package sensorrounds.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sensorrounds.simulate.SimulateTask.Existing;

/** The committed sample data is what the one command writes, and its truth about files is true. */
class SampleDataTest {
    private static final Path COMMITTED = Path.of(System.getProperty("basedir", "."), "..", "sample-data");

    @TempDir
    static Path temp;

    private static Path made;

    @BeforeAll
    static void make() throws IOException {
        made = temp.resolve("made");
        new SimulateTask().run(SimulationSettings.sample(), made);
    }

    @Test
    void committedFilesAreTheOnesTheCommandWrites() throws IOException {
        Map<String, byte[]> expected = content(made);
        Map<String, byte[]> actual = content(COMMITTED);
        // What people add beside the simulated files, such as settings, is theirs.
        actual.keySet().removeIf(name -> !name.contains("/") && !expected.containsKey(name));
        assertThat(actual.keySet()).isEqualTo(expected.keySet());
        expected.forEach((name, bytes) -> assertThat(actual.get(name)).as(name).isEqualTo(bytes));
    }

    @Test
    void sampleStaysSmall() throws IOException {
        try (Stream<Path> all = Files.walk(made)) {
            List<Path> files = all.filter(Files::isRegularFile).toList();
            assertThat(files).hasSizeLessThanOrEqualTo(60);
            long bytes = 0;
            for (Path f : files) {
                bytes += Files.size(f);
            }
            assertThat(bytes).isLessThan(3_000_000);
        }
    }

    @Test
    void rowsAndMishapsAreCountedAsTheFilesHaveThem() throws IOException {
        Map<String, Integer> quarantined = new HashMap<>();
        for (NamedCsvRecord m : csv(made.resolve("truth/mess.csv"), StandardCharsets.UTF_8, ',')) {
            if (m.getField("expected").equals("quarantined")) {
                quarantined.merge(m.getField("file"), Integer.parseInt(m.getField("rows")), Integer::sum);
            }
        }
        assertThat(quarantined.size()).isGreaterThan(8);
        Set<String> named = new HashSet<>();
        for (NamedCsvRecord f : csv(made.resolve("truth/files.csv"), StandardCharsets.UTF_8, ',')) {
            String name = f.getField("file");
            named.add(name);
            assertThat(rows(made.resolve(name))).as(name).isEqualTo(Integer.parseInt(f.getField("rows")));
            assertThat(Integer.parseInt(f.getField("quarantinedRows")))
                    .as(name)
                    .isEqualTo(quarantined.getOrDefault(name, 0));
        }
        try (Stream<Path> logs = Files.walk(made.resolve("visit-logs"))) {
            assertThat(logs.filter(Files::isRegularFile)
                            .map(p -> made.relativize(p).toString().replace('\\', '/')))
                    .containsExactlyInAnyOrderElementsOf(named);
        }
    }

    @Test
    void onlyTheLinesCutOffAreNoJson() throws IOException {
        Map<String, Set<Long>> cut = new HashMap<>();
        for (NamedCsvRecord m : csv(made.resolve("truth/mess.csv"), StandardCharsets.UTF_8, ',')) {
            if (m.getField("kind").equals("line-cut-off")) {
                cut.computeIfAbsent(m.getField("file"), f -> new HashSet<>()).add(Long.parseLong(m.getField("line")));
            }
        }
        assertThat(cut).isNotEmpty();
        ObjectMapper mapper = new ObjectMapper();
        for (Map.Entry<String, byte[]> file : content(made).entrySet()) {
            if (file.getKey().contains(".jsonl")) {
                String[] lines = new String(file.getValue(), StandardCharsets.UTF_8).split("\n");
                Set<Long> broken = new HashSet<>();
                for (int i = 0; i < lines.length; i++) {
                    try {
                        JsonNode visit = mapper.readTree(lines[i]);
                        assertThat(visit.get("wheels").isArray()).isTrue();
                    } catch (JsonProcessingException e) {
                        broken.add(i + 1L);
                    }
                }
                assertThat(broken).as(file.getKey()).isEqualTo(cut.getOrDefault(file.getKey(), Set.of()));
            }
        }
    }

    @Test
    void mappingsNameEveryHeaderAndEveryWordOfTheirFiles() throws IOException {
        check("layouts/trade-words.json", "T12", StandardCharsets.UTF_8, ',', Set.of("NSX"));
        check("layouts/decimal-comma.json", "T31", Charset.forName("windows-1252"), ';', Set.of("HX"));
    }

    private static void check(String layout, String technician, Charset charset, char delimiter, Set<String> slips)
            throws IOException {
        JsonNode mapping = new ObjectMapper().readTree(made.resolve(layout).toFile());
        Set<String> mapped = new HashSet<>();
        mapping.get("columns").fieldNames().forEachRemaining(mapped::add);
        mapping.get("ignore").forEach(n -> mapped.add(n.asText()));
        try (Stream<Path> files = Files.list(made.resolve("visit-logs").resolve(technician))) {
            for (Path file : files.sorted().toList()) {
                for (NamedCsvRecord row : csv(file, charset, delimiter)) {
                    assertThat(mapped).containsExactlyInAnyOrderElementsOf(row.getHeader());
                    for (Map.Entry<String, JsonNode> column :
                            mapping.get("columns").properties()) {
                        JsonNode words =
                                mapping.get("words").get(column.getValue().asText());
                        String text = row.getField(column.getKey());
                        if (words != null && !text.isEmpty() && !slips.contains(text)) {
                            assertThat(words.has(text))
                                    .as(column.getKey() + ": " + text)
                                    .isTrue();
                        }
                    }
                }
            }
        }
    }

    @Test
    void aFolderWithOtherContentIsLeftAlone() throws IOException {
        Path foreign = Files.createDirectories(temp.resolve("foreign"));
        Files.writeString(foreign.resolve("mine.txt"), "mine");
        SimulationSettings small = SimulationSettings.sample()
                .withStories(SimulationSettings.Stories.NONE)
                .withVehicles(3);
        assertThatThrownBy(() -> new SimulateTask().run(small, foreign))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("is not empty");
        assertThatThrownBy(() -> new SimulateTask().run(small, foreign, Existing.REPLACE_SIMULATED))
                .hasMessageContaining("holds no simulated data");
        assertThat(foreign.resolve("mine.txt")).hasContent("mine");
        Path again = temp.resolve("again");
        new SimulateTask().run(small, again);
        Files.writeString(again.resolve("settings.json"), "{}");
        new SimulateTask().run(small.withSeed(2), again, Existing.REPLACE_SIMULATED);
        assertThat(again.resolve("settings.json")).exists();
    }

    private static long rows(Path file) throws IOException {
        byte[] bytes = unpacked(file);
        if (file.toString().contains(".jsonl")) {
            long rows = 0;
            for (String line : new String(bytes, StandardCharsets.UTF_8).split("\n")) {
                boolean whole = line.endsWith("]}");
                rows += whole ? Math.max(1, line.split("\\{\"position\"", -1).length - 1 - positionsOfCodes(line)) : 1;
            }
            return rows;
        }
        return new String(bytes, StandardCharsets.ISO_8859_1).lines().count() - 1;
    }

    /** A fault code may carry a position too, but never as its first key. */
    private static int positionsOfCodes(String line) {
        return line.split("\\{\"code\":\"[0-9A-F]+\",\\{\"position\"", -1).length - 1;
    }

    private static List<NamedCsvRecord> csv(Path file, Charset charset, char delimiter) throws IOException {
        List<NamedCsvRecord> rows = new ArrayList<>();
        String text = new String(unpacked(file), charset);
        try (CsvReader<NamedCsvRecord> reader =
                CsvReader.builder().fieldSeparator(delimiter).ofNamedCsvRecord(text)) {
            reader.forEach(rows::add);
        }
        return rows;
    }

    /** By name; packed files are compared unpacked, for two builds of zlib need not pack alike. */
    private static Map<String, byte[]> content(Path root) throws IOException {
        Map<String, byte[]> all = new TreeMap<>();
        try (Stream<Path> files = Files.walk(root)) {
            files.filter(Files::isRegularFile).forEach(f -> {
                try {
                    all.put(root.relativize(f).toString().replace('\\', '/'), unpacked(f));
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
        }
        return all;
    }

    private static byte[] unpacked(Path file) throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        if (!file.toString().endsWith(".gz")) {
            return bytes;
        }
        try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(bytes))) {
            return in.readAllBytes();
        }
    }
}
