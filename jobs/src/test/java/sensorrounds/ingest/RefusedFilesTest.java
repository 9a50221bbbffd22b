package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RefusedFilesTest {
    @TempDir
    private Path folder;

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "shopping.csv | not a visit log | name, amount",
                "other.jsonl | not a visit log | an object with the keys name",
                "array.jsonl | not a visit log | a list",
                "notes.txt | not a visit log | .jsonl",
                "empty.csv | an empty file | empty.csv",
                "extra-columns.csv | neither mapped nor ignored | colour, make",
                "twice.csv | two columns for one field | visitId",
                "no-vehicle.csv | a key of the visit has no column | vehicleId",
            })
    void aFileThatIsNoLogIsRefusedBeforeAnyWork(String file, String what, String named) {
        assertThatExceptionOfType(RefusedInput.class)
                .isThrownBy(() -> Fixtures.find(Fixtures.REFUSED, Fixtures.REFUSED.resolve(file)))
                .withMessageContaining(what)
                .withMessageContaining(file)
                .withMessageContaining(named)
                .withMessageContaining("way out:");
    }

    /** A first line that is no header, and a line that is no visit, may tell of people. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "a.csv | V1,2025-03-04,Quentin,QX41 ZTP | a first line of 4 fields that look like values",
                "a.csv | Name,Datum,Fahrzeug | Name, Datum, Fahrzeug",
                "a.jsonl | {\"driver\":\"Quentin\",\"QX41 ZTP\":{\"x\":1}} | an object with the keys driver, AA99 AAA",
                "a.jsonl | \"Quentin\" | a value without a name",
                "a.jsonl | Quentin drove QX41 ZTP | a line of 22 characters that is no JSON",
            })
    void valuesOfAForeignFileAreNotShown(String file, String line, String found) throws IOException {
        Files.writeString(folder.resolve(file), line + "\n");

        assertThat(refusal(folder.resolve(file)).getMessage())
                .contains("not a visit log")
                .contains(found)
                .doesNotContain("Quentin", "QX41");
    }

    @Test
    void aMissingFolderAndAFolderWithoutLogsAreTwoThings() throws IOException {
        Files.writeString(folder.resolve("_SUCCESS"), "");

        assertThat(refusal(folder.resolve("nowhere")).what()).isEqualTo("no such file or folder");
        assertThat(refusal(folder).what()).isEqualTo("a folder without logs");
    }

    @Test
    void filesAreFoundInFoldersByGlobAndInOrder() throws IOException {
        Files.createDirectories(folder.resolve("visit-logs/north"));
        for (String name : new String[] {"visit-logs/b.csv", "visit-logs/a.csv", "visit-logs/north/c.CSV"}) {
            Files.copy(Fixtures.TRAPS.resolve("bad-date.csv"), folder.resolve(name));
        }

        assertThat(Fixtures.find(folder, folder.resolve("visit-logs")))
                .extracting(LogFile::name)
                .containsExactly("visit-logs/a.csv", "visit-logs/b.csv", "visit-logs/north/c.CSV");
        assertThat(Fixtures.find(folder, folder.resolve("visit-logs/*.csv"))).hasSize(2);
        assertThat(Fixtures.find(folder, folder.resolve("visit-logs/a.csv"))).hasSize(1);
    }

    @Test
    void aFileMatchedByTwoLayoutsIsRefused() throws IOException {
        Files.createDirectories(folder.resolve("layouts"));
        for (String name : new String[] {"one", "two"}) {
            Files.writeString(
                    folder.resolve("layouts/" + name + ".json"),
                    "{\"name\":\"" + name + "\",\"appliesTo\":[\"*.csv\"]}");
        }
        Files.copy(Fixtures.TRAPS.resolve("bad-date.csv"), folder.resolve("a.csv"));

        RefusedInput refused = refusal(folder.resolve("a.csv"));

        assertThat(refused.what()).isEqualTo("two layouts for one file");
        assertThat(refused.value()).contains("\"one\"").contains("\"two\"");
    }

    @Test
    void aCompressedLogReadsAsThePlainOne() throws IOException {
        Path plain = Fixtures.TRAPS.resolve("unknown-key.jsonl");
        Files.write(folder.resolve("unknown-key.jsonl.gz"), zipped(Files.readString(plain)));

        assertThat(Fixtures.read(folder.resolve("unknown-key.jsonl.gz")))
                .hasSameSizeAs(Fixtures.read(plain))
                .extracting(r -> r.accepted() == null ? null : r.accepted().wheel())
                .isEqualTo(Fixtures.read(plain).stream()
                        .map(r -> r.accepted() == null ? null : r.accepted().wheel())
                        .toList());
    }

    @Test
    void aCompressedLogCutShortIsRefusedWithFileAndAboutTheLine() throws IOException {
        StringBuilder log = new StringBuilder();
        for (int i = 0; i < 20_000; i++) {
            log.append("{\"visitId\":\"V").append(i).append("\",\"visitedAt\":\"2025-03-04\",\"vehicleId\":\"K1\"}\n");
        }
        byte[] whole = zipped(log.toString());
        Files.write(folder.resolve("cut.jsonl.gz"), Arrays.copyOf(whole, whole.length * 3 / 4));

        RefusedInput refused =
                catchThrowableOfType(RefusedInput.class, () -> Fixtures.read(folder.resolve("cut.jsonl.gz")));

        assertThat(refused.what()).contains("cut short");
        assertThat(refused.where()).matches("cut\\.jsonl\\.gz, about line 1[0-9]{4}");
    }

    @Test
    void aFileThatOnlyHasTheNameOfAGzipIsRefused() throws IOException {
        Files.writeString(folder.resolve("plain.csv.gz"), "visitId,visitedAt,vehicleId\n");

        assertThat(refusal(folder.resolve("plain.csv.gz")).what()).contains("cut short or damaged");
    }

    @Test
    void aQuoteThatIsNeverClosedIsRefusedRatherThanSwallowingTheFile() {
        assertThatExceptionOfType(RefusedInput.class)
                .isThrownBy(() -> Fixtures.read(Fixtures.REFUSED.resolve("open-quote.csv")))
                .withMessageContaining("open-quote.csv, about line 2");
    }

    @Test
    void aLineWithoutAnEndIsRefusedBeforeItFillsTheMemory() throws IOException {
        Files.writeString(folder.resolve("endless.jsonl"), "{\"visitId\":\"" + "9".repeat(TextLines.LONGEST + 1));

        assertThat(refusal(folder.resolve("endless.jsonl")).what()).contains("too long");
    }

    private RefusedInput refusal(Path where) {
        return catchThrowableOfType(RefusedInput.class, () -> Fixtures.find(folder, where));
    }

    private static byte[] zipped(String text) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(bytes)) {
            gzip.write(text.getBytes(StandardCharsets.UTF_8));
        }
        return bytes.toByteArray();
    }
}
