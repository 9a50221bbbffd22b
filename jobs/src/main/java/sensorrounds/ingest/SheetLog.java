package sensorrounds.ingest;

import java.io.IOException;
import java.util.Arrays;
import org.apache.hadoop.conf.Configuration;
import sensorrounds.intake.FieldProblem;
import sensorrounds.intake.IntakeCounts;
import sensorrounds.intake.Note;
import sensorrounds.intake.ParsedRow;
import sensorrounds.intake.RejectionRule;
import sensorrounds.intake.VisitParser;
import sensorrounds.workbook.Cell;
import sensorrounds.workbook.SheetRow;
import sensorrounds.workbook.SheetRows;
import sensorrounds.workbook.Workbook;

/**
 * The rows of one sheet of a workbook: one per row below its header that is not blank. Of a sheet that is no visit log the
 * rows are counted and left out.
 */
final class SheetLog implements RowSource {
    private final LogFile file;
    private final Workbook workbook;
    private final VisitParser parser;
    private SheetRows rows;
    private SheetHeader header;
    private int[] headerColumn = {};
    private TypedRow row;
    private long line;

    private SheetLog(LogFile file, Workbook workbook) {
        this.file = file;
        this.workbook = workbook;
        this.parser = new VisitParser(file.layout());
    }

    /** @throws RefusedInput for a workbook that cannot be read, or whose header names unknown columns */
    static SheetLog open(LogFile file, Configuration hadoop) throws IOException {
        return open(file, WorkbookLogs.open(file, hadoop));
    }

    static SheetLog open(LogFile file, Workbook workbook) throws IOException {
        SheetLog log = new SheetLog(file, workbook);
        try {
            log.begin();
            return log;
        } catch (IOException e) {
            log.close();
            throw WorkbookLogs.refusal(file, 0, e);
        } catch (RefusedInput e) {
            log.close();
            throw e;
        }
    }

    private void begin() throws IOException {
        rows = workbook.rows(file.sheet());
        header = header(file, rows);
        if (header == null) {
            rows.close();
            rows = workbook.rows(file.sheet());
            return;
        }
        line = header.line();
        row = new TypedRow(file, columns(file, header));
        headerColumn = new int[header.columns().get(header.columns().size() - 1) + 1];
        Arrays.fill(headerColumn, -1);
        for (int i = 0; i < header.columns().size(); i++) {
            headerColumn[header.columns().get(i)] = i;
        }
    }

    /** False for a sheet whose rows are left out. @throws RefusedInput for a log whose header cannot be read */
    static boolean isLog(LogFile sheet, Workbook workbook) throws IOException {
        try (SheetRows rows = workbook.firstRows(sheet.sheet())) {
            SheetHeader header = header(sheet, rows);
            if (header != null) {
                columns(sheet, header);
            }
            return header != null;
        }
    }

    private static SheetHeader header(LogFile file, SheetRows rows) throws IOException {
        return WorkbookLogs.isPassedOver(file.sheet()) ? null : SheetHeader.find(rows, file.layout());
    }

    private static CsvHeader columns(LogFile file, SheetHeader header) {
        return CsvHeader.of(header.names(), file, file.name() + ", row " + header.line());
    }

    @Override
    public ParsedRow next() throws IOException {
        try {
            for (SheetRow next = rows.next(); next != null; next = rows.next()) {
                line = next.line();
                if (header == null) {
                    parser.counts().add(Note.SHEET_LEFT_OUT, 1);
                } else if (fill(next)) {
                    return parser.row(row);
                }
            }
            return null;
        } catch (IOException e) {
            throw WorkbookLogs.refusal(file, line, e);
        }
    }

    /** @return false for a row with blanks only */
    private boolean fill(SheetRow next) {
        row.begin(next.line());
        for (int i = 0; i < next.cells().size(); i++) {
            Cell cell = next.cell(i);
            int column = i < headerColumn.length ? headerColumn[i] : -1;
            if (column >= 0) {
                row.set(column, cell);
            } else if (cell != null) {
                row.wrong(new FieldProblem(
                        RejectionRule.NO_HEADER,
                        null,
                        cell.text(),
                        "no value in column " + letters(i) + ", which has no name"));
            }
        }
        boolean any = !row.isBlank();
        if (any && next.merged() > 0) {
            parser.counts().add(Note.MERGED_CELLS, 1);
        }
        return any;
    }

    /** A to Z, AA and on, as spreadsheet programs show columns. */
    private static String letters(int column) {
        String last = String.valueOf((char) ('A' + column % 26));
        return column < 26 ? last : letters(column / 26 - 1) + last;
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
        if (rows != null) {
            rows.close();
        }
        workbook.close();
    }
}
