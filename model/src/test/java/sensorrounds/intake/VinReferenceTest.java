package sensorrounds.intake;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import org.junit.jupiter.api.Test;

/** Values and their sources are in {@code reference/intake/vin.json}: the worked example of 49 CFR 565.15(c), and others. */
class VinReferenceTest {
    private static final String ALPHABET = "0123456789ABCDEFGHJKLMNPRSTUVWXYZ";

    private static JsonNode check(String id) throws IOException {
        try (InputStream in = VinReferenceTest.class.getResourceAsStream("/reference/intake/vin.json")) {
            for (JsonNode check : new ObjectMapper().readTree(in).get("checks")) {
                if (check.get("id").asText().equals(id)) {
                    return check;
                }
            }
        }
        throw new IllegalStateException("no check " + id);
    }

    @Test
    void agreesWithTheWorkedExampleOfTheRegulation() throws IOException {
        for (JsonNode vin : check("vin-published").get("expected").get("results")) {
            long expected = !vin.get("well_formed").asBoolean()
                    ? Note.VIN_FORM.bit()
                    : vin.get("valid").asBoolean() ? 0 : Note.VIN_CHECK_DIGIT.bit();
            assertThat(Codes.vinNotes(vin.get("vin").asText()))
                    .as(vin.get("vin").asText())
                    .isEqualTo(expected);
        }
    }

    /** The weights have no common factor with 11, but letters share values: so many slips stay unseen. */
    @Test
    void leavesAsManySingleSlipsUnseenAsTheEnumerationInR() throws IOException {
        JsonNode check = check("vin-undetected");
        String vin = check.get("data").get("inline").get("vin").asText();
        int tried = 0;
        int unseen = 0;
        for (int i = 0; i < vin.length(); i++) {
            for (int k = 0; i != 8 && k < ALPHABET.length(); k++) {
                if (ALPHABET.charAt(k) != vin.charAt(i)) {
                    tried++;
                    unseen += Codes.vinNotes(vin.substring(0, i) + ALPHABET.charAt(k) + vin.substring(i + 1)) == 0
                            ? 1
                            : 0;
                }
            }
        }
        assertThat(tried).isEqualTo(check.get("expected").get("substitutions").asInt());
        assertThat(unseen).isEqualTo(check.get("expected").get("undetected").asInt());
    }
}
