package sensorrounds.run;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.DoubleNode;
import com.fasterxml.jackson.databind.node.JsonNodeType;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Lays a settings file over the documented defaults. Every key the engine knows stands in the defaults, with the range
 * of its value beside it in {@code settings-ranges.json}; a key that is not there, a value of another type or out of
 * its range is refused with file and line.
 */
public final class SettingsFile {
    private static final JsonMapper JSON =
            JsonMapper.builder().enable(JsonReadFeature.ALLOW_JAVA_COMMENTS).build();
    private static final String DEFAULTS = "/sensorrounds/settings.json";
    /** Objects whose keys are names of the user's own, each with a number. */
    private static final Set<String> NAMED_BY_USER = Set.of("rounds.depotMinutes");

    private static final JsonNode A_NUMBER = DoubleNode.valueOf(0);

    private static final String RANGES = "/sensorrounds/settings-ranges.json";

    private SettingsFile() {}

    /** The defaults as a tree. */
    public static ObjectNode defaults() {
        return (ObjectNode) resource(DEFAULTS);
    }

    /** @return the defaults with the user's values in place of theirs */
    public static ObjectNode overlay(String fileName, String text) {
        Map<String, Integer> lines = new HashMap<>();
        JsonNode user;
        try {
            user = JSON.readTree(text);
            locate(text, lines);
        } catch (JsonProcessingException e) {
            JsonLocation at = e.getLocation();
            throw new UsageError(
                    "the settings file is not JSON",
                    fileName + (at == null ? "" : ":" + at.getLineNr()),
                    e.getOriginalMessage(),
                    "one JSON object; // comments are allowed",
                    "mend that line; docs/settings.md shows a whole file");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        if (!user.isObject()) {
            throw new UsageError(
                    "the settings file is not an object",
                    fileName,
                    user.getNodeType().name(),
                    "{ ... }",
                    "start from the example in docs/settings.md");
        }
        ObjectNode result = defaults();
        JsonNode ranges = resource(RANGES);
        merge(result, (ObjectNode) user, ranges, "", fileName, lines);
        return result;
    }

    private static void merge(
            ObjectNode into, ObjectNode from, JsonNode ranges, String path, String file, Map<String, Integer> lines) {
        from.properties().forEach(entry -> {
            String key = path.isEmpty() ? entry.getKey() : path + "." + entry.getKey();
            String where = file + ":" + lines.getOrDefault(key, 1);
            JsonNode known = NAMED_BY_USER.contains(path) ? A_NUMBER : into.get(entry.getKey());
            if (known == null) {
                List<String> allowed = new ArrayList<>();
                into.fieldNames().forEachRemaining(allowed::add);
                throw new UsageError(
                        "unknown key in the settings file",
                        where,
                        key,
                        "one of " + String.join(", ", allowed),
                        "take the key out or correct its spelling");
            }
            JsonNode value = entry.getValue();
            if (known.isObject() && value.isObject()) {
                merge((ObjectNode) known, (ObjectNode) value, ranges, key, file, lines);
                return;
            }
            check(known, value, ranges.path(NAMED_BY_USER.contains(path) ? path : key), key, where);
            into.set(entry.getKey(), value);
        });
    }

    private static void check(JsonNode known, JsonNode value, JsonNode range, String key, String where) {
        if (known.getNodeType() != value.getNodeType()) {
            throw new UsageError(
                    "wrong type for " + key,
                    where,
                    value.toString(),
                    word(known.getNodeType()),
                    "give a value like the default, " + known);
        }
        if (value.isNumber()) {
            double low = range.path(0).asDouble(0);
            double high = range.path(1).asDouble(Double.MAX_VALUE);
            double v = value.asDouble();
            boolean whole = known.isIntegralNumber();
            if (!(v >= low && v <= high) || whole && v != Math.rint(v)) {
                throw new UsageError(
                        key + " is out of range",
                        where,
                        value.toString(),
                        (whole ? "a whole number" : "a number") + " from " + plain(low)
                                + (high == Double.MAX_VALUE ? " upwards" : " to " + plain(high)),
                        "correct it, or take the key out to use the default, " + known);
            }
        }
        if (range.asText().equals("date")) {
            try {
                LocalDate.parse(value.asText());
            } catch (DateTimeParseException e) {
                throw new UsageError(key + " is no date", where, value.toString(), "YYYY-MM-DD", "correct the date");
            }
        }
    }

    private static String word(JsonNodeType type) {
        return switch (type) {
            case NUMBER -> "a number";
            case STRING -> "text in quotes";
            case BOOLEAN -> "true or false";
            case OBJECT -> "an object { ... }";
            case ARRAY -> "a list [ ... ]";
            default -> type.name();
        };
    }

    private static String plain(double v) {
        return v == Math.rint(v) && Math.abs(v) < 1e15 ? Long.toString((long) v) : Double.toString(v);
    }

    /** Notes the line on which each key stands, by its dotted path. */
    private static void locate(String text, Map<String, Integer> lines) throws IOException {
        try (JsonParser p = JSON.createParser(text)) {
            List<String> path = new ArrayList<>();
            String name = null;
            for (JsonToken t = p.nextToken(); t != null; t = p.nextToken()) {
                if (t == JsonToken.FIELD_NAME) {
                    name = p.currentName();
                    List<String> full = new ArrayList<>(path);
                    full.add(name);
                    lines.putIfAbsent(
                            String.join(".", full), p.currentTokenLocation().getLineNr());
                } else if (t == JsonToken.START_OBJECT && name != null) {
                    path.add(name);
                } else if (t == JsonToken.END_OBJECT && !path.isEmpty()) {
                    path.remove(path.size() - 1);
                }
            }
        }
    }

    private static JsonNode resource(String name) {
        try (InputStream in = SettingsFile.class.getResourceAsStream(name)) {
            return JSON.readTree(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
