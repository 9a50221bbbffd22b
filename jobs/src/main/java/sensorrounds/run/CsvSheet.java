package sensorrounds.run;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.charset.StandardCharsets;
import java.util.Iterator;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.types.StructType;

/**
 * Writes a table as CSV for people: one file, header line, UTF-8, RFC 4180. Text that a spreadsheet would run as a
 * formula is written with an apostrophe in front, since what stands in the logs was typed by anybody.
 */
final class CsvSheet {
    /** Digits kept of a number: more than anybody reads, fewer than the noise of a last bit. */
    private static final MathContext DIGITS = new MathContext(9);

    private CsvSheet() {}

    static void write(StructType schema, Iterator<Row> rows, OutputStream out) {
        try (Writer text = new OutputStreamWriter(out, StandardCharsets.UTF_8);
                CsvWriter csv =
                        CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(text)) {
            csv.writeRecord(schema.fieldNames());
            String[] cells = new String[schema.size()];
            while (rows.hasNext()) {
                Row row = rows.next();
                for (int i = 0; i < cells.length; i++) {
                    cells[i] = cell(row.get(i));
                }
                csv.writeRecord(cells);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String cell(Object value) {
        if (value == null) {
            return "";
        }
        if (value instanceof Double d) {
            return new BigDecimal(d).round(DIGITS).stripTrailingZeros().toPlainString();
        }
        if (value instanceof String s) {
            return harmless(s);
        }
        return value.toString();
    }

    static String harmless(String s) {
        boolean formula = !s.isEmpty() && "=+-@\t\r".indexOf(s.charAt(0)) >= 0;
        return formula ? "'" + s : s;
    }
}
