package sensorrounds.ingest;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.UnsupportedCharsetException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;
import sensorrounds.intake.Field;
import sensorrounds.intake.IdForm;
import sensorrounds.intake.Layout;
import sensorrounds.proposal.LayoutProposal;
import sensorrounds.visit.Side;

/** Reads the layouts of a data folder, {@code layouts/*.json}. */
public final class LayoutReader {
    private static final List<String> KEYS = List.of(
            "name",
            "appliesTo",
            "format",
            "delimiter",
            "encoding",
            "decimalMark",
            "dateFormat",
            "dateTimeFormat",
            "drivingSide",
            "idBase",
            "idDigits",
            "noTemperature",
            "columns",
            "ignore",
            "constants",
            "words",
            LayoutFile.UNDECIDED);

    /** Forms with one row per wheel. A layout reads all of them alike; it says in which it was made. */
    private static final List<String> TABLES = List.of("csv", "xlsx", "parquet");

    private final ObjectMapper json = new ObjectMapper().enable(JsonParser.Feature.STRICT_DUPLICATE_DETECTION);
    private final Configuration hadoop;

    public LayoutReader(Configuration hadoop) {
        this.hadoop = hadoop;
    }

    /**
     * @param folder folder of the layouts; there need not be one
     * @return the layouts ordered by file name
     * @throws RefusedInput when a file is no layout, or two have the same name
     */
    public List<Layout> read(String folder) {
        try {
            Path path = new Path(folder);
            FileSystem files = path.getFileSystem(hadoop);
            if (!files.exists(path)) {
                return List.of();
            }
            List<Layout> layouts = new ArrayList<>();
            Set<String> names = new HashSet<>();
            FileStatus[] found = files.listStatus(path, p -> p.getName().endsWith(".json"));
            Arrays.sort(found);
            for (FileStatus status : found) {
                String file = "layouts/" + status.getPath().getName();
                Layout layout = read(status.getPath(), file);
                if (!names.add(layout.name())) {
                    throw refused(file, "\"" + layout.name() + "\"", "a name of its own for every layout", "rename it");
                }
                layouts.add(layout);
            }
            return layouts;
        } catch (IOException e) {
            throw new RefusedInput("layouts cannot be read", folder, e.getMessage(), "a readable folder", "check it");
        }
    }

    private Layout read(Path path, String file) throws IOException {
        JsonNode node;
        try (InputStream in = LogStreams.open(path.toString(), hadoop)) {
            node = json.readTree(in);
        } catch (JsonProcessingException e) {
            throw refused(
                    file + ", line "
                            + (e.getLocation() == null ? 1 : e.getLocation().getLineNr()),
                    e.getOriginalMessage(),
                    "one JSON object",
                    "mend the file");
        }
        if (node == null || !node.isObject()) {
            throw refused(file, null, "one JSON object", "write a layout as in docs/visit-log.md");
        }
        refuseGaps(node, file);
        node.fieldNames().forEachRemaining(key -> {
            if (!KEYS.contains(key)) {
                throw refused(file, "\"" + key + "\"", "one of " + String.join(", ", KEYS), "correct or remove it");
            }
        });
        return layout(node, file);
    }

    /** A proposed layout whose questions nobody has answered yet must not read anything. */
    private static void refuseGaps(JsonNode node, String file) {
        JsonNode questions = node.get(LayoutFile.UNDECIDED);
        if (questions != null && !questions.isEmpty()) {
            throw refused(
                    file,
                    questions.size() + " open questions, the first: "
                            + questions.get(0).asText(),
                    "no list \"" + LayoutFile.UNDECIDED + "\"",
                    "fill each \"" + LayoutProposal.GAP + "\" in the file, then take the list out");
        }
        String gap = gap(node, "");
        if (gap != null) {
            throw refused(
                    file,
                    gap + " is \"" + LayoutProposal.GAP + "\"",
                    "a value",
                    "fill in what the sample did not decide");
        }
    }

    private static String gap(JsonNode node, String path) {
        if (node.isTextual()) {
            return node.textValue().equals(LayoutProposal.GAP) ? path : null;
        }
        for (Map.Entry<String, JsonNode> entry : node.properties()) {
            String gap = gap(entry.getValue(), path.isEmpty() ? entry.getKey() : path + "." + entry.getKey());
            if (gap != null) {
                return gap;
            }
        }
        boolean inList = node.isArray() && node.valueStream().anyMatch(v -> gap(v, path) != null);
        return inList ? path : null;
    }

