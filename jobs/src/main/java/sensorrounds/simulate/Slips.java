package sensorrounds.simulate;

import java.util.HashMap;
import java.util.Map;

/** What went wrong in writing one visit down: fields whose text is not what it should be. */
final class Slips {
    static final Slips NONE = new Slips(Map.of());

    private final Map<String, String> texts;

    private Slips(Map<String, String> texts) {
        this.texts = texts;
    }

    static Slips fresh() {
        return new Slips(new HashMap<>());
    }

    void visit(String field, String text) {
        texts.put(field, text);
    }

    void wheel(int wheel, String field, String text) {
        texts.put(wheel + "/" + field, text);
    }

    /** @return the wrong text, or null when the field is written as it should be */
    String ofVisit(String field) {
        return texts.isEmpty() ? null : texts.get(field);
    }

    /** @return the wrong text, or null when the field is written as it should be */
    String ofWheel(int wheel, String field) {
        return texts.isEmpty() ? null : texts.get(wheel + "/" + field);
    }
}
