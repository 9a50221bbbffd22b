package sensorrounds.ingest;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.fs.Path;
import org.apache.parquet.example.data.Group;
import org.apache.parquet.schema.Type;
import sensorrounds.intake.Layout;
import sensorrounds.proposal.Sample;
import sensorrounds.workbook.Cell;
import sensorrounds.workbook.SheetRow;
import sensorrounds.workbook.SheetRows;
import sensorrounds.workbook.Workbook;

/** Samples of files whose values have kinds, as the texts that a reader of them gives. */
final class TypedSamples {
    private static final int LEAST_COLUMNS = 3;

    private TypedSamples() {}

    static SampleReader.Cut read(String file, Configuration hadoop) {
        LogFile log = log(file, hadoop);
        try {
            return log.format() == LogFile.Format.PARQUET ? ofParquet(log, hadoop) : ofWorkbook(log, hadoop);
        } catch (IOException e) {
            throw WorkbookLogs.refusal(log, 0, e);
        }
    }

    private static LogFile log(String file, Configuration hadoop) {
        try {
            Path path = new Path(file);
            FileStatus status = path.getFileSystem(hadoop).getFileStatus(path);
            LogFile.Format format =
                    file.toLowerCase(Locale.ROOT).endsWith(".parquet") ? LogFile.Format.PARQUET : LogFile.Format.XLSX;
            return new LogFile(
                    status.getPath().toString(),
                    file,
                    status.getLen(),
                    status.getModificationTime(),
                    format,
                    null,
                    false,
                    Layout.CANONICAL);
        } catch (IOException e) {
            throw new RefusedInput(
                    "a file cannot be read",
                    file,
                    e.getMessage(),
                    "a readable file",
                    "check the path and its permissions");
        }
    }

    /** The first sheet with a header and rows, and all others that have the same header. */
    private static SampleReader.Cut ofWorkbook(LogFile file, Configuration hadoop) throws IOException {
        List<String> headers = null;
        List<List<String>> rows = new ArrayList<>();
        List<String> leftOut = new ArrayList<>();
        boolean whole = true;
        try (Workbook workbook = WorkbookLogs.open(file, hadoop)) {
            for (String title : workbook.sheets()) {
                try (SheetRows sheet = workbook.rows(title)) {
                    SheetHeader header = header(sheet);
                    boolean fits = header != null && (headers == null || headers.equals(header.names()));
                    int before = rows.size();
                    if (fits) {
                        whole &= read(sheet, header, rows);
                    }
                    if (rows.size() > before) {
                        headers = header.names();
                    } else {
                        leftOut.add(title);
                    }
                }
            }
        }
        if (headers == null) {
            throw new RefusedInput(
                    "no table with a header",
                    file.name(),
                    null,
                    "a sheet with three or more column names in one row, and under it rows of values",
                    "write one row per wheel with the visit's columns repeated, under one row of names");
        }
        return new SampleReader.Cut(
                new Sample(headers, rows, whole), LogFile.Format.XLSX, null, null, List.copyOf(leftOut));
    }

    /** A title has one cell or two; the first row of three different texts and no other value is a header. */
    private static SheetHeader header(SheetRows sheet) throws IOException {
        SheetRow row = sheet.next();
        for (int seen = 0; row != null && seen < SheetHeader.MOST_TITLES; seen++, row = sheet.next()) {
            List<Cell> cells = row.cells().stream().filter(c -> c != null).toList();
            SheetHeader header = SheetHeader.of(row);
            if (cells.size() >= LEAST_COLUMNS
                    && cells.stream().allMatch(c -> c.kind() == Cell.Kind.TEXT)
                    && new HashSet<>(header.names()).size() == cells.size()) {
                return header;
            }
        }
        return null;
    }

    /** @return false when rows are left */
    private static boolean read(SheetRows sheet, SheetHeader header, List<List<String>> rows) throws IOException {
        for (SheetRow row = sheet.next(); row != null; row = sheet.next()) {
            if (rows.size() == SampleReader.MOST_ROWS) {
                return false;
            }
            List<String> texts = new ArrayList<>();
            for (int column : header.columns()) {
                texts.add(row.cell(column) == null ? "" : row.cell(column).text());
            }
            if (!texts.stream().allMatch(String::isBlank)) {
                rows.add(texts);
            }
        }
        return true;
    }

    private static SampleReader.Cut ofParquet(LogFile file, Configuration hadoop) throws IOException {
        try (ParquetRecords records = ParquetRecords.open(LogSlice.whole(file), hadoop)) {
            List<Type> columns = records.schema().getFields();
            if (columns.stream().anyMatch(c -> !c.isPrimitive() || c.isRepetition(Type.Repetition.REPEATED))) {
                throw new RefusedInput(
                        "not a table",
                        file.name(),
                        "columns of lists or groups",
                        "one wheel per record, in columns of single values",
                        "nested files are read in the canonical form only (docs/visit-log.md)");
            }
            List<List<String>> rows = new ArrayList<>();
            Group record = records.next(0);
            for (; record != null && rows.size() < SampleReader.MOST_ROWS; record = records.next(rows.size())) {
                List<String> texts = new ArrayList<>();
                for (int i = 0; i < columns.size(); i++) {
                    texts.add(
                            record.getFieldRepetitionCount(i) == 0
                                    ? ""
                                    : ParquetValues.of(
                                                    record, i, 0, columns.get(i).asPrimitiveType())
                                            .text());
                }
                rows.add(texts);
            }
            if (rows.isEmpty()) {
                throw SampleReader.withoutRows(file.name());
            }
            List<String> names = columns.stream().map(Type::getName).toList();
            return new SampleReader.Cut(
                    new Sample(names, rows, record == null), LogFile.Format.PARQUET, null, null, List.of());
        }
    }
}
