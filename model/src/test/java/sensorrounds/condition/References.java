package sensorrounds.condition;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/** Reads reference cases: data, expected values, source and tolerance. */
public final class References {
    private References() {}

    public static JsonNode check(String file, String id) {
        try (InputStream in = References.class.getResourceAsStream("/reference/" + file)) {
            for (JsonNode c : new ObjectMapper().readTree(in).get("checks")) {
                if (c.get("id").asText().equals(id)) {
                    return c;
                }
            }
            throw new IllegalArgumentException("no case " + id + " in " + file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
