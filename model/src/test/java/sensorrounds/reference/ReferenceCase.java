package sensorrounds.reference;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/** A case of a reference file: the file names its source, the program and version that made it, and the tolerance. */
public record ReferenceCase(JsonNode node) {
    /** @param resource file under {@code reference/} */
    public static ReferenceCase load(String resource, String id) {
        try (InputStream in = ReferenceCase.class.getResourceAsStream("/reference/" + resource)) {
            for (JsonNode check : new ObjectMapper().readTree(in).get("checks")) {
                if (check.get("id").asText().equals(id)) {
                    return new ReferenceCase(check);
                }
            }
            throw new IllegalArgumentException("no case " + id + " in " + resource);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Numbers under {@code data.inline}. */
    public double[] data(String field) {
        return numbers(node.at("/data/inline/" + field));
    }

    /** Numbers under {@code expected}. */
    public double[] expected(String path) {
        return numbers(node.at("/expected/" + path));
    }

    public static double[] numbers(JsonNode value) {
        if (value.isMissingNode()) {
            throw new IllegalArgumentException("the reference case has no such field");
        }
        if (!value.isArray()) {
            return new double[] {value.asDouble()};
        }
        double[] all = new double[value.size()];
        for (int i = 0; i < all.length; i++) {
            all[i] = value.get(i).asDouble();
        }
        return all;
    }
}
