package sensorrounds.ingest;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sensorrounds.intake.ContractVersion;
import sensorrounds.intake.Field;
import sensorrounds.intake.RejectionRule;
import sensorrounds.visit.Source;
import sensorrounds.visit.WheelPosition;

/**
 * One line of nested JSON, taken apart into the flat fields of the canonical form, so that JSON and CSV meet one parser
 * and cannot differ. Texts stay as written; nothing is converted here.
 */
final class JsonVisit {
    private static final JsonFactory JSON = new JsonFactory();
    private static final String WHEELS = "wheels";
    private static final String PLACARD = "placardPressure";
    private static final String TEST_DRIVE = "testDrive";

    private final String line;
    private final Source source;
    private JsonObject visit;
    private List<JsonObject> wheels = new ArrayList<>(6);

    private JsonVisit(String line, Source source) {
        this.line = line;
        this.source = source;
        this.visit = new JsonObject(source, line, 0, line.length());
    }

    static JsonVisit read(String line, Source source) {
        JsonVisit read = new JsonVisit(line, source);
        try (JsonParser json = JSON.createParser(line)) {
            read.line(json);
        } catch (JsonProcessingException e) {
            // The parser quotes what it stumbled over, which may be anything that was written there.
            read.notJson(e.getOriginalMessage().replaceAll("'[^']*'", "'…'") + " at character "
                    + (e.getLocation() == null ? 0 : e.getLocation().getColumnNr()));
        } catch (IOException e) {
            throw new UncheckedIOException("reading from memory", e);
        }
        return read;
    }

    JsonObject visit() {
        return visit;
    }

    List<JsonObject> wheels() {
        return wheels;
    }

    /** A line that breaks off in its middle has no wheels to count: it is one row. */
    private void notJson(String reason) {
        visit = new JsonObject(source, line, 0, line.length());
        visit.wrong(RejectionRule.NOT_JSON, null, reason, "one whole JSON object per line");
        wheels = List.of();
    }

    private void line(JsonParser json) throws IOException {
        if (json.nextToken() != JsonToken.START_OBJECT) {
            notJson("the line does not start with {");
            return;
        }
        while (json.nextToken() != JsonToken.END_OBJECT) {
            visitEntry(json, json.currentName(), json.nextToken());
        }
        if (json.nextToken() != null) {
            notJson("more text after the object");
        }
        if (ContractVersion.isLaterMinor(visit.get(Field.CONTRACT_VERSION))) {
            visit.leaveOutLaterNames();
            wheels.forEach(JsonObject::leaveOutLaterNames);
        }
    }

    private void visitEntry(JsonParser json, String key, JsonToken token) throws IOException {
        switch (key) {
            case WHEELS -> wheels(json, token);
            case PLACARD -> placard(json, token);
            case TEST_DRIVE -> testDrive(json, token);
            default -> {
                Optional<Field> field = Field.of(key).filter(f -> !f.ofWheel() && !f.nestedInJson());
                if (field.isEmpty()) {
                    visit.unknown(json, key, "a field of the visit");
                } else if (field.get() == Field.FAULT_CODES) {
                    faultCodes(json, token);
                } else {
                    visit.scalar(json, field.get(), token);
                }
            }
        }
    }

    private void wheels(JsonParser json, JsonToken token) throws IOException {
        if (token == JsonToken.VALUE_NULL) {
            return;
        }
        if (token != JsonToken.START_ARRAY) {
            visit.wrongKind(json, WHEELS, "an array of wheels");
            return;
        }
        if (!wheels.isEmpty()) {
            visit.wrong(RejectionRule.NAMED_TWICE, WHEELS, null, "the name once");
        }
        for (JsonToken next = json.nextToken(); next != JsonToken.END_ARRAY; next = json.nextToken()) {
            int from = (int) json.currentTokenLocation().getCharOffset();
            JsonObject wheel = new JsonObject(source, line, from, line.length());
            wheels.add(wheel);
            if (next == JsonToken.START_OBJECT) {
                while (json.nextToken() != JsonToken.END_OBJECT) {
                    wheelEntry(json, wheel, json.currentName(), json.nextToken());
                }
            } else {
                wheel.wrongKind(json, WHEELS, "an object per wheel");
            }
            wheel.endsAt((int) json.currentLocation().getCharOffset());
        }
    }

