package sensorrounds.ingest;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.Reader;
import java.util.ArrayList;
import java.util.List;
import sensorrounds.intake.Field;
import sensorrounds.intake.RejectionRule;
import sensorrounds.visit.Source;

/** Tells a log of JSON lines from a file that only has the name of one. */
final class FirstJsonLine {
    private static final int KEYS_SHOWN = 12;
    private static final JsonFactory JSON = new JsonFactory();

    private FirstJsonLine() {}

    /** @throws RefusedInput when the first line that is not blank is no JSON object of a visit */
    static void check(LogFile log, Reader text) throws IOException {
        TextLines lines = new TextLines(text, log.name());
        String line = lines.next();
        while (line != null && line.isBlank()) {
            line = lines.next();
        }
        if (line == null) {
            throw LogFiles.empty(log.name());
        }
        // A broken first line may still be a visit; one that never was an object, or has no key of a visit, is none.
        boolean object = line.strip().startsWith("{");
        JsonObject visit =
                JsonVisit.read(line, new Source(log.name(), lines.line())).visit();
        boolean broken = visit.problem() != null && visit.problem().rule() == RejectionRule.NOT_JSON;
        boolean anyKey = Field.KEYS.stream().anyMatch(key -> visit.get(key) != null);
        if (!object || !broken && !anyKey) {
            throw new RefusedInput(
                    "not a visit log",
                    log.name() + ", line " + lines.line(),
                    shape(line),
                    "one JSON object per line with visitId, visitedAt and vehicleId",
                    "move the file out of the folder of logs, or write it as in docs/visit-log.md");
        }
    }

    /** What kind of line it is and which keys it has. Its values may tell of people and are not shown. */
    private static String shape(String line) {
        try (JsonParser json = JSON.createParser(line)) {
            JsonToken first = json.nextToken();
            if (first != JsonToken.START_OBJECT) {
                return first == JsonToken.START_ARRAY ? "a list" : "a value without a name";
            }
            List<String> keys = new ArrayList<>();
            while (json.nextToken() == JsonToken.FIELD_NAME) {
                keys.add(json.currentName());
                json.nextToken();
                json.skipChildren();
            }
            return keys.isEmpty()
                    ? "an object without keys"
                    : "an object with the keys "
                            + UnknownNames.shown(keys.subList(0, Math.min(KEYS_SHOWN, keys.size())))
                            + (keys.size() > KEYS_SHOWN ? " and " + (keys.size() - KEYS_SHOWN) + " more" : "");
        } catch (IOException e) {
            return "a line of " + line.length() + " characters that is no JSON";
        }
    }
}
