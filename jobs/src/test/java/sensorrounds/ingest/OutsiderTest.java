package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sensorrounds.intake.Layout;
import sensorrounds.intake.ParsedRow;
import sensorrounds.intake.VisitParser;
import sensorrounds.tables.LogRow;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.Source;

/**
 * An outsider writes logs from docs/visit-log.md alone: this class knows of the contract only what the field tables of the
 * document say, and writes every word and every end of every range in both forms.
 */
class OutsiderTest {
    private static final Path ROOT = Fixtures.repositoryRoot();
    private static final String DOCUMENT = Fixtures.text(ROOT.resolve("docs/visit-log.md"));
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final JsonSchema SCHEMA = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
            .getSchema(Fixtures.text(ROOT.resolve("docs/visit-log.schema.json")));

    @TempDir
    private Path dir;

    /** Field → values that its row of the table allows, of the visit or of a wheel. */
    private static Map<String, List<String>> table(String heading) {
        String from = DOCUMENT.substring(DOCUMENT.indexOf("## " + heading) + 3);
        Map<String, List<String>> fields = new LinkedHashMap<>();
        from.substring(0, from.indexOf("\n## ") < 0 ? from.length() : from.indexOf("\n## "))
                .lines()
                .filter(l -> l.startsWith("| `"))
                .forEach(line -> {
                    String[] cells = line.substring(2).split(" \\| ", 3);
                    quoted(cells[0]).forEach(name -> fields.put(name, values(name, cells[1], cells[2])));
                });
        return fields;
    }

    private static List<String> quoted(String text) {
        return Pattern.compile("`([^`]+)`")
                .matcher(text)
                .results()
                .map(m -> m.group(1))
                .toList();
    }

    private static List<String> values(String name, String type, String meaning) {
        Matcher range = Pattern.compile("(−?\\d+) (?:to (−?\\d+)|or more)").matcher(type);
        if (name.equals("position")) {
            return quoted(meaning).stream().filter(p -> p.length() > 1).toList();
        }
        if (name.equals("faultCodes")) {
            return List.of("none", "C0750/current;C0750-11/stored@1L;B1234/cleared");
        }
        if (type.contains("number") && range.find()) {
            String high = range.group(2) == null ? "123456" : range.group(2);
            return List.of(range.group(1).replace('−', '-'), high.replace('−', '-'));
        }
        if (type.contains("four digits")) {
            return quoted(meaning);
        }
        if (name.endsWith("ensorId")) {
            return List.of("0A1B2C", "7A1B2C3D");
        }
        List<String> words = quoted(type);
        return !words.isEmpty()
                ? words
                : type.startsWith("date") ? List.of("2025-11-18") : List.of("free, \"text\" of one's own");
    }

    /** One visit for each value of the longest list; shorter lists go round. */
    private static List<Map<String, String>> rows(Map<String, List<String>> visit, Map<String, List<String>> wheel) {
        int most = Stream.concat(visit.values().stream(), wheel.values().stream())
                .mapToInt(List::size)
                .max()
                .orElseThrow();
        List<Map<String, String>> rows = new ArrayList<>();
        for (int i = 0; i < most; i++) {
            Map<String, String> row = new LinkedHashMap<>();
            for (Map<String, List<String>> fields : List.of(visit, wheel)) {
                for (Map.Entry<String, List<String>> field : fields.entrySet()) {
                    row.put(
                            field.getKey(),
                            field.getValue().get(i % field.getValue().size()));
                }
            }
            row.put("visitId", "visit " + i);
            // The table gives these ranges in kPa and °C.
            row.put("pressureUnit", "kPa");
            row.put("temperatureUnit", "C");
            rows.add(row);
        }
        return rows;
    }

    private static String csv(List<Map<String, String>> rows) {
        return Stream.concat(Stream.of(rows.get(0).keySet()), rows.stream().map(Map::values))
                .map(cells -> cells.stream()
                        .map(c -> '"' + c.replace("\"", "\"\"") + '"')
                        .collect(Collectors.joining(",")))
                .collect(Collectors.joining("\n", "", "\n"));
    }

    /** As the table of the two forms has it: nested where CSV is flat, numbers and yes or no without quotes. */
    private static String json(Map<String, String> row, Map<String, List<String>> wheelFields) throws IOException {
        Map<String, Object> visit = new LinkedHashMap<>();
        Map<String, Object> placard = new LinkedHashMap<>();
        Map<String, Object> drive = new LinkedHashMap<>();
        Map<String, Object> wheel = new LinkedHashMap<>();
        row.forEach((name, text) -> {
            boolean id = name.endsWith("Id") || name.endsWith("Version") || name.equals("tyreDate");
            Object value = text.matches("-?\\d+") && !id
                    ? (Object) Long.valueOf(text)
                    : text.matches("true|false") ? Boolean.valueOf(text) : text;
            if (name.startsWith("placardPressure")) {
                placard.put(name.substring("placardPressure".length()), value);
            } else if (name.startsWith("testDrive")) {
                drive.put(Character.toLowerCase(name.charAt(9)) + name.substring(10), value);
            } else if (name.equals("faultCodes")) {
                visit.put(name, codes(text));
            } else {
                (wheelFields.containsKey(name) ? wheel : visit).put(name, value);
            }
        });
        visit.put("placardPressure", placard);
        visit.put("testDrive", drive);
        visit.put("wheels", List.of(wheel));
        return JSON.writeValueAsString(visit);
    }

