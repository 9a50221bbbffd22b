package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sensorrounds.intake.Layout;
import sensorrounds.proposal.Decision;
import sensorrounds.proposal.LayoutProposal;
import sensorrounds.proposal.LayoutProposer;
import sensorrounds.tables.LogRow;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.Side;
import sensorrounds.visit.Source;

/** Proposals for the foreign files of the sample data, from these files alone, against the layouts shipped with them. */
class LayoutProposalTest {
    private static final Path SAMPLE = Fixtures.repositoryRoot().resolve("sample-data");

    @TempDir
    private Path data;

    private record Proposed(SampleReader.Cut cut, LayoutProposal proposal) {
        String mapping(String glob) {
            return LayoutFile.text("proposed", List.of(glob), cut, proposal);
        }
    }

    private static Proposed propose(Side side, List<Path> files) {
        SampleReader.Cut cut = new SampleReader(Fixtures.HADOOP)
                .read(files.stream().map(Path::toString).toList());
        return new Proposed(cut, LayoutProposer.propose(cut.sample(), side));
    }

    private static List<Path> logs(String technician) throws IOException {
        try (Stream<Path> files = Files.list(SAMPLE.resolve("visit-logs").resolve(technician))) {
            return files.filter(f -> f.toString().endsWith(".csv")).sorted().toList();
        }
    }

    private List<LogRow> rows(String mapping, String technician) throws IOException {
        Files.createDirectories(data.resolve("layouts"));
        Files.writeString(data.resolve("layouts/proposed.json"), mapping);
        Path folder = Files.createDirectories(data.resolve("visit-logs").resolve(technician));
        for (Path log : logs(technician)) {
            Files.copy(log, folder.resolve(log.getFileName()));
        }
        return Fixtures.read(data, data.resolve("visit-logs"));
    }

    private static void sameRows(List<LogRow> proposed, List<LogRow> shipped) {
        assertThat(Fixtures.accepted(proposed)).hasSizeGreaterThan(900).isEqualTo(Fixtures.accepted(shipped));
        assertThat(Fixtures.rejected(proposed)).isEqualTo(Fixtures.rejected(shipped));
    }

    /** One word is left to the user: a dash under "Done" may be nothing done, or nothing written. */
    @Test
    void theTradeWordsOfTheSampleAreReadAsByTheShippedLayoutOnceTheDashIsSettled() throws IOException {
        Proposed proposed = propose(Side.LEFT, logs("T12"));

        assertThat(proposed.proposal().open()).extracting(Decision::entry).containsExactly("words.work.-");
        String mapping = proposed.mapping("visit-logs/T12/*.csv");
        String settled = mapping.replace("\"-\" : \"?\"", "\"-\" : \"none\"")
                .replaceAll("(?s),\\s*\"undecided\" : \\[.*?\\]", "");

        sameRows(rows(settled, "T12"), Fixtures.read(SAMPLE, SAMPLE.resolve("visit-logs/T12")));
    }

    @Test
    void theDecimalCommaFilesOfTheSampleAreReadAsByTheShippedLayout() throws IOException {
        Proposed proposed = propose(null, logs("T31"));

        assertThat(proposed.proposal().open()).isEmpty();
        assertThat(proposed.cut().encoding().value()).isEqualTo("windows-1252");
        assertThat(proposed.cut().encoding().question()).contains("spelt right");
        sameRows(
                rows(proposed.mapping("visit-logs/T31/*.csv"), "T31"),
                Fixtures.read(SAMPLE, SAMPLE.resolve("visit-logs/T31")));
    }

    /** The same files kept as workbooks: days and numbers are such there, so that their forms need no deciding. */
    @Test
    void aWorkbookIsProposedForAsItsCsvIs() throws IOException {
        Layout shipped = new LayoutReader(Fixtures.HADOOP)
                .read(SAMPLE.resolve("layouts").toString()).stream()
                        .filter(l -> l.appliesTo().get(0).contains("T31"))
                        .findFirst()
                        .orElseThrow();
        Path csv = logs("T31").get(2);
        Path book = OtherForms.of(csv, shipped).workbook(data.resolve("visit-logs/T31/a.xlsx"));
        Proposed proposed = propose(null, List.of(book));

        assertThat(proposed.proposal().open()).isEmpty();
        String mapping = proposed.mapping("visit-logs/T31/*.xlsx");
        assertThat(mapping)
                .contains("\"format\" : \"xlsx\"")
                .doesNotContain("encoding")
                .doesNotContain("delimiter");
        Files.createDirectories(data.resolve("layouts"));
        Files.writeString(data.resolve("layouts/proposed.json"), mapping);
        assertThat(readings(Fixtures.read(data, data.resolve("visit-logs"))))
                .hasSizeGreaterThan(200)
                .isEqualTo(readings(Fixtures.read(SAMPLE, csv)));
    }

