package sensorrounds.simulate;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Maps written as pairs, in the order they stand. */
final class Pairs {
    /** Canonical fields that hold yes or no. */
    static final List<String> TRUTHS =
            List.of("pressuresStored", "codesCleared", "testDriveWarningReturned", "hot", "cloned");

    private Pairs() {}

    static Map<String, String> of(String... pairs) {
        Map<String, String> m = new LinkedHashMap<>();
        for (int i = 0; i < pairs.length; i += 2) {
            if (m.put(pairs[i], pairs[i + 1]) != null) {
                throw new IllegalArgumentException("twice in the list: " + pairs[i]);
            }
        }
        return Collections.unmodifiableMap(m);
    }
}
