package sensorrounds.tables;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.types.StructField;
import sensorrounds.intake.Duplicate;
import sensorrounds.intake.Evidence;
import sensorrounds.intake.FileCount;
import sensorrounds.intake.Note;
import sensorrounds.intake.Rejection;
import sensorrounds.intake.RejectionRule;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.Source;
import sensorrounds.visit.VisitHeader;
import sensorrounds.visit.WheelReading;

/** The table of log rows: every row of every log, whatever became of it, and one row per file. Partitioned by outcome. */
public final class LogRows {
    public static final String VEHICLE_ID = VisitColumns.VEHICLE_ID;
    public static final String VISITED_AT = VisitColumns.VISITED_AT;
    public static final String VIN = VisitColumns.VIN;
    public static final String REGISTRATION = VisitColumns.REGISTRATION;
    public static final String SENSOR_ID = WheelColumns.SENSOR_ID;
    public static final String READ = WheelColumns.READ;
    public static final String VISIT_ID = VisitColumns.VISIT_ID;
    public static final String POSITION = WheelColumns.POSITION;
    public static final String SOURCE_FILE = "source_file";
    public static final String SOURCE_LINE = "source_line";
    public static final String RULE = "rule";
    public static final String FIELD = "field";
    public static final String RAW_VALUE = "raw_value";
    public static final String EXPECTED = "expected";
    public static final String REMEDY = "remedy";
    public static final String RAW_TEXT = "raw_text";
    public static final String FILE_ROWS = "file_rows";
    public static final String FILE_LINES = "file_lines";
    public static final String FILE_BYTES = "file_bytes";
    public static final String FILE_FORMAT = "file_format";
    public static final String FILE_LAYOUT = "file_layout";
    public static final String FILE_NOTES = "file_notes";
    public static final String FILE_EVIDENCE = "file_evidence";
    /** The partition column; last, as a reader of partitioned Parquet gives it back. */
    public static final String OUTCOME = "outcome";

    /** Columns that name people: they stay in the stored rows and reach no page. */
    public static final Set<String> NAMES_PEOPLE = Set.of("technician_id", "vin", "registration", "notes");

    private static final List<Column<LogRow>> OF_VISIT = VisitColumns.columns();
    private static final List<Column<LogRow>> OF_WHEEL = WheelColumns.columns();
    static final int WHEEL = OF_VISIT.size();
    static final int SOURCE = WHEEL + OF_WHEEL.size();
    private static final List<Column<LogRow>> OF_SOURCE = List.of(
            Column.text(
                    SOURCE_FILE,
                    "file, as its path below the data folder; of a workbook with # and the sheet",
                    r -> r.source().file()),
            Column.count(
                    SOURCE_LINE,
                    "line in it, from 1, or row of the sheet or Parquet file; 0 for the row of the file itself",
                    r -> r.source().line()));
    private static final int DUPLICATE = SOURCE + OF_SOURCE.size();
    private static final List<Column<LogRow>> OF_DUPLICATE = List.of(
            Column.text(RULE, "why the row was put into quarantine or left out as a duplicate", LogRows::rule),
            Column.text("kept_file", "file of the row that counts in its place", r -> kept(r, Source::file)),
            Column.count("kept_line", "line of the row that counts in its place", r -> kept(r, Source::line)));
    private static final int REJECTION = DUPLICATE + OF_DUPLICATE.size();
    private static final List<Column<LogRow>> OF_REJECTION = List.of(
            Column.text(FIELD, "field at fault; null for the whole row", rejection(Rejection::field)),
            Column.text(RAW_VALUE, "its value as written", rejection(Rejection::rawValue)),
            Column.text(EXPECTED, "what would have been right", rejection(Rejection::expected)),
            Column.text(REMEDY, "the way out", rejection(Rejection::remedy)),
            Column.text(RAW_TEXT, "the row as it stands in the file, cut", rejection(Rejection::rawText)));
    private static final int FILE = REJECTION + OF_REJECTION.size();
    private static final List<Column<LogRow>> OF_FILE = List.of(
            Column.count(FILE_ROWS, "rows the reader of the file counted", file(FileCount::rows)),
            Column.count(FILE_LINES, "line of its last row", file(FileCount::lines)),
            Column.count(FILE_BYTES, "size as stored, bytes", file(FileCount::bytes)),
            Column.text(FILE_FORMAT, "csv, jsonl, xlsx or parquet", file(FileCount::format)),
            Column.text(FILE_LAYOUT, "layout applied; null for the canonical form", file(FileCount::layout)),
            Column.text(FILE_NOTES, "conversions and oddities, as NOTE=rows;NOTE=rows", file(f -> counts(f.notes()))),
            Column.text(
                    FILE_EVIDENCE,
                    "what single values say about the form of the file, as KIND=rows;KIND=rows",
                    file(f -> counts(f.evidence()))));

    public static final Table<LogRow> TABLE = new Table<>(
            "log_rows",
            "Every row of every log: accepted, quarantined with the reason and the way out, or a duplicate of a row that"
                    + " counts; and one row per file with the reader's own count.",
            all());

    private static final int OUTCOME_AT = TABLE.columns().size() - 1;