    private static Layout layout(JsonNode node, String file) {
        String format = text(node, "format", "csv", file);
        if (!TABLES.contains(format)) {
            throw refused(
                    file,
                    "format \"" + format + "\"",
                    String.join(", ", TABLES),
                    "write JSON lines in the canonical form, for which no layout is needed");
        }
        Map<String, Field> columns = new LinkedHashMap<>();
        texts(node.get("columns"), "columns", file)
                .forEach((header, target) -> columns.put(header, field(target, "columns", file)));
        Map<Field, String> constants = new EnumMap<>(Field.class);
        texts(node.get("constants"), "constants", file)
                .forEach((name, value) -> constants.put(field(name, "constants", file), value));
        Map<Field, Map<String, String>> words = new EnumMap<>(Field.class);
        object(node.get("words"), "words", file)
                .forEach((name, map) -> words.put(field(name, "words", file), texts(map, "words." + name, file)));
        try {
            return new Layout(
                    required(node, "name", file),
                    list(node, "appliesTo", file),
                    oneCharacter(text(node, "delimiter", ",", file), "delimiter", file),
                    encoding(text(node, "encoding", "UTF-8", file), file),
                    oneCharacter(text(node, "decimalMark", ".", file), "decimalMark", file),
                    text(node, "dateFormat", null, file),
                    text(node, "dateTimeFormat", null, file),
                    drivingSide(text(node, "drivingSide", null, file), file),
                    columns,
                    Set.copyOf(node.has("ignore") ? list(node, "ignore", file) : List.of()),
                    constants,
                    words,
                    ids(node, file),
                    numbers(node, "noTemperature", file));
        } catch (IllegalArgumentException e) {
            throw refused(file, e.getMessage(), "a layout as in docs/visit-log.md", "correct the entry");
        }
    }

    private static IdForm ids(JsonNode node, String file) {
        String base = text(node, "idBase", "hex", file);
        if (!base.equals("hex") && !base.equals("decimal")) {
            throw refused(file, "idBase \"" + base + "\"", "hex or decimal", "name the base of the sensor IDs");
        }
        JsonNode digits = node.get("idDigits");
        if (digits != null && !digits.isInt()) {
            throw refused(file, "idDigits = " + digits, "a whole number from 6 to 8", "write it without quotes");
        }
        return new IdForm(
                base.equals("hex") ? IdForm.Base.HEX : IdForm.Base.DECIMAL, digits == null ? null : digits.intValue());
    }

    private static Set<Double> numbers(JsonNode node, String key, String file) {
        Set<Double> numbers = new HashSet<>();
        JsonNode value = node.get(key);
        if (value != null) {
            boolean all = value.isArray();
            for (JsonNode n : value) {
                all &= n.isNumber();
                numbers.add(n.doubleValue());
            }
            if (!all) {
                throw refused(file, key + " = " + value, "an array of numbers", "write it as [-40, 255]");
            }
        }
        return numbers;
    }

    private static Side drivingSide(String word, String file) {
        if (word == null) {
            return null;
        }
        return switch (word) {
            case "left" -> Side.LEFT;
            case "right" -> Side.RIGHT;
            default ->
                throw refused(
                        file, "drivingSide \"" + word + "\"", "left or right", "name the side of the road driven on");
        };
    }

    private static String encoding(String name, String file) {
        try {
            return Charset.forName(name).name();
        } catch (UnsupportedCharsetException | IllegalCharsetNameException e) {
            throw refused(
                    file,
                    "encoding \"" + name + "\"",
                    "UTF-8, windows-1252, ISO-8859-1 or another known to Java",
                    "correct it");
        }
    }

    private static char oneCharacter(String text, String key, String file) {
        if (text.length() != 1) {
            throw refused(file, key + " \"" + text + "\"", "one character", "give the one character used in the file");
        }
        return text.charAt(0);
    }

    private static Field field(String name, String key, String file) {
        return Field.of(name)
                .orElseThrow(() -> refused(
                        file,
                        key + " names \"" + name + "\"",
                        "a canonical name of docs/visit-log.md",
                        "correct it, or put the header under ignore"));
    }

    private static String required(JsonNode node, String key, String file) {
        String text = text(node, key, null, file);
        if (text == null || text.isBlank()) {
            throw refused(file, "no " + key, "a text under " + key, "add it");
        }
        return text;
    }

    private static String text(JsonNode node, String key, String byDefault, String file) {
        JsonNode value = node.get(key);
        if (value == null || value.isNull()) {
            return byDefault;
        }
        if (!value.isTextual()) {
            throw refused(file, key + " = " + value, "a text in quotes", "put it in quotes");
        }
        return value.textValue();
    }

    private static List<String> list(JsonNode node, String key, String file) {
        JsonNode value = node.get(key);
        List<String> texts = new ArrayList<>();
        if (value != null && value.isArray()) {
            value.forEach(v -> texts.add(v.isTextual() ? v.textValue() : null));
        }
        if (value == null || !value.isArray() || texts.contains(null)) {
            throw refused(file, key + " = " + value, "an array of texts", "write it as [\"...\", \"...\"]");
        }
        return texts;
    }

    private static Map<String, JsonNode> object(JsonNode node, String key, String file) {
        Map<String, JsonNode> map = new LinkedHashMap<>();
        if (node == null || node.isNull()) {
            return map;
        }
        if (!node.isObject()) {
            throw refused(file, key + " = " + node, "an object of names and texts", "write it as {\"...\": \"...\"}");
        }
        node.properties().forEach(entry -> map.put(entry.getKey(), entry.getValue()));
        return map;
    }

    private static Map<String, String> texts(JsonNode node, String key, String file) {
        Map<String, String> map = new LinkedHashMap<>();
        object(node, key, file).forEach((name, value) -> {
            if (!value.isTextual()) {
                throw refused(file, key + "." + name + " = " + value, "a text in quotes", "put it in quotes");
            }
            map.put(name, value.textValue());
        });
        return map;
    }

    private static RefusedInput refused(String where, String value, String expected, String wayOut) {
        return new RefusedInput("not a usable layout", where, value, expected, wayOut);
    }
}