    private static List<LoggedWheel> readings(List<LogRow> rows) {
        return Fixtures.accepted(rows).stream()
                .map(r -> new LoggedWheel(r.visit(), r.wheel(), new Source("", 1)))
                .toList();
    }

    @Test
    void aProposalWithOpenEntriesIsRefusedAndNamesTheFirst() throws IOException {
        Proposed proposed = propose(null, logs("T12"));
        String mapping = proposed.mapping("visit-logs/T12/*.csv");

        assertThatExceptionOfType(RefusedInput.class)
                .isThrownBy(() -> rows(mapping, "T12"))
                .withMessageContaining("layouts/proposed.json")
                .withMessageContaining("open questions, the first: drivingSide")
                .withMessageContaining("fill each \"?\"");
    }

    @Test
    void aGapThatIsLeftIsRefusedEvenWithoutTheListOfQuestions() {
        assertThatExceptionOfType(RefusedInput.class)
                .isThrownBy(() ->
                        rows("{\"name\":\"a\",\"appliesTo\":[\"*\"],\"words\":{\"position\":{\"AD\":\"?\"}}}", "T12"))
                .withMessageContaining("words.position.AD is \"?\"");
    }

    @ParameterizedTest
    @CsvSource({
        "UTF-8, UTF-8",
        "windows-1252, windows-1252",
        "IBM850, IBM850",
        "x-MacRoman, x-MacRoman",
        "UTF-16, UTF-16"
    })
    void encodingsAreToldByTheCharactersTheyMake(String written, String proposed) throws IOException {
        Path file = data.resolve("a.csv");
        String text = "Auftrag;Außenluft °C;Änderung\n1;12;geprüft, Räder gewechselt\n2;9;Straße gesperrt\n";
        Files.write(file, text.getBytes(Charset.forName(written)));

        assertThat(new SampleReader(Fixtures.HADOOP)
                        .read(List.of(file.toString()))
                        .encoding()
                        .value())
                .isEqualTo(proposed);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '~',
            value = {"a,b,c ~ ,", "a;b;c ~ ;", "a\tb\tc ~ \t", "a|b|c ~ |"},
            ignoreLeadingAndTrailingWhitespace = false)
    void theDelimiterCutsEveryLineIntoAsManyFieldsAsTheHeader(String header, String delimiter) throws IOException {
        Path file = data.resolve("a.csv");
        String mark = delimiter.substring(1);
        Files.writeString(file, header.strip() + "\n" + "1X2X3\n4X5X6\n".replace("X", mark));

        assertThat(new SampleReader(Fixtures.HADOOP)
                        .read(List.of(file.toString()))
                        .delimiter()
                        .value())
                .isEqualTo(mark);
    }

    @Test
    void aTitleAboveTheHeaderIsRefusedWithTheWayOut() throws IOException {
        Path file = data.resolve("a.csv");
        Files.writeString(file, "Visits of March\n\na,b,c\n1,2,3\n4,5,6\n");

        assertThatExceptionOfType(RefusedInput.class)
                .isThrownBy(() -> new SampleReader(Fixtures.HADOOP).read(List.of(file.toString())))
                .withMessageContaining("take out titles above the header");
    }

    @Test
    void filesWithDifferentHeadersAreTwoLayouts() throws IOException {
        Path a = Files.writeString(data.resolve("a.csv"), "a,b,c\n1,2,3\n");
        Path b = Files.writeString(data.resolve("b.csv"), "a,b,d\n1,2,3\n");

        assertThatExceptionOfType(RefusedInput.class)
                .isThrownBy(() -> new SampleReader(Fixtures.HADOOP).read(List.of(a.toString(), b.toString())))
                .withMessageContaining("files of two layouts");
    }
}
