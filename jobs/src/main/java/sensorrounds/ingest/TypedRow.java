package sensorrounds.ingest;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Set;
import sensorrounds.intake.Field;
import sensorrounds.intake.FieldProblem;
import sensorrounds.intake.RejectionRule;
import sensorrounds.workbook.Cell;

/**
 * The row under the reader's eye of a file whose values have kinds: a sheet, or a flat Parquet file. One object for the whole
 * file, since the parser keeps nothing of it but texts.
 */
final class TypedRow extends FlatRow {
    /** Keys and names: a figure rounded to fifteen digits, or a day, is no longer what was written there. */
    private static final Set<Field> TEXTS = EnumSet.of(
            Field.VISIT_ID,
            Field.TECHNICIAN_ID,
            Field.READER_ID,
            Field.VEHICLE_ID,
            Field.VIN,
            Field.REGISTRATION,
            Field.WHEEL_SET,
            Field.PART,
            Field.NEW_PART);

    private static final int DATE_LENGTH = "2025-03-04".length();

    private final LogFile file;
    private final Field[] fields;
    private final String[] texts;
    private long line;
    private long numbers;
    private long days;
    private FieldProblem problem;

    TypedRow(LogFile file, CsvHeader header) {
        super(file, header);
        this.file = file;
        this.texts = new String[header.width()];
        this.fields = new Field[header.width()];
        for (Field field : Field.values()) {
            if (header.column(field) >= 0) {
                fields[header.column(field)] = field;
            }
        }
    }

    void begin(long nextLine) {
        line = nextLine;
        numbers = 0;
        days = 0;
        problem = null;
        Arrays.fill(texts, null);
    }

    /** @param column index in the header @param cell null for a blank */
    void set(int column, Cell cell) {
        if (cell == null) {
            return;
        }
        Field field = fields[column];
        texts[column] = cell.text();
        if (field == null) {
            return;
        }
        long bit = 1L << field.ordinal();
        switch (cell.kind()) {
            case NUMBER -> {
                numbers |= bit;
                if (TEXTS.contains(field) && cell.text().indexOf('E') > 0) {
                    wrong(RejectionRule.ID_AS_NUMBER, field, cell, "the key as text; its last digits are lost");
                }
            }
            case DAY -> {
                days |= bit;
                if (field == Field.WARNING_SINCE && cell.text().length() > DATE_LENGTH) {
                    texts[column] = cell.text().substring(0, DATE_LENGTH);
                }
                if (TEXTS.contains(field)) {
                    wrong(RejectionRule.WRONG_KIND, field, cell, "text; what was typed has been turned into a day");
                }
            }
            case ERROR -> wrong(RejectionRule.CELL_ERROR, field, cell, "a value");
            default -> {
                // Texts and flags are read as they stand.
            }
        }
    }

    /** A list or a group, which no field of a flat row is. */
    void setMany(int column) {
        texts[column] = "[…]";
        if (fields[column] != null) {
            wrong(new FieldProblem(
                    RejectionRule.WRONG_KIND, fields[column].key(), "a list or a group", "a single value"));
        }
    }

    private void wrong(RejectionRule rule, Field field, Cell cell, String expected) {
        wrong(new FieldProblem(rule, field.key(), cell.text(), expected));
    }

    /** The first problem of a row counts. */
    void wrong(FieldProblem found) {
        if (problem == null) {
            problem = found;
        }
    }

    boolean isBlank() {
        for (String text : texts) {
            if (text != null && !text.isBlank()) {
                return false;
            }
        }
        return problem == null;
    }

    @Override
    String at(int column) {
        return texts[column];
    }

    @Override
    long line() {
        return line;
    }

    @Override
    public long numbers() {
        return numbers;
    }

    @Override
    public long days() {
        return days;
    }

    @Override
    public String text() {
        StringBuilder all = new StringBuilder();
        for (String text : texts) {
            all.append(text == null ? "" : text).append(file.layout().delimiter());
        }
        return all.substring(0, all.length() - 1);
    }

    @Override
    public FieldProblem problem() {
        FieldProblem unknown = unknownName();
        return unknown == null ? problem : unknown;
    }
}
