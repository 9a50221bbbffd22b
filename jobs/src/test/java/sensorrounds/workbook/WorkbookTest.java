package sensorrounds.workbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.ss.usermodel.SheetVisibility;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFRichTextString;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Workbooks are written by another library (Apache POI) or by hand, and read by ours. */
class WorkbookTest {
    private static byte[] written(Consumer<XSSFWorkbook> fill) {
        try (XSSFWorkbook book = new XSSFWorkbook();
                ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
            fill.accept(book);
            book.write(bytes);
            return bytes.toByteArray();
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static List<SheetRow> rows(byte[] bytes, String sheet) throws IOException {
        List<SheetRow> rows = new ArrayList<>();
        try (Workbook book = Workbook.open(bytes);
                SheetRows open = book.rows(sheet)) {
            for (SheetRow row = open.next(); row != null; row = open.next()) {
                rows.add(row);
            }
        }
        return rows;
    }

    private static Cell only(Consumer<XSSFCell> fill) throws IOException {
        byte[] bytes =
                written(book -> fill.accept(book.createSheet("A").createRow(0).createCell(0)));
        List<SheetRow> rows = rows(bytes, "A");
        return rows.isEmpty() ? null : rows.get(0).cell(0);
    }

    private static Consumer<XSSFCell> number(double value, String format) {
        return cell -> {
            CellStyle style = cell.getSheet().getWorkbook().createCellStyle();
            style.setDataFormat(cell.getSheet().getWorkbook().createDataFormat().getFormat(format));
            cell.setCellStyle(style);
            cell.setCellValue(value);
        };
    }

    @Test
    void textsNumbersFlagsAndErrorsKeepTheirKind() throws IOException {
        assertThat(only(c -> c.setCellValue("0012AB"))).isEqualTo(new Cell(Cell.Kind.TEXT, "0012AB"));
        assertThat(only(c -> c.setCellValue("two\nlines"))).isEqualTo(new Cell(Cell.Kind.TEXT, "two\nlines"));
        assertThat(only(c -> c.setCellValue(7.3))).isEqualTo(new Cell(Cell.Kind.NUMBER, "7.3"));
        assertThat(only(c -> c.setCellValue(true))).isEqualTo(new Cell(Cell.Kind.FLAG, "true"));
        assertThat(only(c -> c.setCellErrorValue(FormulaError.NA))).isEqualTo(new Cell(Cell.Kind.ERROR, "#N/A"));
        assertThat(only(c -> c.setCellValue("  "))).isNull();
        assertThat(only(c -> {
                    XSSFRichTextString runs = new XSSFRichTextString("0A1B");
                    runs.append("2C3D", c.getSheet().getWorkbook().createFont());
                    c.setCellValue(runs);
                }))
                .isEqualTo(new Cell(Cell.Kind.TEXT, "0A1B2C3D"));
    }

    @Test
    void formulasHaveTheValueTheyHadWhenTheFileWasSaved() throws IOException {
        byte[] bytes = Parts.workbook("<row r=\"1\"><c r=\"A1\"><f>1+1</f><v>2</v></c>"
                + "<c r=\"B1\" t=\"str\"><f>T(\"x\")</f><v>x</v></c><c r=\"C1\" t=\"e\"><f>1/0</f><v>#DIV/0!</v></c>"
                + "<c r=\"D1\" t=\"b\"><f>TRUE()</f><v>1</v></c><c r=\"E1\" t=\"str\"><f>\"\"</f><v></v></c></row>");
        assertThat(rows(bytes, "Visits").get(0).cells())
                .containsExactly(
                        new Cell(Cell.Kind.NUMBER, "2"),
                        new Cell(Cell.Kind.TEXT, "x"),
                        new Cell(Cell.Kind.ERROR, "#DIV/0!"),
                        new Cell(Cell.Kind.FLAG, "true"),
                        null);
    }

    /** Spreadsheet programs keep fifteen digits (ECMA-376 leaves it to IEEE 754 doubles, whose decimal precision is 15). */
    @ParameterizedTest
    @CsvSource({
        "7.2999999999999998, 7.3",
        "0.30000000000000004, 0.3",
        "123456789012345, 123456789012345",
        "999999999999999, 999999999999999",
        "1234567890123456, 1.23456789012346E+15",
        "1.234E+59, 1.234E+59",
        "12345678.0, 12345678",
        "1E3, 1000",
        "-0.0, 0",
        "1E-7, 0.0000001",
        "-40, -40",
    })
    void numbersHaveTheDigitsPeopleSee(String raw, String text) throws IOException {
        byte[] bytes = Parts.workbook("<row r=\"1\"><c r=\"A1\"><v>" + raw + "</v></c></row>");
        assertThat(rows(bytes, "Visits").get(0).cell(0)).isEqualTo(new Cell(Cell.Kind.NUMBER, text));
    }

    @ParameterizedTest
    @CsvSource({
        "0.35, 0%, 35%",
        "0.355, 0.0%, 35.5%",
        "123456, 00000000, 00123456",
        "319, 0000, 0319",
        "1234.5, '#,##0.00', 1234.5",
        "3.5, '0.0 \"days\"', 3.5",
        "3, '[Red]0;[Blue]-0', 3",
        "3.5, '0.0\\d', 3.5",
    })
    void aFormatCountsWhereItSaysWhatTheNumberIs(double value, String format, String text) throws IOException {
        assertThat(only(number(value, format))).isEqualTo(new Cell(Cell.Kind.NUMBER, text));
    }

    /**
     * 1 January 2008 is day 39448 of the 1900 system (documentation of the worksheet function DATE, from memory); 5 July 1998
     * is 35981 in the 1900 system and 34519 in the 1904 system (vendor's article on the two systems, from memory).
     */
    @ParameterizedTest
    @CsvSource({
        "39448, m/d/yy, 2008-01-01",
        "39448, dd\\.mm\\.yyyy, 2008-01-01",
        "39448.375, dd.mm.yyyy hh:mm, 2008-01-01T09:00",
        "39448, yyyy-mm-dd hh:mm, 2008-01-01T00:00",
        "39448.347222222219, '[$-407]d. mmmm yyyy hh:mm;@', 2008-01-01T08:20",
        "35981, d-mmm-yy, 1998-07-05",
        "39448.50001, m/d/yy h:mm, 2008-01-01T12:00:01",
    })
    void daysAreToldByTheirFormat(double serial, String format, String text) throws IOException {
        assertThat(only(number(serial, format))).isEqualTo(new Cell(Cell.Kind.DAY, text));
    }

    @ParameterizedTest
    @CsvSource({"1, 1998-07-05", "true, 1998-07-05", "0, 1994-07-04"})
    void theWorkbookSaysFromWhenDaysAreCounted(String flag, String text) throws IOException {
        byte[] written = written(book -> number(34519, "yyyy-mm-dd")
                .accept(book.createSheet("A").createRow(0).createCell(0)));
        Map<String, byte[]> parts = Parts.unzip(written);
        String book = new String(parts.get("xl/workbook.xml"), java.nio.charset.StandardCharsets.UTF_8);
        assertThat(book).contains("<workbookPr date1904=\"false\"/>");
        Parts.put(
                parts,
                "xl/workbook.xml",
                book.replace("<workbookPr date1904=\"false\"/>", "<workbookPr date1904=\"" + flag + "\"/>"));
        assertThat(rows(Parts.zip(parts), "A").get(0).cell(0)).isEqualTo(new Cell(Cell.Kind.DAY, text));
    }

    @Test
    void hiddenSheetsAndRowsCountBlankOnesDoNot() throws IOException {
        byte[] bytes = written(book -> {
            XSSFSheet sheet = book.createSheet("Seen");
            sheet.createRow(0).createCell(2).setCellValue("c");
            sheet.createRow(3).createCell(0).setCellValue("hidden");
            sheet.getRow(3).setZeroHeight(true);
            sheet.createRow(4).createCell(0).setCellValue("");
            book.createSheet("Hidden");
            book.setSheetVisibility(1, SheetVisibility.VERY_HIDDEN);
        });
        assertThat(rows(bytes, "Seen")).extracting(SheetRow::line).containsExactly(1, 4);
        assertThat(rows(bytes, "Seen").get(0).cells()).containsExactly(null, null, new Cell(Cell.Kind.TEXT, "c"));
        try (Workbook book = Workbook.open(bytes)) {
            assertThat(book.sheets()).containsExactly("Seen", "Hidden");
        }
    }

    @Test
    void aCellMergedOverRowsCountsInEachAndOverColumnsInItsFirst() throws IOException {
        byte[] bytes = written(book -> {
            XSSFSheet sheet = book.createSheet("A");
            for (int i = 0; i < 4; i++) {
                sheet.createRow(i).createCell(3).setCellValue("w" + i);
            }
            sheet.getRow(1).createCell(0).setCellValue("V1");
            sheet.getRow(1).createCell(1).setCellValue(240);
            sheet.addMergedRegion(CellRangeAddress.valueOf("A2:A3"));
            sheet.addMergedRegion(CellRangeAddress.valueOf("B2:C3"));
        });
        List<SheetRow> rows = rows(bytes, "A");
        assertThat(rows)
                .extracting(r -> r.cell(0) == null ? null : r.cell(0).text())
                .containsExactly(null, "V1", "V1", null);
        assertThat(rows.get(2).cell(1).text()).isEqualTo("240");
        assertThat(rows.get(2).cell(2)).isNull();
        assertThat(rows).extracting(SheetRow::merged).containsExactly(0, 0, 2, 0);
    }

    @Test
    void cellsWithoutPlacesTypesAndStylesFollowEachOther() throws IOException {
        byte[] bytes = Parts.workbook(
                "<row><c t=\"inlineStr\"><is><t>a_x000D_b</t><rPh sb=\"0\" eb=\"1\"><t>x</t></rPh></is></c>"
                        + "<c><v>1</v></c><c t=\"d\"><v>2025-11-18T08:20</v></c></row><row/><row><c><v>2</v></c></row>");
        List<SheetRow> rows = rows(bytes, "Visits");
        assertThat(rows).extracting(SheetRow::line).containsExactly(1, 3);
        assertThat(rows.get(0).cells())
                .containsExactly(
                        new Cell(Cell.Kind.TEXT, "a\rb"),
                        new Cell(Cell.Kind.NUMBER, "1"),
                        new Cell(Cell.Kind.DAY, "2025-11-18T08:20"));
    }
}
