package sensorrounds.workbook;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/**
 * Writes sheets as a workbook (Office Open XML, ECMA-376): cells of the kind they are, the line of headers fixed, with a
 * filter, and repeated on each printed page. Texts are texts: none is ever a formula. Equal sheets give equal bytes.
 */
public final class WorkbookWriter {
    /** ECMA-376, part 1, annex on limits of the file format as spreadsheet programs hold to them. */
    private static final int LONGEST_TEXT = 32_767;

    private static final String HEADER_FILL = "E8EDF2";
    private static final String PROPERTIES = "docProps/core.xml";
    private static final LocalDate FIRST_OF_ZIP = LocalDate.of(1980, 1, 1);

    private WorkbookWriter() {}

    /**
     * @param program that the workbook says it was written by
     * @param created day that it says it was written on
     */
    public static void write(List<SheetTable<?>> sheets, String program, LocalDate created, OutputStream out)
            throws IOException {
        ByteArrayOutputStream written = new ByteArrayOutputStream();
        try (Workbook workbook = new Workbook(written, program, null)) {
            for (SheetTable<?> sheet : sheets) {
                write(sheet, workbook.newWorksheet(sheet.name()));
            }
        }
        dated(written.toByteArray(), created, out);
    }

    private static <T> void write(SheetTable<T> table, Worksheet sheet) {
        int last = table.rows().size();
        for (int c = 0; c < table.columns().size(); c++) {
            SheetColumn<T> column = table.columns().get(c);
            sheet.width(c, column.form().width());
            sheet.value(0, c, column.header());
            for (int r = 0; r < last; r++) {
                set(sheet, r + 1, c, column.value().apply(table.rows().get(r)));
            }
            if (last > 0 && column.form().format() != null) {
                sheet.range(1, c, last, c)
                        .style()
                        .format(inXml(column.form().format()))
                        .set();
            }
        }
        int lastColumn = table.columns().size() - 1;
        sheet.range(0, 0, 0, lastColumn)
                .style()
                .bold()
                .fillColor(HEADER_FILL)
                .wrapText(true)
                .verticalAlignment("top")
                .set();
        sheet.freezePane(table.fixed(), 1);
        sheet.setAutoFilter(0, 0, last, lastColumn);
        sheet.pageOrientation("landscape");
        sheet.setFitToPage(true);
        sheet.fitToWidth((short) 1);
        sheet.fitToHeight((short) 0);
        sheet.repeatRows(0);
    }

    /** The library writes a format into its attribute as it is given. */
    private static String inXml(String format) {
        return format.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }

    private static void set(Worksheet sheet, int row, int column, Object value) {
        if (value == null || value instanceof Double d && !Double.isFinite(d)) {
            return;
        }
        if (value instanceof LocalDate day) {
            sheet.value(row, column, day);
        } else if (value instanceof Number number) {
            sheet.value(row, column, number);
        } else {
            String text = value.toString();
            sheet.value(row, column, text.substring(0, Math.min(text.length(), LONGEST_TEXT)));
        }
    }

    /** The same workbook with this day in place of the clock's. */
    private static void dated(byte[] workbook, LocalDate created, OutputStream out) throws IOException {
        try (ZipFile from = ZipFile.builder().setByteArray(workbook).get();
                ZipOutputStream to = new ZipOutputStream(out)) {
            for (ZipArchiveEntry entry : Collections.list(from.getEntriesInPhysicalOrder())) {
                ZipEntry copy = new ZipEntry(entry.getName());
                copy.setTimeLocal(FIRST_OF_ZIP.atStartOfDay());
                to.putNextEntry(copy);
                try (InputStream content = from.getInputStream(entry)) {
                    byte[] part = content.readAllBytes();
                    to.write(entry.getName().equals(PROPERTIES) ? dated(part, created) : part);
                }
            }
        }
    }

    private static byte[] dated(byte[] properties, LocalDate created) {
        return new String(properties, StandardCharsets.UTF_8)
                .replaceAll("(<dcterms:created[^>]*>)[^<]*", "$1" + created + "T00:00:00Z")
                .getBytes(StandardCharsets.UTF_8);
    }
}
