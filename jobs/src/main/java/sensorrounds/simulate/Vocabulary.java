package sensorrounds.simulate;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;
import sensorrounds.visit.WheelPosition;

/**
 * The words of an export for canonical words, by canonical field.
 *
 * @param byField canonical field → canonical word → word of the export; a word that is missing is written as it is
 * @param places place on a vehicle of up to two axles → word
 * @param manyAxlePlaces place on a vehicle of more axles → word
 */
record Vocabulary(
        Map<String, Map<String, String>> byField, Map<String, String> places, Map<String, String> manyAxlePlaces) {
    /** The canonical words themselves. */
    static final Vocabulary CANONICAL = new Vocabulary(Map.of(), Map.of(), Map.of());

    String word(String field, String canonical) {
        if (canonical == null) {
            return null;
        }
        Map<String, String> words = byField.get(field);
        return words == null ? canonical : words.getOrDefault(canonical, canonical);
    }

    String place(WheelPosition p, int axles) {
        return (axles > 2 ? manyAxlePlaces : places).getOrDefault(p.code(), p.code());
    }

    /** Turned round for a layout file: canonical field → word of the export → canonical word. */
    Map<String, Map<String, String>> towardsCanonical() {
        Map<String, Map<String, String>> all = new LinkedHashMap<>();
        Map<String, String> position = new LinkedHashMap<>();
        new TreeMap<>(places).forEach((code, word) -> position.put(word, code));
        new TreeMap<>(manyAxlePlaces).forEach((code, word) -> position.put(word, code));
        all.put("position", position);
        new TreeMap<>(byField).forEach((field, words) -> {
            Map<String, String> back = new LinkedHashMap<>();
            new TreeMap<>(words).forEach((canonical, word) -> back.put(word, canonical));
            all.put(field, back);
        });
        return all;
    }
}
