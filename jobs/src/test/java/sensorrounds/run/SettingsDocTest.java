package sensorrounds.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class SettingsDocTest {
    @Test
    void theDocumentShowsTheDefaultsAsTheyAre() throws IOException {
        try (InputStream in = SettingsDocTest.class.getResourceAsStream("/sensorrounds/settings.json")) {
            String defaults = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            assertThat(Files.readString(Path.of("../docs/settings.md"))).endsWith("```json\n" + defaults + "```\n");
        }
    }
}
