package sensorrounds.ingest;

import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import sensorrounds.intake.ContractVersion;
import sensorrounds.intake.Field;
import sensorrounds.intake.FieldProblem;
import sensorrounds.intake.IntakeCounts;
import sensorrounds.intake.ParsedRow;
import sensorrounds.intake.RawRecord;
import sensorrounds.intake.RejectionRule;
import sensorrounds.intake.VisitParser;
import sensorrounds.visit.Source;

/** The rows of a CSV file: one per line that is not blank. */
final class CsvRows implements RowSource {
    /** Lines one row may run over inside quotes. More means a quote that is never closed. */
    private static final int MOST_LINES = 100;

    private final LogFile file;
    private final CsvReader<CsvRecord> csv;
    private final CloseableIterator<CsvRecord> records;
    private final CsvHeader header;
    private final VisitParser parser;
    private final long linesBefore;
    private final Row row = new Row();

    private CsvRows(LogFile file, Reader text, CsvHeader header, long linesBefore) throws IOException {
        this.file = file;
        this.csv = reader(text, file.layout().delimiter());
        this.records = csv.iterator();
        this.linesBefore = linesBefore;
        this.parser = new VisitParser(file.layout());
        if (header != null) {
            this.header = header;
            return;
        }
        CsvRecord names = nextRecord();
        if (names == null) {
            throw LogFiles.empty(file.name());
        }
        this.header = CsvHeader.of(withoutMark(names), file);
        row.line = names.getStartingLineNumber();
    }

    /** The rows of a whole file, or of its first part, which begins with the header. */
    static CsvRows withHeader(LogFile file, Reader text) throws IOException {
        return new CsvRows(file, text, null, 0);
    }

    /** The rows of a later part. */
    static CsvRows following(CsvHeader header, LogSlice slice, Reader text) throws IOException {
        return new CsvRows(slice.file(), text, header, slice.linesBefore());
    }

    CsvHeader header() {
        return header;
    }

    static CsvReader<CsvRecord> reader(Reader text, char delimiter) {
        return CsvReader.builder()
                .fieldSeparator(delimiter)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .allowUnclosedQuote(false)
                .ofCsvRecord(text);
    }

    private static List<String> withoutMark(CsvRecord names) {
        List<String> list = new ArrayList<>(names.getFields());
        if (list.get(0).startsWith("\uFEFF")) {
            list.set(0, list.get(0).substring(1));
        }
        return list;
    }

    @Override
    public ParsedRow next() throws IOException {
        CsvRecord record = nextRecord();
        while (record != null && isBlank(record)) {
            record = nextRecord();
        }
        if (record == null) {
            return null;
        }
        row.set(record);
        return parser.row(row);
    }

    @Override
    public long line() {
        return row.line;
    }

    @Override
    public IntakeCounts counts() {
        return parser.counts();
    }

    @Override
    public void close() throws IOException {
        csv.close();
    }

    private CsvRecord nextRecord() throws IOException {
        try {
            if (!records.hasNext()) {
                return null;
            }
            CsvRecord record = records.next();
            if (lineOf(record) - row.line > MOST_LINES && row.line > 0 && row.spansLines()) {
                throw unclosedQuote(row.line);
            }
            return record;
        } catch (UncheckedIOException e) {
            throw e.getCause();
        } catch (CsvParseException e) {
            if (e.getCause() instanceof IOException io) {
                throw io;
            }
            if (e.getCause() instanceof RefusedInput refused) {
                throw refused;
            }
            throw unclosedQuote(row.line + 1);
        }
    }

    private long lineOf(CsvRecord record) {
        return linesBefore + record.getStartingLineNumber();
    }

    private RefusedInput unclosedQuote(long line) {
        return new RefusedInput(
                "a quoted field that does not end",
                file.name() + ", about line " + line,
                null,
                "a closing quote within " + MOST_LINES + " lines; a quote inside a field is doubled",
                "mend the quote, or export the file again");
    }

    private static boolean isBlank(CsvRecord record) {
        for (int i = 0; i < record.getFieldCount(); i++) {
            if (!record.getField(i).isBlank()) {
                return false;
            }
        }
        return true;
    }

    /** The line under the reader's eye; one object for the whole file, since the parser keeps nothing of it but texts. */
    private final class Row implements RawRecord {
        private CsvRecord record;
        private long line;

        void set(CsvRecord next) {
            this.record = next;
            this.line = lineOf(next);
        }

        boolean spansLines() {
            return record != null && record.getFields().stream().anyMatch(f -> f.indexOf('\n') >= 0);
        }

        @Override
        public String get(Field field) {
            int column = header.column(field);
            return column >= 0 && column < record.getFieldCount() ? record.getField(column) : null;
        }

        @Override
        public Source source() {
            return new Source(file.name(), line);
        }

        @Override
        public String text() {
            return String.join(String.valueOf(file.layout().delimiter()), record.getFields());
        }

        @Override
        public boolean hasLaterNames() {
            return unknownColumn() != null && isLaterMinor();
        }

        private boolean isLaterMinor() {
            String version = get(Field.CONTRACT_VERSION);
            return ContractVersion.isLaterMinor(
                    version == null || version.isBlank()
                            ? file.layout().constants().get(Field.CONTRACT_VERSION)
                            : version);
        }

        /** The first column that is not known and has a value here; null for none. */
        private String unknownColumn() {
            for (Map.Entry<Integer, String> column : header.laterColumns().entrySet()) {
                int at = column.getKey();
                if (at < record.getFieldCount() && !record.getField(at).isBlank()) {
                    return column.getValue();
                }
            }
            return null;
        }

        @Override
        public FieldProblem problem() {
            if (!header.laterColumns().isEmpty() && unknownColumn() != null && !isLaterMinor()) {
                return new FieldProblem(
                        RejectionRule.UNKNOWN_KEY, unknownColumn(), null, "a field of docs/visit-log.md");
            }
            return record.getFieldCount() == header.width()
                    ? null
                    : new FieldProblem(
                            RejectionRule.FIELD_COUNT,
                            null,
                            record.getFieldCount() + " fields",
                            header.width() + " fields as in the header");
        }
    }
}
