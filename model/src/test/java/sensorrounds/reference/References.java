package sensorrounds.reference;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;

/** Compares figures with a reference case at the case's own tolerance. */
public final class References {
    private References() {}

    /** |actual - expected| <= abs + rel |expected|. */
    public static void check(ReferenceCase reference, String quantity, double actual, double expected) {
        JsonNode tolerance = reference.node().get("tolerance");
        check(
                reference,
                quantity,
                actual,
                expected,
                tolerance.get("rel").asDouble(),
                tolerance.path("abs").asDouble());
    }

    /** The same at a tolerance of the test's own, which then says why. */
    public static void check(
            ReferenceCase reference, String quantity, double actual, double expected, double rel, double abs) {
        assertThat(Math.abs(actual - expected))
                .as("%s: %s is %s, reference %s", reference.node().get("id").asText(), quantity, actual, expected)
                .isLessThanOrEqualTo(abs + rel * Math.abs(expected));
    }

    /** Every figure of an array under {@code expected}. */
    public static void check(ReferenceCase reference, String path, double[] actual) {
        double[] expected = reference.expected(path);
        assertThat(actual)
                .as("%s: %s", reference.node().get("id").asText(), path)
                .hasSameSizeAs(expected);
        for (int i = 0; i < expected.length; i++) {
            check(reference, path + "[" + i + "]", actual[i], expected[i]);
        }
    }

    /** Words under {@code data.inline}. */
    public static String[] words(ReferenceCase reference, String field) {
        JsonNode values = reference.node().at("/data/inline/" + field);
        String[] all = new String[values.size()];
        for (int i = 0; i < all.length; i++) {
            all[i] = values.get(i).asText();
        }
        return all;
    }
}
