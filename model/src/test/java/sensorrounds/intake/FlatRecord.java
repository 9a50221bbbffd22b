package sensorrounds.intake;

import java.util.EnumMap;
import java.util.Map;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.Source;

/** A raw record built in a test, from a good row in which single fields are then changed. */
final class FlatRecord implements RawRecord {
    private final Map<Field, String> texts = new EnumMap<>(Field.class);
    private Source source = new Source("visit-logs/a.csv", 2);

    static FlatRecord good() {
        return new FlatRecord()
                .with(Field.VISIT_ID, "V1")
                .with(Field.VISITED_AT, "2025-03-04T09:05")
                .with(Field.VEHICLE_ID, "K7")
                .with(Field.POSITION, "1L")
                .with(Field.READ, "ok")
                .with(Field.SENSOR_ID, "0A1B2C3D");
    }

    FlatRecord with(Field field, String text) {
        texts.put(field, text);
        return this;
    }

    FlatRecord at(String file, long line) {
        source = new Source(file, line);
        return this;
    }

    LoggedWheel accepted() {
        return accepted(Layout.CANONICAL);
    }

    LoggedWheel accepted(Layout layout) {
        return ((ParsedRow.Accepted) new VisitParser(layout).row(this)).row();
    }

    Rejection rejected() {
        return rejected(Layout.CANONICAL);
    }

    Rejection rejected(Layout layout) {
        return (Rejection) new VisitParser(layout).row(this);
    }

    Map<Note, Long> notes(Layout layout) {
        VisitParser parser = new VisitParser(layout);
        parser.row(this);
        return parser.counts().asMap();
    }

    @Override
    public String get(Field field) {
        return texts.get(field);
    }

    @Override
    public Source source() {
        return source;
    }

    @Override
    public String text() {
        return texts.values().toString();
    }
}
