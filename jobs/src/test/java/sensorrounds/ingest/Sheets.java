package sensorrounds.ingest;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** Workbooks for tests, written by Apache POI: cells of the kind that the value has in Java. */
public final class Sheets {
    final XSSFWorkbook book = new XSSFWorkbook();

    /** A number with its format. */
    public record Formatted(double value, String format) {}

    public static List<Object> row(Object... cells) {
        return Arrays.asList(cells);
    }

    public XSSFSheet add(String name, List<List<Object>> rows) {
        XSSFSheet sheet = book.createSheet(name);
        for (int i = 0; i < rows.size(); i++) {
            XSSFRow row = sheet.createRow(i);
            for (int j = 0; j < rows.get(i).size(); j++) {
                if (rows.get(i).get(j) != null) {
                    set(row.createCell(j), rows.get(i).get(j));
                }
            }
        }
        return sheet;
    }

    private void set(XSSFCell cell, Object value) {
        if (value instanceof Number number) {
            cell.setCellValue(number.doubleValue());
        } else if (value instanceof Formatted number) {
            cell.setCellValue(number.value());
            cell.setCellStyle(style(number.format()));
        } else if (value instanceof LocalDate day) {
            cell.setCellValue(day);
            cell.setCellStyle(style("dd.mm.yyyy"));
        } else if (value instanceof LocalDateTime time) {
            cell.setCellValue(time);
            cell.setCellStyle(style("dd.mm.yyyy hh:mm"));
        } else if (value instanceof Boolean flag) {
            cell.setCellValue(flag);
        } else if (value instanceof FormulaError error) {
            cell.setCellErrorValue(error);
        } else {
            cell.setCellValue(value.toString());
        }
    }

    private CellStyle style(String format) {
        short number = book.createDataFormat().getFormat(format);
        for (int i = 0; i < book.getNumCellStyles(); i++) {
            if (book.getCellStyleAt(i).getDataFormat() == number) {
                return book.getCellStyleAt(i);
            }
        }
        CellStyle style = book.createCellStyle();
        style.setDataFormat(number);
        return style;
    }

    public Path write(Path file) {
        try {
            Files.createDirectories(file.getParent());
            try (OutputStream out = Files.newOutputStream(file)) {
                book.write(out);
            }
            return file;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
