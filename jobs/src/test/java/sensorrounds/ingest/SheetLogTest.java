package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;
import static sensorrounds.ingest.Sheets.row;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.ss.util.CellRangeAddress;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sensorrounds.intake.FileCount;
import sensorrounds.intake.Note;
import sensorrounds.intake.Rejection;
import sensorrounds.intake.RejectionRule;
import sensorrounds.tables.LogRow;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.LoggedWheel;

/** Visit logs as people keep them in spreadsheets. */
class SheetLogTest {
    private static final List<Object> HEADER =
            row("visitId", "visitedAt", "vehicleId", "position", "read", "sensorId", "pressure", "battery");

    @TempDir
    private Path dir;

    private Path logs;

    @BeforeEach
    void folder() {
        logs = dir.resolve("visit-logs");
    }

    private static List<Object> wheel(Object id, Object day, Object place, Object sensor, Object pressure) {
        return row(id, day, "K1", place, "ok", sensor, pressure);
    }

    private List<LogRow> read(Sheets sheets) {
        sheets.write(logs.resolve("t.xlsx"));
        return Fixtures.read(dir, logs);
    }

    private static Sheets of(List<List<Object>> rows) {
        Sheets sheets = new Sheets();
        sheets.add("Visits", rows);
        return sheets;
    }

    private static List<FileCount> counts(List<LogRow> rows) {
        return rows.stream().map(LogRow::file).filter(f -> f != null).toList();
    }

    @Test
    void aSheetWithATitleIsReadFromItsHeaderOn() {
        List<LogRow> rows = read(of(List.of(
                row("Visits of November"),
                row(),
                HEADER,
                wheel("V1", LocalDateTime.of(2025, 11, 18, 8, 20), "1L", "0A1B2C01", 238.5),
                row(),
                wheel("V2", LocalDate.of(2025, 11, 19), "1R", "0A1B2C02", 7.3))));

        List<LoggedWheel> accepted = Fixtures.accepted(rows);
        assertThat(accepted).hasSize(2);
        assertThat(accepted.get(0).source().toString()).isEqualTo("visit-logs/t.xlsx#Visits:4");
        assertThat(accepted.get(0).visit().visitedAt()).isEqualTo(LocalDateTime.of(2025, 11, 18, 8, 20));
        assertThat(accepted.get(0).wheel().pressureKpa()).isEqualTo(238.5);
        assertThat(accepted.get(1).source().line()).isEqualTo(6);
        assertThat(accepted.get(1).wheel().pressureKpa()).isEqualTo(7.3);
        assertThat(counts(rows)).singleElement().satisfies(c -> {
            assertThat(c.rows()).isEqualTo(2);
            assertThat(c.lines()).isEqualTo(6);
            assertThat(c.format()).isEqualTo("xlsx");
            assertThat(c.notes()).containsEntry(Note.DATE_WITHOUT_TIME, 1L);
        });
    }

    private static Sheets spoiledIds() {
        LocalDate day = LocalDate.of(2025, 11, 18);
        return of(List.of(
                HEADER,
                wheel("V1", day, "1L", 12345678, 240),
                wheel("V1", day, "1R", 123456, 240),
                wheel("V1", day, "2L", 1.234e59, 240),
                wheel("V1", day, "2R", new Sheets.Formatted(123456, "00000000"), 240),
                wheel(1234567890123456.0, day, "1L", "0A1B2C01", 240),
                wheel(LocalDate.of(2025, 12, 11), day, "1L", "0A1B2C01", 240),
                wheel(10234, day, "1L", "0A1B2C01", 240)));
    }

    /** 123456 may have been 00123456; 12345678 cannot have lost a zero; 1.234E+59 was 1234E56 (facts of hex digits). */
    @Test
    void idsThatBecameNumbersAreRefusedWhereDigitsMayBeLost() {
        List<LogRow> rows = read(spoiledIds());

        assertThat(Fixtures.accepted(rows))
                .extracting(r -> r.visit().visitId() + " " + r.wheel().sensorId())
                .containsExactly("V1 12345678", "V1 00123456", "10234 0A1B2C01");
        assertThat(Fixtures.rejected(rows))
                .extracting(r -> r.source().line() + " " + r.rule() + " " + r.field() + " " + r.rawValue())
                .containsExactly(
                        "3 ID_AS_NUMBER sensorId 123456",
                        "4 ID_AS_NUMBER sensorId 1.234E+59",
                        "6 ID_AS_NUMBER visitId 1.23456789012346E+15",
                        "7 WRONG_KIND visitId 2025-12-11");
        assertThat(Fixtures.rejected(rows).get(0).expected()).contains("00123456");
        assertThat(Fixtures.rejected(rows).get(1).expected()).contains("1234E56");
    }

