package sensorrounds.ingest;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Predicate;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.Path;

/** One of the operator's own small tables: canonical CSV with a header. What is wrong in it is refused, not set aside. */
final class RegisterLines {
    private final String file;
    private final List<String> columns;
    private final Map<String, Integer> columnOf = new HashMap<>();

    private RegisterLines(String file, List<String> columns) {
        this.file = file;
        this.columns = columns;
    }

    /**
     * Reads a table, turning every line into a record.
     *
     * @param columns all columns there may be; the first ones, as many as keys, must be there
     * @return an empty list when there is no such file
     */
    static <T> List<T> read(
            String folder,
            String file,
            int keys,
            List<String> columns,
            Configuration hadoop,
            Function<Line, T> record) {
        Path path = new Path(folder, file);
        List<T> records = new ArrayList<>();
        try {
            if (!path.getFileSystem(hadoop).exists(path)) {
                return records;
            }
            RegisterLines lines = new RegisterLines(file, columns);
            try (Reader text = new InputStreamReader(LogStreams.open(path.toString(), hadoop), StandardCharsets.UTF_8);
                    CsvReader<CsvRecord> csv = CsvRows.reader(text, ',')) {
                for (CsvRecord csvRecord : csv) {
                    if (lines.columnOf.isEmpty()) {
                        lines.header(csvRecord, keys);
                    } else {
                        records.add(record.apply(lines.line(csvRecord)));
                    }
                }
            }
            if (lines.columnOf.isEmpty()) {
                throw LogFiles.empty(file);
            }
            return records;
        } catch (CsvParseException e) {
            throw new RefusedInput(
                    "a register cannot be read", file, e.getMessage(), "CSV with commas", "mend the file");
        } catch (IOException e) {
            throw new RefusedInput(
                    "a register cannot be read", file, e.getMessage(), "a readable file", "check the file");
        }
    }

    private void header(CsvRecord names, int keys) {
        for (int i = 0; i < names.getFieldCount(); i++) {
            String name = names.getField(i).strip();
            name = i == 0 && name.startsWith("\uFEFF") ? name.substring(1) : name;
            if (!columns.contains(name) || columnOf.put(name, i) != null) {
                throw new RefusedInput(
                        "a column that is not known, or stands twice",
                        file + ", line 1",
                        "\"" + name + "\"",
                        "each at most once: " + String.join(", ", columns),
                        "rename or remove the column");
            }
        }
        for (String key : columns.subList(0, keys)) {
            if (!columnOf.containsKey(key)) {
                throw new RefusedInput(
                        "a column is missing", file + ", line 1", null, "a column " + key, "add the column");
            }
        }
    }

    private Line line(CsvRecord record) {
        if (record.getFieldCount() != columnOf.size()) {
            throw new RefusedInput(
                    "a line has not as many fields as the header",
                    file + ", line " + record.getStartingLineNumber(),
                    record.getFieldCount() + " fields",
                    columnOf.size() + " fields",
                    "quote fields that hold a comma");
        }
        return new Line(record);
    }

    /** One line, read by the names of its columns. */
    final class Line {
        private final CsvRecord record;

        private Line(CsvRecord record) {
            this.record = record;
        }

        String where() {
            return file + ", line " + record.getStartingLineNumber();
        }

        /** @return null for a blank field or a column that is not there */
        String text(String column) {
            Integer at = columnOf.get(column);
            String text = at == null ? "" : record.getField(at).strip();
            return text.isEmpty() ? null : text;
        }

        String required(String column) {
            String text = text(column);
            if (text == null) {
                throw refused(column, "nothing", "a value");
            }
            return text;
        }

        LocalDate day(String column) {
            return as(column, "a date as 2025-03-04", LocalDate::parse);
        }

        /** A number that is not negative. */
        Double number(String column) {
            return as(
                    column,
                    "a number, 0 or more, with a decimal point",
                    text -> inRange(Double.valueOf(text), v -> v >= 0 && v < 1e12));
        }

        /** A whole number of at least min. */
        Integer whole(String column, int min) {
            return as(
                    column,
                    "a whole number, " + min + " or more",
                    text -> inRange(Integer.valueOf(text), v -> v >= min));
        }

        /** A text that must be one of a few words or forms. */
        <V> V as(String column, String expected, Function<String, V> read) {
            String text = text(column);
            if (text == null) {
                return null;
            }
            try {
                return read.apply(text);
            } catch (IllegalArgumentException | DateTimeParseException e) {
                throw refused(column, "\"" + text + "\"", expected);
            }
        }

        RefusedInput refused(String column, String value, String expected) {
            return new RefusedInput(
                    "a register has a value that cannot be used",
                    where() + ", column " + column,
                    value,
                    expected,
                    "correct the line in " + file);
        }

        private static <V> V inRange(V value, Predicate<V> range) {
            if (!range.test(value)) {
                throw new IllegalArgumentException("out of range");
            }
            return value;
        }
    }
}
