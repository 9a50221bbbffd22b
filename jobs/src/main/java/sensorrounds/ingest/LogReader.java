package sensorrounds.ingest;

import java.io.IOException;
import java.io.Reader;
import java.util.Iterator;
import java.util.Map;
import java.util.NoSuchElementException;
import org.apache.hadoop.conf.Configuration;
import sensorrounds.intake.Evidence;
import sensorrounds.intake.FileCount;
import sensorrounds.intake.ParsedRow;
import sensorrounds.tables.LogRow;

/**
 * Streams a file, or a part of one, as rows: each row of the log as it was read, and last the reader's own count of them.
 * The file is never held in memory, and is closed after the last row or at the first failure.
 */
public final class LogReader implements Iterator<LogRow> {
    private final LogFile file;
    private final RowSource rows;
    private final Pseudonyms pseudonyms;
    private final LastCharacter end;
    private LogRow next;
    private long count;
    private boolean ended;

    private LogReader(LogFile file, RowSource rows, LastCharacter end, Pseudonyms pseudonyms) {
        this.file = file;
        this.rows = rows;
        this.end = end;
        this.pseudonyms = pseudonyms;
    }

    /** @throws RefusedInput when the file cannot be opened, is empty, or is no visit log */
    public static LogReader open(LogSlice slice, Configuration hadoop) {
        return open(slice, hadoop, null);
    }

    /** @param pseudonyms what replaces personal data; null to keep it */
    static LogReader open(LogSlice slice, Configuration hadoop, Pseudonyms pseudonyms) {
        try {
            return of(slice, hadoop, pseudonyms);
        } catch (IOException e) {
            throw LogStreams.unreadable(slice.file(), 0, e);
        }
    }

    private static LogReader of(LogSlice slice, Configuration hadoop, Pseudonyms pseudonyms) throws IOException {
        LogFile file = slice.file();
        return switch (file.format()) {
            case JSON_LINES, CSV -> ofLines(slice, hadoop, pseudonyms);
            case XLSX -> new LogReader(file, SheetLog.open(file, hadoop), null, pseudonyms);
            case PARQUET -> new LogReader(file, ParquetLog.open(slice, hadoop), null, pseudonyms);
        };
    }

    private static LogReader ofLines(LogSlice slice, Configuration hadoop, Pseudonyms pseudonyms) throws IOException {
        LogFile file = slice.file();
        boolean csv = file.format() == LogFile.Format.CSV;
        CsvHeader header = csv && slice.offset() > 0 ? header(file, hadoop) : null;
        Reader text = LogStreams.open(slice, hadoop);
        try {
            if (!csv) {
                return new LogReader(file, new JsonRows(slice, text), null, pseudonyms);
            }
            LastCharacter watched = new LastCharacter(text);
            RowSource rows =
                    header == null ? CsvRows.withHeader(file, watched) : CsvRows.following(header, slice, watched);
            return new LogReader(file, rows, slice.isLast() ? watched : null, pseudonyms);
        } catch (IOException | RefusedInput e) {
            text.close();
            throw e;
        }
    }

    private static CsvHeader header(LogFile file, Configuration hadoop) throws IOException {
        try (CsvRows rows = CsvRows.withHeader(file, LogStreams.open(file, hadoop))) {
            return rows.header();
        }
    }

    /** Leaves the rest unread. */
    void close() {
        ended = true;
        next = null;
        try {
            rows.close();
        } catch (IOException e) {
            throw LogStreams.unreadable(file, rows.line(), e);
        }
    }

    @Override
    public boolean hasNext() {
        if (next == null && !ended) {
            next = read();
        }
        return next != null;
    }

    @Override
    public LogRow next() {
        if (!hasNext()) {
            throw new NoSuchElementException("the file " + file.name() + " has no more rows");
        }
        LogRow row = next;
        next = null;
        return row;
    }

    private LogRow read() {
        try {
            ParsedRow row = rows.next();
            if (row != null) {
                count++;
                return LogRow.of(pseudonyms == null ? row : pseudonyms.replace(row));
            }
            ended = true;
            rows.close();
            return LogRow.of(new FileCount(
                    file.name(),
                    count,
                    rows.line(),
                    file.bytes(),
                    file.format().word(),
                    file.layout().name(),
                    rows.counts().asMap(),
                    evidence()));
        } catch (IOException e) {
            ended = true;
            throw LogStreams.unreadable(file, rows.line(), e);
        }
    }

    /** A line of CSV that is cut inside its last value is a line like any other; only the missing line end can tell. */
    private Map<Evidence, Long> evidence() {
        Map<Evidence, Long> seen = rows.counts().evidence();
        if (end != null && !end.isLineEnd()) {
            seen.put(Evidence.LAST_LINE_OPEN, 1L);
        }
        return seen;
    }
}