    private static Sheets errorsAndStrays() {
        LocalDate day = LocalDate.of(2025, 11, 18);
        List<Object> stray = new ArrayList<>(wheel("V1", day, "2L", "0A1B2C03", 240));
        stray.addAll(row(null, null, "called back"));
        return of(List.of(
                HEADER,
                wheel("V1", day, "1L", "0A1B2C01", FormulaError.NA),
                wheel("V1", FormulaError.REF, "1R", "0A1B2C02", 240),
                stray,
                row("V1", day, "K1", "2R", "ok", "0A1B2C04", true)));
    }

    @Test
    void errorsAndValuesWithoutAHeaderPutTheRowAside() {
        List<LogRow> rows = read(errorsAndStrays());

        assertThat(Fixtures.accepted(rows)).isEmpty();
        assertThat(Fixtures.rejected(rows))
                .extracting(r -> r.source() + " " + r.rule() + " " + r.field() + " " + r.rawValue())
                .containsExactly(
                        "visit-logs/t.xlsx#Visits:2 CELL_ERROR pressure #N/A",
                        "visit-logs/t.xlsx#Visits:3 CELL_ERROR visitedAt #REF!",
                        "visit-logs/t.xlsx#Visits:4 NO_HEADER null called back",
                        "visit-logs/t.xlsx#Visits:5 BAD_NUMBER pressure true");
        assertThat(Fixtures.rejected(rows).get(2).expected()).contains("column J");
    }

    @Test
    void percentFlagsAndMergedCellsAreReadAsShown() {
        LocalDate day = LocalDate.of(2025, 11, 18);
        Sheets sheets = new Sheets();
        sheets.add(
                        "Visits",
                        List.of(
                                row("visitId", "visitedAt", "vehicleId", "position", "read", "battery", "hot"),
                                row("V1", day, "K1", "1L", "ok", new Sheets.Formatted(0.35, "0%"), true),
                                row(null, null, null, "1R", "ok", "ok", false),
                                row(null, null, null, null, null, null, null),
                                row(null, null, null, "2L", "ok", "ok", null)))
                .addMergedRegion(CellRangeAddress.valueOf("A2:A4"));
        for (String columns : List.of("B2:B4", "C2:C4")) {
            sheets.book.getSheetAt(0).addMergedRegion(CellRangeAddress.valueOf(columns));
        }
        List<LogRow> rows = read(sheets);

        assertThat(Fixtures.accepted(rows))
                .extracting(
                        r -> r.visit().visitId() + " " + r.wheel().position().code())
                .containsExactly("V1 1L", "V1 1R");
        assertThat(Fixtures.accepted(rows).get(0).wheel().battery())
                .isEqualTo(new BatteryReport(BatteryReport.Kind.PERCENT, 35));
        assertThat(Fixtures.accepted(rows)).extracting(r -> r.wheel().hot()).containsExactly(true, false);
        assertThat(Fixtures.rejected(rows)).extracting(Rejection::rule).containsExactly(RejectionRule.MISSING_VALUE);
        assertThat(counts(rows).get(0).notes()).containsEntry(Note.MERGED_CELLS, 1L);
        assertThat(counts(rows).get(0).rows()).isEqualTo(3);
    }

    @Test
    void everySheetIsALogOrCountedAndLeftOut() {
        Sheets sheets = of(List.of(HEADER, wheel("V1", LocalDate.of(2025, 11, 18), "1L", "0A1B2C01", 240)));
        sheets.add("December", List.of(HEADER, wheel("V2", LocalDate.of(2025, 12, 1), "1L", "0A1B2C01", 240)));
        sheets.add("Words", List.of(row("read"), row("ok"), row("no-answer")));
        sheets.add("_old", List.of(HEADER, wheel("V1", "some day", "1L", "x", 240)));
        List<LogRow> rows = read(sheets);

        assertThat(Fixtures.accepted(rows))
                .extracting(r -> r.source().file())
                .containsExactly("visit-logs/t.xlsx#December", "visit-logs/t.xlsx#Visits");
        assertThat(Fixtures.rejected(rows)).isEmpty();
        assertThat(counts(rows))
                .extracting(c -> c.file() + " " + c.rows() + " " + c.notes().get(Note.SHEET_LEFT_OUT))
                .containsExactly(
                        "visit-logs/t.xlsx#December 1 null",
                        "visit-logs/t.xlsx#Visits 1 null",
                        "visit-logs/t.xlsx#Words 0 3",
                        "visit-logs/t.xlsx#_old 0 2");
    }

