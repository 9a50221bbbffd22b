package sensorrounds.ingest;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import sensorrounds.intake.Field;
import sensorrounds.intake.FieldProblem;
import sensorrounds.intake.RawRecord;
import sensorrounds.intake.RejectionRule;
import sensorrounds.visit.Source;

/** The texts of one JSON object by field, and the first thing wrong with its form. */
final class JsonObject implements RawRecord {
    private final String[] values = new String[Field.values().length];
    private final Source source;
    private final String line;
    private final int from;
    private int to;
    private FieldProblem problem;
    private FieldProblem unknown;
    private boolean laterNames;

    JsonObject(Source source, String line, int from, int to) {
        this.source = source;
        this.line = line;
        this.from = from;
        this.to = to;
    }

    void endsAt(int end) {
        this.to = end;
    }

    @Override
    public String get(Field field) {
        return values[field.ordinal()];
    }

    @Override
    public Source source() {
        return source;
    }

    @Override
    public String text() {
        return line.substring(from, to);
    }

    @Override
    public FieldProblem problem() {
        return problem != null ? problem : unknown;
    }

    @Override
    public boolean hasLaterNames() {
        return laterNames;
    }

    /** Unknown names are no slips in a log of a later minor version: they are left out, and counted. */
    void leaveOutLaterNames() {
        laterNames = unknown != null;
        unknown = null;
    }

    void wrong(RejectionRule rule, String name, String value, String expected) {
        if (problem == null) {
            problem = new FieldProblem(rule, name, value, expected);
        }
    }

    void wrongKind(JsonParser json, String name, String expected) throws IOException {
        // A text where an object belongs may be a remark.
        JsonToken token = json.currentToken();
        String found =
                token.isStructStart() ? token.asString() : token == JsonToken.VALUE_STRING ? "a text" : json.getText();
        wrong(RejectionRule.WRONG_KIND, name, found, expected);
        json.skipChildren();
    }

    void unknown(JsonParser json, String name, String expected) throws IOException {
        if (unknown == null) {
            unknown = new FieldProblem(RejectionRule.UNKNOWN_KEY, name, null, expected + " (docs/visit-log.md)");
        }
        json.skipChildren();
    }

    /** @return true when an object starts here; anything but null in its place is a problem */
    boolean startsObject(JsonParser json, JsonToken token, String name, String expected) throws IOException {
        if (token != JsonToken.START_OBJECT && token != JsonToken.VALUE_NULL) {
            wrongKind(json, name, expected);
        }
        return token == JsonToken.START_OBJECT;
    }

    void scalar(JsonParser json, Field field, JsonToken token) throws IOException {
        if (token.isNumeric() && field.mustBeText()) {
            wrong(
                    RejectionRule.WRONG_KIND,
                    field.key(),
                    json.getText(),
                    "text in quotes, since a number loses leading zeros");
            return;
        }
        set(field, text(json, field.key(), token));
    }

    /** @return the scalar as written, or null for null and for what is no scalar */
    String text(JsonParser json, String name, JsonToken token) throws IOException {
        if (token == JsonToken.VALUE_NULL) {
            return null;
        }
        if (!token.isScalarValue()) {
            wrongKind(json, name, "a single value");
            return null;
        }
        return json.getText();
    }

    void set(Field field, String text) {
        if (text == null) {
            return;
        }
        if (values[field.ordinal()] != null) {
            wrong(RejectionRule.NAMED_TWICE, field.key(), text, "the name once");
        }
        values[field.ordinal()] = text;
    }
}
