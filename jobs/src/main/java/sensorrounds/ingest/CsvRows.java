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
import sensorrounds.intake.FieldProblem;
import sensorrounds.intake.IntakeCounts;
import sensorrounds.intake.ParsedRow;
import sensorrounds.intake.RejectionRule;
import sensorrounds.intake.VisitParser;

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
    private final Row row;
    private CsvRecord record;
    private long line;

    private CsvRows(LogFile file, Reader text, CsvHeader header, long linesBefore) throws IOException {
        this.file = file;
        this.csv = reader(text, file.layout().delimiter());
        this.records = csv.iterator();
        this.linesBefore = linesBefore;
        this.parser = new VisitParser(file.layout());
        this.header = header == null ? readHeader() : header;
        this.row = new Row();
    }

    private CsvHeader readHeader() throws IOException {
        CsvRecord names = nextRecord();
        if (names == null) {
            throw LogFiles.empty(file.name());
        }
        line = names.getStartingLineNumber();
        return CsvHeader.of(withoutMark(names), file);
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
        CsvRecord next = nextRecord();
        while (next != null && isBlank(next)) {
            next = nextRecord();
        }
        if (next == null) {
            return null;
        }
        record = next;
        line = lineOf(next);
        return parser.row(row);
    }

    @Override
    public long line() {
        return line;
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
            CsvRecord next = records.next();
            if (lineOf(next) - line > MOST_LINES && line > 0 && spansLines()) {
                throw unclosedQuote(line);
            }
            return next;
        } catch (UncheckedIOException e) {
            throw e.getCause();
        } catch (CsvParseException e) {
            if (e.getCause() instanceof IOException io) {
                throw io;
            }
            if (e.getCause() instanceof RefusedInput refused) {
                throw refused;
            }
            throw unclosedQuote(line + 1);
        }
    }

    private long lineOf(CsvRecord of) {
        return linesBefore + of.getStartingLineNumber();
    }

    private RefusedInput unclosedQuote(long near) {
        return new RefusedInput(
                "a quoted field that does not end",
                file.name() + ", about line " + near,
                null,
                "a closing quote within " + MOST_LINES + " lines; a quote inside a field is doubled",
                "mend the quote, or export the file again");
    }

    private boolean spansLines() {
        return record != null && record.getFields().stream().anyMatch(f -> f.indexOf('\n') >= 0);
    }

    private static boolean isBlank(CsvRecord of) {
        for (int i = 0; i < of.getFieldCount(); i++) {
            if (!of.getField(i).isBlank()) {
                return false;
            }
        }
        return true;
    }

    /** The line under the reader's eye; one object for the whole file, since the parser keeps nothing of it but texts. */
    private final class Row extends FlatRow {
        Row() {
            super(file, header);
        }

        @Override
        String at(int column) {
            return column < record.getFieldCount() ? record.getField(column) : null;
        }

        @Override
        long line() {
            return line;
        }

        @Override
        public String text() {
            return String.join(String.valueOf(file.layout().delimiter()), record.getFields());
        }

        @Override
        public FieldProblem problem() {
            FieldProblem unknown = unknownName();
            if (unknown != null) {
                return unknown;
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