    @Test
    void theCountsOfARunNameTheSheetsThatWereLeftOut() {
        List<IngestSummary.FileResult> files = counts(read(withWords())).stream()
                .map(c -> new IngestSummary.FileResult(c.file(), c, c.rows(), 0, 0))
                .toList();
        IngestSummary summary = new IngestSummary(files, List.of(), Map.of());

        assertThat(summary.leftOut()).isEqualTo(3);
        assertThat(CheckReport.text(summary))
                .contains("#Words")
                .contains("(no visit log: 3 rows left out)")
                .contains("1 rows in = 1 accepted")
                .doesNotContain("3 rows:");
    }

    private static Sheets withWords() {
        Sheets sheets = of(List.of(HEADER, wheel("V1", LocalDate.of(2025, 11, 18), "1L", "0A1B2C01", 240)));
        sheets.add("Words", List.of(row("read"), row("ok"), row("no-answer")));
        return sheets;
    }

    private static final String LAYOUT = """
            {"name": "yard", "appliesTo": ["visit-logs/t.xlsx"], "format": "xlsx", "decimalMark": ",",
             "dateFormat": "MM/dd/yyyy", "idDigits": 8,
             "columns": {"Job": "visitId", "Day": "visitedAt", "Van": "vehicleId", "Wheel": "position", "ID": "sensorId",
               "Seen": "read", "Bar": "pressure", "Cell": "battery"},
             "ignore": ["Remark"], "constants": {"pressureUnit": "bar"},
             "words": {"position": {"VL": "1L", "VR": "1R"}, "read": {"true": "ok", "false": "no-answer"}}}
            """;

    /** In a layout with month first and decimal comma, days and numbers that are such in the file are read as what they are. */
    @Test
    void aLayoutMapsASheetAsItDoesCsv() throws IOException {
        Files.createDirectories(dir.resolve("layouts"));
        Files.writeString(dir.resolve("layouts/yard.json"), LAYOUT);
        List<LogRow> rows = read(of(List.of(
                row("Job", "Day", "Van", "Wheel", "ID", "Seen", "Bar", "Cell", "Remark"),
                row(
                        71,
                        LocalDate.of(2025, 4, 3),
                        "K1",
                        "VL",
                        123456,
                        true,
                        2.45,
                        new Sheets.Formatted(0.355, "0.0%"),
                        "x"),
                row(71, "04/03/2025", "K1", "VR", "00123457", false, "2,45", "2,9V", null),
                row(71, "04/03/2025", "K1", "VR", "00123457", false, "2.45", null, null))));

        LoggedWheel first = Fixtures.accepted(rows).get(0);
        LoggedWheel second = Fixtures.accepted(rows).get(1);
        assertThat(first.visit().visitedAt()).isEqualTo(LocalDateTime.of(2025, 4, 3, 0, 0));
        assertThat(second.visit()).isEqualTo(first.visit());
        assertThat(first.wheel().sensorId()).isEqualTo("00123456");
        assertThat(first.wheel().pressureKpa()).isCloseTo(245, within(1e-9));
        assertThat(first.wheel().battery()).isEqualTo(new BatteryReport(BatteryReport.Kind.PERCENT, 35.5));
        assertThat(second.wheel().pressureKpa()).isEqualTo(first.wheel().pressureKpa());
        assertThat(second.wheel().battery()).isEqualTo(new BatteryReport(BatteryReport.Kind.VOLTS, 2.9));
        assertThat(Fixtures.rejected(rows)).extracting(Rejection::rawValue).containsExactly("2.45");
    }

    @Test
    void aSampleIsTakenFromTheSheetsOfOneHeaderAndNamesTheOthers() {
        Sheets sheets = new Sheets();
        sheets.add("Notes", List.of(row("call", "back"), row("K1")));
        List<Object> names = row("Job", "Day", "Van");
        sheets.add("Oct", List.of(row("Rounds"), names, row(71, LocalDate.of(2025, 10, 4), "K1")));
        sheets.add("Nov", List.of(names, row("72-A", "4.11.2025", null)));
        SampleReader.Cut cut = new SampleReader(Fixtures.HADOOP)
                .read(List.of(sheets.write(logs.resolve("t.xlsx")).toString()));

        assertThat(cut.sample().headers()).containsExactly("Job", "Day", "Van");
        assertThat(cut.sample().rows())
                .containsExactly(List.of("71", "2025-10-04", "K1"), List.of("72-A", "4.11.2025", ""));
        assertThat(cut.leftOut()).containsExactly("Notes");
        assertThat(cut.form()).isEmpty();
    }

