package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sensorrounds.intake.Field;
import sensorrounds.intake.Layout;

class LayoutReaderTest {
    @TempDir
    private Path folder;

    @Test
    void theExampleIsRead() {
        Layout layout = new LayoutReader(Fixtures.HADOOP)
                .read(Fixtures.EXAMPLES.resolve("layouts").toString())
                .get(0);

        assertThat(layout.name()).isEqualTo("yard");
        assertThat(layout.columns()).containsEntry("Kennung", Field.SENSOR_ID);
        assertThat(layout.constants()).containsEntry(Field.PRESSURE_UNIT, "bar");
        assertThat(layout.words().get(Field.POSITION)).containsEntry("hl", "2L");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "{\"appliesTo\":[\"*\"]} | no name",
                "{\"name\":\"a\"} | appliesTo",
                "{\"name\":\"a\",\"appliesTo\":\"*\"} | array of texts",
                "{\"name\":\"a\",\"appliesTo\":[\"*\"],\"colums\":{}} | \"colums\"",
                "{\"name\":\"a\",\"appliesTo\":[\"*\"],\"columns\":{\"x\":\"mileage\"}} | \"mileage\"",
                "{\"name\":\"a\",\"appliesTo\":[\"*\"],\"delimiter\":\";;\"} | one character",
                "{\"name\":\"a\",\"appliesTo\":[\"*\"],\"encoding\":\"latin 99\"} | latin 99",
                "{\"name\":\"a\",\"appliesTo\":[\"*\"],\"format\":\"ods\"} | csv, xlsx",
                "{\"name\":\"a\",\"appliesTo\":[\"*\"],\"drivingSide\":\"both\"} | left or right",
                "{\"name\":\"a\",\"appliesTo\":[\"*\"],\"dateFormat\":\"DD.MM\"} | DD.MM",
                "{\"name\":\"a\",\"appliesTo\":[\"*\"],\"words\":{\"read\":{\"y\":\"yes\"}}} | \"yes\"",
                "{\"name\":\"a\",\"name\":\"b\",\"appliesTo\":[\"*\"]} | name",
                "[] | one JSON object",
                "{ | line 1",
            })
    void aLayoutThatCannotBeUsedIsRefusedWithItsFile(String json, String named) throws IOException {
        Files.writeString(folder.resolve("a.json"), json);

        assertThatExceptionOfType(RefusedInput.class)
                .isThrownBy(() -> new LayoutReader(Fixtures.HADOOP).read(folder.toString()))
                .withMessageContaining("layouts/a.json")
                .withMessageContaining(named);
    }

    @Test
    void twoLayoutsOfOneNameAreRefused() throws IOException {
        Files.writeString(folder.resolve("a.json"), "{\"name\":\"x\",\"appliesTo\":[\"a\"]}");
        Files.writeString(folder.resolve("b.json"), "{\"name\":\"x\",\"appliesTo\":[\"b\"]}");

        assertThatExceptionOfType(RefusedInput.class)
                .isThrownBy(() -> new LayoutReader(Fixtures.HADOOP).read(folder.toString()))
                .withMessageContaining("layouts/b.json");
    }

    @Test
    void noFolderIsNoLayouts() {
        assertThat(new LayoutReader(Fixtures.HADOOP).read(folder.resolve("none").toString()))
                .isEmpty();
    }
}
