package sensorrounds.ingest;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.zip.GZIPInputStream;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.types.DataType;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructType;
import sensorrounds.intake.Field;
import sensorrounds.intake.Layout;

/** Writes the rows of a CSV log in other forms, each value with the kind that a spreadsheet or a program would give it. */
public final class OtherForms {
    private static final Set<Field> NUMBERS = EnumSet.of(
            Field.REVISION,
            Field.ODOMETER,
            Field.AMBIENT_TEMPERATURE,
            Field.PLACARD_PRESSURE_1,
            Field.PLACARD_PRESSURE_2,
            Field.PLACARD_PRESSURE_3,
            Field.DRIVING_MINUTES_TO_WARNING,
            Field.TEST_DRIVE_MINUTES,
            Field.TEST_DRIVE_DISTANCE,
            Field.WAKE_ATTEMPTS,
            Field.PRESSURE,
            Field.GAUGE_PRESSURE,
            Field.TEMPERATURE);
    private static final Set<Field> FLAGS = EnumSet.of(
            Field.PRESSURES_STORED, Field.CODES_CLEARED, Field.TEST_DRIVE_WARNING_RETURNED, Field.HOT, Field.CLONED);

    private final List<String> header;
    private final List<Field> fields = new ArrayList<>();
    private final List<List<Object>> rows = new ArrayList<>();

    private OtherForms(List<String> header) {
        this.header = header;
    }

    /** @param csv a log @param layout how it is written */
    public static OtherForms of(Path csv, Layout layout) {
        boolean gzipped = csv.toString().endsWith(".gz");
        try (InputStream raw = Files.newInputStream(csv);
                InputStream plain = gzipped ? new GZIPInputStream(raw) : raw;
                CsvReader<CsvRecord> lines = CsvReader.builder()
                        .fieldSeparator(layout.delimiter())
                        .ofCsvRecord(new InputStreamReader(plain, Charset.forName(layout.encoding())))) {
            OtherForms forms = null;
            for (CsvRecord line : lines) {
                if (forms == null) {
                    forms = new OtherForms(line.getFields());
                    for (String name : line.getFields()) {
                        forms.fields.add(CsvHeader.field(name.strip(), layout));
                    }
                } else {
                    forms.add(line.getFields(), layout);
                }
            }
            return forms;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void add(List<String> texts, Layout layout) {
        List<Object> row = new ArrayList<>();
        for (int i = 0; i < texts.size(); i++) {
            row.add(typed(texts.get(i).strip(), fields.get(i), layout));
        }
        rows.add(row);
    }

    /** A text stays one where it does not read as what its field holds. */
    private static Object typed(String text, Field field, Layout layout) {
        if (text.isEmpty()) {
            return null;
        }
        try {
            if (NUMBERS.contains(field)) {
                return Double.valueOf(text.replace(layout.decimalMark(), '.'));
            }
            if (FLAGS.contains(field) && (text.equals("true") || text.equals("false"))) {
                return Boolean.valueOf(text);
            }
            if (field == Field.VISITED_AT) {
                return layout.dateTimeFormat() == null
                        ? LocalDateTime.parse(text)
                        : LocalDateTime.parse(text, DateTimeFormatter.ofPattern(layout.dateTimeFormat()));
            }
            if (field == Field.WARNING_SINCE) {
                return layout.dateFormat() == null
                        ? LocalDate.parse(text)
                        : LocalDate.parse(text, DateTimeFormatter.ofPattern(layout.dateFormat()));
            }
            return text;
        } catch (NumberFormatException | DateTimeParseException e) {
            return text;
        }
    }

    public Path workbook(Path file) {
        List<List<Object>> all = new ArrayList<>();
        all.add(List.copyOf(header));
        all.addAll(rows);
        Sheets sheets = new Sheets();
        sheets.add("Log", all);
        return sheets.write(file);
    }

    /** A column whose values are not all of one kind is a column of texts. */
    public void parquet(SparkSession spark, Path folder) {
        Map<Field, DataType> types = new EnumMap<>(Field.class);
        StructType schema = new StructType();
        for (int i = 0; i < header.size(); i++) {
            types.put(fields.get(i), type(i));
            schema = schema.add(header.get(i), type(i));
        }
        List<Row> records = new ArrayList<>();
        for (List<Object> row : rows) {
            Object[] values = new Object[header.size()];
            for (int i = 0; i < header.size(); i++) {
                Object value = row.get(i);
                values[i] =
                        value == null || types.get(fields.get(i)) != DataTypes.StringType ? value : value.toString();
            }
            records.add(RowFactory.create(values));
        }
        spark.createDataFrame(records, schema).coalesce(1).write().parquet(folder.toString());
    }

    private DataType type(int column) {
        List<Object> values =
                rows.stream().map(r -> r.get(column)).filter(v -> v != null).toList();
        if (!values.isEmpty() && values.stream().allMatch(Double.class::isInstance)) {
            return DataTypes.DoubleType;
        }
        if (!values.isEmpty() && values.stream().allMatch(Boolean.class::isInstance)) {
            return DataTypes.BooleanType;
        }
        if (!values.isEmpty() && values.stream().allMatch(LocalDate.class::isInstance)) {
            return DataTypes.DateType;
        }
        return !values.isEmpty() && values.stream().allMatch(LocalDateTime.class::isInstance)
                ? DataTypes.TimestampNTZType
                : DataTypes.StringType;
    }
}