    private LogRows() {}

    private interface OfRejection extends Function<Rejection, Object>, Serializable {}

    private interface OfFile extends Function<FileCount, Object>, Serializable {}

    private static Column.Getter<LogRow> rejection(OfRejection part) {
        return r -> r.quarantined() == null ? null : part.apply(r.quarantined());
    }

    private static Column.Getter<LogRow> file(OfFile part) {
        return r -> r.file() == null ? null : part.apply(r.file());
    }

    private static Object kept(LogRow r, Function<Source, Object> part) {
        return r.duplicate() == null ? null : part.apply(r.duplicate().keptSource());
    }

    private static String rule(LogRow r) {
        return switch (r.outcome()) {
            case QUARANTINED -> r.quarantined().rule().name();
            case DUPLICATE -> r.duplicate().rule().name();
            default -> null;
        };
    }

    private static List<Column<LogRow>> all() {
        List<Column<LogRow>> all = new ArrayList<>(OF_VISIT);
        all.addAll(OF_WHEEL);
        all.addAll(OF_SOURCE);
        all.addAll(OF_DUPLICATE);
        all.addAll(OF_REJECTION);
        all.addAll(OF_FILE);
        all.add(Column.text(
                OUTCOME,
                "accepted, quarantined, duplicate or file",
                r -> r.outcome().word()));
        return all;
    }

    /** Names of the columns that {@link #understood} needs: the first ones. */
    public static List<String> ofUnderstood() {
        return TABLE.columns().subList(0, DUPLICATE).stream().map(Column::name).toList();
    }

    /** Name and type of each column that {@link #understood} needs. */
    public static StructField[] understoodSchema() {
        return Arrays.copyOf(TABLE.schema().fields(), DUPLICATE);
    }

    /** @throws IllegalArgumentException for an outcome that this version does not know */
    public static LogRow decode(Row row) {
        return switch (outcome(row)) {
            case ACCEPTED -> LogRow.of(understood(row));
            case QUARANTINED -> LogRow.of(rejection(row));
            case DUPLICATE -> LogRow.of(duplicate(row));
            case FILE -> LogRow.of(file(row));
        };
    }

    public static LogRow.Outcome outcome(Row row) {
        return outcome(row.getString(OUTCOME_AT));
    }

    /** The outcome with this stored word. */
    public static LogRow.Outcome outcome(String word) {
        for (LogRow.Outcome outcome : LogRow.Outcome.values()) {
            if (outcome.word().equals(word)) {
                return outcome;
            }
        }
        throw new IllegalArgumentException("outcome \"" + word + "\" in the table of log rows");
    }

    /** The row of the log, for an accepted row or a duplicate, from all columns or from those it needs. */
    public static LoggedWheel understood(Row row) {
        VisitHeader visit = VisitColumns.decode(new OuterRow(row, 0));
        WheelReading wheel = WheelColumns.decode(new OuterRow(row, WHEEL));
        return new LoggedWheel(visit, wheel, source(row, SOURCE));
    }

    private static Source source(Row row, int at) {
        return new Source(row.getString(at), row.getLong(at + 1));
    }

    private static Duplicate duplicate(Row row) {
        Duplicate.Rule rule = Duplicate.Rule.valueOf(row.getString(DUPLICATE));
        return new Duplicate(understood(row), rule, source(row, DUPLICATE + 1));
    }

    private static Rejection rejection(Row row) {
        RowCursor in = new OuterRow(row, REJECTION);
        String field = in.text();
        String rawValue = in.text();
        String expected = in.text();
        String remedy = in.text();
        return new Rejection(
                source(row, SOURCE),
                row.getString(VisitColumns.VISIT_ID_AT),
                row.getString(VisitColumns.VEHICLE_ID_AT),
                row.getString(WHEEL + 1),
                field,
                rawValue,
                RejectionRule.valueOf(row.getString(DUPLICATE)),
                expected,
                remedy,
                in.text());
    }

    private static FileCount file(Row row) {
        RowCursor in = new OuterRow(row, FILE);
        return new FileCount(
                row.getString(SOURCE),
                in.count(),
                in.count(),
                in.count(),
                in.text(),
                in.text(),
                notes(in.text()),
                evidence(in.text()));
    }

    private static String counts(Map<? extends Enum<?>, Long> counts) {
        return counts.entrySet().stream()
                .map(e -> e.getKey().name() + "=" + e.getValue())
                .collect(Collectors.joining(";"));
    }

    /** The counts in a stored {@link #FILE_NOTES}. */
    public static Map<Note, Long> notes(String text) {
        return counts(text, Note.class);
    }

    private static Map<Evidence, Long> evidence(String text) {
        return counts(text, Evidence.class);
    }

    private static <E extends Enum<E>> Map<E, Long> counts(String text, Class<E> kind) {
        Map<E, Long> counts = new EnumMap<>(kind);
        for (String entry : text.split(";")) {
            if (!entry.isEmpty()) {
                int equals = entry.indexOf('=');
                counts.put(Enum.valueOf(kind, entry.substring(0, equals)), Long.valueOf(entry.substring(equals + 1)));
            }
        }
        return counts;
    }
}
