package sensorrounds.intake;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** The words of one field: the names of an enum in lower case with hyphens, read in any case. */
final class Words<E extends Enum<E>> {
    private final Map<String, E> byWord = new HashMap<>();
    private final String expected;

    private Words(Class<E> type) {
        for (E constant : type.getEnumConstants()) {
            byWord.put(word(constant), constant);
        }
        expected = Arrays.stream(type.getEnumConstants()).map(Words::word).collect(Collectors.joining(", "));
    }

    static <E extends Enum<E>> Words<E> of(Class<E> type) {
        return new Words<>(type);
    }

    static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** @return null when the text is none of the words */
    E read(String text) {
        E constant = byWord.get(text);
        return constant != null ? constant : byWord.get(text.toLowerCase(Locale.ROOT));
    }

    /** All words, for messages. */
    String expected() {
        return expected;
    }
}
