package sensorrounds.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sensorrounds.replacement.Advice;
import sensorrounds.report.ReportData.Listed;
import sensorrounds.workbook.SheetColumn;
import sensorrounds.workbook.SheetTable;
import sensorrounds.workbook.WorkbookWriter;

/** What stands in the workbook is read back by a program of other hands (Apache POI). */
class ListsWorkbookTest {
    private static byte[] written(ReportData data) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ListsWorkbook.write(data, Listed.whole(List.of()), out);
        return out.toByteArray();
    }

    private static XSSFWorkbook opened(ReportData data) throws IOException {
        return new XSSFWorkbook(new ByteArrayInputStream(written(data)));
    }

    private static Cell cell(Sheet sheet, int row, String header) {
        for (Cell head : sheet.getRow(0)) {
            if (head.getStringCellValue().equals(header)) {
                return sheet.getRow(row).getCell(head.getColumnIndex());
            }
        }
        throw new AssertionError("no column " + header + " in " + sheet.getSheetName());
    }

    @Test
    void everyListHasItsSheetNamedInTheContents() throws IOException {
        try (XSSFWorkbook book = opened(SampleReport.realistic())) {
            List<String> names = new ArrayList<>();
            book.sheetIterator().forEachRemaining(s -> names.add(s.getSheetName()));
            assertThat(names)
                    .containsExactly(
                            "Contents",
                            "Replacement list",
                            "No warning",
                            "Rounds",
                            "Orders",
                            "Stock outlook",
                            "Returning warnings",
                            "Follow-ups",
                            "Watch list");
            Sheet contents = book.getSheetAt(0);
            for (int i = 1; i < names.size(); i++) {
                Row row = contents.getRow(i);
                assertThat(row.getCell(0).getStringCellValue()).isEqualTo(names.get(i));
                assertThat(row.getCell(1).getNumericCellValue())
                        .isEqualTo(book.getSheet(names.get(i)).getLastRowNum());
                assertThat(book.getSheet(names.get(i)).getPaneInformation().isFreezePane())
                        .isTrue();
            }
        }
    }

    @Test
    void cellsHoldNumbersDaysAndShares() throws IOException {
        ReportData data = SampleReport.realistic();
        var first = data.ranked().rows().get(0);
        try (XSSFWorkbook book = opened(data)) {
            Sheet list = book.getSheet("Replacement list");
            assertThat(list.getLastRowNum()).isEqualTo((int) data.ranked().rows().stream()
                    .filter(r -> r.advice() != Advice.KEEP)
                    .count());
            assertThat(cell(list, 1, "Vehicle").getStringCellValue())
                    .isEqualTo(first.outlook().sensor().vehicleId());
            assertThat(cell(list, 1, "Chance of failing within 180 days").getNumericCellValue())
                    .isEqualTo(first.outlook().chances().pHorizon());
            assertThat(cell(list, 1, "Chance of failing within 180 days")
                            .getCellStyle()
                            .getDataFormatString())
                    .endsWith("0%");
            assertThat(cell(list, 1, "Last read on").getLocalDateTimeCellValue().toLocalDate())
                    .isEqualTo(first.outlook().sensor().lastReadOn());
        }
    }

    /** As Apache POI shows them, which follows the conditions of ECMA-376, part 1, 18.8.31; the number stays the number. */
    @ParameterizedTest
    @CsvSource({"0.9993, >\u00a099%", "1, >\u00a099%", "0.99, 99%", "0.42, 42%", "0.01, 1%", "0.0004, <\u00a01%"})
    void noChanceIsShownAsCertain(double chance, String shown) throws IOException {
        SheetTable<Double> sheet =
                new SheetTable<>("S", 1, List.of(SheetColumn.chance("Chance", c -> c)), List.of(chance));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        WorkbookWriter.write(List.of(sheet), "test", LocalDate.EPOCH, out);
        try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(out.toByteArray()))) {
            Cell cell = cell(book.getSheet("S"), 1, "Chance");
            assertThat(cell.getNumericCellValue()).isEqualTo(chance);
            assertThat(new DataFormatter(Locale.ROOT).formatCellValue(cell)).isEqualTo(shown);
        }
    }

    @Test
    void textOfALogIsNeverAFormula() throws IOException {
        String hostile = "=HYPERLINK(\"x\")\u0001<&>\"";
        try (XSSFWorkbook book = opened(SampleReport.withText(hostile))) {
            for (Sheet sheet : book) {
                for (Row row : sheet) {
                    for (Cell cell : row) {
                        assertThat(cell.getCellType()).isNotEqualTo(CellType.FORMULA);
                    }
                }
            }
            assertThat(cell(book.getSheet("Replacement list"), 1, "Vehicle").getStringCellValue())
                    .startsWith("=HYPERLINK(\"x\")");
        }
    }

    @Test
    void anEmptyRunHasTheSameSheets() throws IOException {
        try (XSSFWorkbook book = opened(SampleReport.empty())) {
            assertThat(book.getNumberOfSheets()).isEqualTo(9);
            assertThat(book.getSheet("Orders").getLastRowNum()).isZero();
        }
    }

    @Test
    void equalListsGiveEqualBytesDatedByTheRun() throws IOException {
        ReportData data = SampleReport.realistic();
        assertThat(written(data)).isEqualTo(written(data));
        try (XSSFWorkbook book = opened(data)) {
            assertThat(book.getProperties()
                            .getCoreProperties()
                            .getCreated()
                            .toInstant()
                            .toString())
                    .isEqualTo(LocalDate.of(2026, 3, 31) + "T00:00:00Z");
        }
    }
}