    private static void wheelEntry(JsonParser json, JsonObject wheel, String key, JsonToken token) throws IOException {
        Optional<Field> field = Field.of(key).filter(Field::ofWheel);
        if (field.isEmpty()) {
            wheel.unknown(json, key, "a field of a wheel");
        } else {
            wheel.scalar(json, field.get(), token);
        }
    }

    private void placard(JsonParser json, JsonToken token) throws IOException {
        if (!visit.startsObject(
                json, token, PLACARD, "an object of axle and pressure, such as {\"1\":240,\"2\":260}")) {
            return;
        }
        while (json.nextToken() != JsonToken.END_OBJECT) {
            String axle = json.currentName();
            JsonToken value = json.nextToken();
            boolean known =
                    axle.length() == 1 && axle.charAt(0) >= '1' && axle.charAt(0) <= '0' + WheelPosition.MAX_AXLE;
            if (known) {
                visit.scalar(json, Field.placardPressure(axle.charAt(0) - '0'), value);
            } else {
                visit.unknown(json, PLACARD + "." + axle, "an axle from 1 to " + WheelPosition.MAX_AXLE);
            }
        }
    }

    private void testDrive(JsonParser json, JsonToken token) throws IOException {
        if (!visit.startsObject(json, token, TEST_DRIVE, "an object with minutes, distance, warningReturned")) {
            return;
        }
        while (json.nextToken() != JsonToken.END_OBJECT) {
            String key = json.currentName();
            JsonToken value = json.nextToken();
            Field field = switch (key) {
                case "minutes" -> Field.TEST_DRIVE_MINUTES;
                case "distance" -> Field.TEST_DRIVE_DISTANCE;
                case "warningReturned" -> Field.TEST_DRIVE_WARNING_RETURNED;
                default -> null;
            };
            if (field == null) {
                visit.unknown(json, TEST_DRIVE + "." + key, "minutes, distance or warningReturned");
            } else {
                visit.scalar(json, field, value);
            }
        }
    }

    /** Written in the flat form {@code C1234/stored@1L;...}, or {@code none} for an empty array. */
    private void faultCodes(JsonParser json, JsonToken token) throws IOException {
        String name = Field.FAULT_CODES.key();
        if (token == JsonToken.VALUE_NULL) {
            return;
        }
        if (token != JsonToken.START_ARRAY) {
            visit.wrongKind(json, name, "an array of objects with code, state and position");
            return;
        }
        StringBuilder flat = new StringBuilder();
        for (JsonToken next = json.nextToken(); next != JsonToken.END_ARRAY; next = json.nextToken()) {
            if (next != JsonToken.START_OBJECT) {
                visit.wrongKind(json, name, "an object with code, state and position");
                continue;
            }
            String code = "";
            String state = "";
            String position = "";
            while (json.nextToken() != JsonToken.END_OBJECT) {
                String key = json.currentName();
                JsonToken value = json.nextToken();
                String text = visit.text(json, name + "." + key, value);
                switch (key) {
                    case "code" -> code = text == null ? "" : text;
                    case "state" -> state = text == null ? "" : "/" + text;
                    case "position" -> position = text == null ? "" : "@" + text;
                    default -> visit.unknown(json, name + "." + key, "code, state or position");
                }
            }
            flat.append(flat.isEmpty() ? "" : ";").append(code).append(state).append(position);
        }
        visit.set(Field.FAULT_CODES, flat.isEmpty() ? "none" : flat.toString());
    }
}