    private static List<Map<String, String>> codes(String flat) {
        List<Map<String, String>> codes = new ArrayList<>();
        for (String one : flat.equals("none") ? new String[0] : flat.split(";")) {
            Map<String, String> code = new LinkedHashMap<>();
            code.put("code", one.split("/")[0]);
            code.put("state", one.split("/")[1].split("@")[0]);
            if (one.contains("@")) {
                code.put("position", one.split("@")[1]);
            }
            codes.add(code);
        }
        return codes;
    }

    private static List<LoggedWheel> readings(List<LogRow> rows) {
        assertThat(Fixtures.rejected(rows)).isEmpty();
        return Fixtures.accepted(rows).stream()
                .map(r -> new LoggedWheel(r.visit(), r.wheel(), new Source("", 1)))
                .toList();
    }

    @Test
    void logsWrittenFromTheDocumentAloneAreReadInBothForms() throws IOException {
        Map<String, List<String>> wheelFields = table("Fields of a wheel");
        List<Map<String, String>> rows = rows(table("Fields of the visit"), wheelFields);
        StringBuilder lines = new StringBuilder();
        for (Map<String, String> row : rows) {
            String line = json(row, wheelFields);
            assertThat(SCHEMA.validate(JSON.readTree(line))).as(line).isEmpty();
            lines.append(line).append('\n');
        }
        Path csv = Files.writeString(dir.resolve("a.csv"), csv(rows));
        Path json = Files.writeString(dir.resolve("a.jsonl"), lines);

        List<LoggedWheel> readings = readings(Fixtures.read(csv));

        assertThat(rows).hasSize(12);
        assertThat(readings).hasSize(12).isEqualTo(readings(Fixtures.read(json)));
        assertThat(readings.get(1).visit().vin()).isNotNull();
        assertThat(readings.get(1).visit().placardKpa()).containsEntry(9, 1500.0);
    }

    @Test
    void theVisitInCsvIsTheFirstOneInJson() throws IOException {
        Path csv = Files.writeString(dir.resolve("a.csv"), block("csv"));
        Path json = Files.writeString(
                dir.resolve("a.jsonl"), block("json").lines().findFirst().orElseThrow());

        assertThat(readings(Fixtures.read(csv))).hasSize(2).isEqualTo(readings(Fixtures.read(json)));
    }

    private static String block(String kind) {
        String from = DOCUMENT.substring(DOCUMENT.indexOf("```" + kind + "\n") + kind.length() + 4);
        return from.substring(0, from.indexOf("```"));
    }

    @Test
    void everyKeyOfALayoutIsExplained() throws IOException {
        Path layout = Files.createDirectories(dir.resolve("layouts")).resolve("x.json");
        Files.writeString(layout, "{\"name\":\"x\",\"appliesTo\":[\"*.csv\"],\"nameless\":1}");

        RefusedInput refused = catchThrowableOfType(
                RefusedInput.class,
                () -> new LayoutReader(Fixtures.HADOOP).read(layout.getParent().toString()));

        List<String> keys =
                Arrays.asList(refused.expected().replace("one of ", "").split(", "));
        String section = DOCUMENT.substring(DOCUMENT.indexOf("## Layouts"));
        assertThat(keys).hasSizeGreaterThan(15).allMatch(key -> section.contains("`" + key + "`"));
    }

    /**
     * Schema and reader judge every JSON line of the sample data alike. The sample has lines with planted mistakes, and a few
     * that the reader forgives or that only it can see: those are listed.
     */
    @Test
    void schemaAndReaderAgreeOnEveryLineOfTheSampleData() throws IOException {
        List<String> apart = new ArrayList<>();
        int valid = 0;
        int refused = 0;
        for (String folder : List.of("sample-data", "jobs/src/test/resources/fixtures/twelve-vehicles")) {
            for (String line : jsonLines(ROOT.resolve(folder).resolve("visit-logs"))) {
                boolean fits = fits(line);
                boolean read = isRead(line);
                valid += fits ? 1 : 0;
                refused += fits ? 0 : 1;
                if (fits != read) {
                    apart.add((fits ? "only the schema takes " : "only the reader takes ") + line);
                }
            }
        }
        assertThat(valid).isGreaterThan(550);
        assertThat(refused).isPositive();
        assertThat(apart).isEmpty();
    }

    private static boolean fits(String line) {
        try {
            JsonNode visit = JSON.readTree(line);
            return SCHEMA.validate(visit).isEmpty();
        } catch (IOException e) {
            return false;
        }
    }

    private static boolean isRead(String line) {
        JsonVisit visit = JsonVisit.read(line, new Source("a.jsonl", 1));
        return new VisitParser(Layout.CANONICAL)
                .visit(visit.visit(), visit.wheels()).stream().allMatch(ParsedRow.Accepted.class::isInstance);
    }

    private static List<String> jsonLines(Path folder) throws IOException {
        List<String> lines = new ArrayList<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file :
                    files.filter(f -> f.toString().contains(".jsonl")).sorted().toList()) {
                byte[] bytes = Files.readAllBytes(file);
                String text = file.toString().endsWith(".gz")
                        ? new String(new GZIPInputStream(Files.newInputStream(file)).readAllBytes())
                        : new String(bytes);
                text.lines().filter(l -> !l.isBlank()).forEach(lines::add);
            }
        }
        return lines;
    }
}