    private static Sheets daysOf1904() {
        Sheets sheets = new Sheets();
        sheets.book.getCTWorkbook().getWorkbookPr().setDate1904(true);
        sheets.add("Visits", List.of(HEADER, wheel("V1", LocalDate.of(2025, 11, 18), "1L", "0A1B2C01", 240)));
        return sheets;
    }

    @Test
    void aWorkbookThatCountsItsDaysFrom1904SaysSo() {
        assertThat(Fixtures.accepted(read(daysOf1904())).get(0).visit().visitedAt())
                .isEqualTo(LocalDateTime.of(2025, 11, 18, 0, 0));
    }

    /** The fixtures that docs/traps.md names, for a look with a spreadsheet program; {@code -Dfixture.write=true} writes them. */
    @Test
    void theFixturesAreTheseWorkbooks() throws IOException {
        Map<String, Sheets> fixtures = Map.of(
                "spoiled-ids.xlsx", spoiledIds(),
                "errors-and-strays.xlsx", errorsAndStrays(),
                "days-of-1904.xlsx", daysOf1904());
        Path folder = Fixtures.repositoryRoot().resolve("jobs/src/test/resources/fixtures/traps/workbooks");
        for (Map.Entry<String, Sheets> fixture : fixtures.entrySet()) {
            Path written = fixture.getValue().write(dir.resolve(fixture.getKey()));
            if (Boolean.getBoolean("fixture.write")) {
                Files.createDirectories(folder);
                Files.copy(written, folder.resolve(fixture.getKey()), StandardCopyOption.REPLACE_EXISTING);
            }
            List<LogRow> expected = Fixtures.read(written);
            List<LogRow> found = Fixtures.read(folder.resolve(fixture.getKey()));
            assertThat(Fixtures.accepted(found)).isEqualTo(Fixtures.accepted(expected));
            assertThat(Fixtures.rejected(found)).isEqualTo(Fixtures.rejected(expected));
        }
    }

    private RefusedInput refused(String name, byte[] bytes) throws IOException {
        Files.createDirectories(logs);
        Files.write(logs.resolve(name), bytes);
        return catchThrowableOfType(RefusedInput.class, () -> Fixtures.read(dir, logs));
    }

    @ParameterizedTest
    @CsvSource({
        "a.xls, a spreadsheet of a form that is not read, save it as .xlsx",
        "a.ods, a spreadsheet of a form that is not read, save it as .xlsx",
        "a.xlsx.gz, a workbook or Parquet file inside a gzip file, gunzip",
        "a.xlsx, not a workbook, name it by what it is",
        "a.parquet.txt, not a visit log, underscore",
    })
    void otherFormsAreRefusedWithTheWayOut(String name, String what, String wayOut) throws IOException {
        RefusedInput refused = refused(name, "visitId,visitedAt,vehicleId\n".getBytes(StandardCharsets.UTF_8));
        assertThat(refused.what()).isEqualTo(what);
        assertThat(refused.where()).contains("visit-logs/" + name);
        assertThat(refused.wayOut()).contains(wayOut);
    }

    @Test
    void aWorkbookWithoutALogAndOneWithAnUnknownColumnAreRefused() throws IOException {
        Sheets words = new Sheets();
        words.add("Words", List.of(row("a"), row("b")));
        words.write(logs.resolve("a.xlsx"));
        RefusedInput none = catchThrowableOfType(RefusedInput.class, () -> Fixtures.read(dir, logs));
        assertThat(none.what()).isEqualTo("not a visit log");
        assertThat(none.value()).isEqualTo("sheets Words");

        Sheets slip =
                of(List.of(row("Title"), row("visitId", "visitedAt", "vehicleId", "presure"), row("V", "x", "K")));
        slip.write(logs.resolve("a.xlsx"));
        RefusedInput unknown = catchThrowableOfType(RefusedInput.class, () -> Fixtures.read(dir, logs));
        assertThat(unknown.where()).isEqualTo("visit-logs/a.xlsx#Visits, row 2");
        assertThat(unknown.value()).isEqualTo("presure");
    }

    @Test
    void whatASpreadsheetProgramLaysBesideAnOpenWorkbookIsPassedOver() throws IOException {
        of(List.of(HEADER, wheel("V1", LocalDate.of(2025, 11, 18), "1L", "0A1B2C01", 240)))
                .write(logs.resolve("a.xlsx"));
        Files.writeString(logs.resolve("~$a.xlsx"), "owner");
        Files.writeString(logs.resolve(".~lock.a.xlsx#"), "owner");
        assertThat(Fixtures.find(dir, logs)).extracting(LogFile::name).containsExactly("visit-logs/a.xlsx#Visits");
    }
}
