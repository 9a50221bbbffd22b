package sensorrounds.intake;

import java.util.Map;
import java.util.Optional;
import sensorrounds.visit.Source;

/**
 * Tries single texts as values of a field, by the very code that reads logs: what it takes the intake takes. For files whose
 * layout is not known yet. Not for two threads at once.
 */
public final class FieldTrial {
    private static final Source NOWHERE = new Source("trial", 1);
    private static final Map<Field, String> REQUIRED = Map.of(
            Field.VISIT_ID, "1",
            Field.VEHICLE_ID, "1",
            Field.VISITED_AT, "2025-03-04",
            Field.POSITION, "1L",
            Field.READ, "ok");

    private final VisitParser parser;

    /** @param layout a layout in whose terms the text is read; its date form concerns {@link Field#VISITED_AT} only */
    public FieldTrial(Layout layout) {
        this.parser = new VisitParser(layout);
    }

    /** @return what is wrong with the text as a value of this field; empty when the intake takes it */
    public Optional<Rejection> problem(Field field, String text) {
        return read(field, text) instanceof Rejection r ? Optional.of(r) : Optional.empty();
    }

    /** True when the intake takes the text as a value of this field. */
    public boolean takes(Field field, String text) {
        return problem(field, text).isEmpty();
    }

    /** Rows of evidence from all texts tried so far. */
    public Map<Evidence, Long> evidence() {
        return parser.counts().evidence();
    }

    private ParsedRow read(Field field, String text) {
        return parser.row(new RawRecord() {
            @Override
            public String get(Field asked) {
                return asked == field ? text : field.ofWheel() || !asked.ofWheel() ? REQUIRED.get(asked) : null;
            }

            @Override
            public Source source() {
                return NOWHERE;
            }

            @Override
            public String text() {
                return text;
            }
        });
    }
}
