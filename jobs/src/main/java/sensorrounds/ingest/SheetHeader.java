package sensorrounds.ingest;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import sensorrounds.intake.Layout;
import sensorrounds.workbook.Cell;
import sensorrounds.workbook.SheetRow;
import sensorrounds.workbook.SheetRows;

/**
 * The header of a sheet, which may stand below a title, and which of its columns have a name.
 *
 * @param line row of the header
 * @param names names of the columns that have one, in their order
 * @param columns for each of them its column in the sheet, from 0
 */
record SheetHeader(int line, List<String> names, List<Integer> columns) {
    /** Rows that are looked at for a header, blank ones left out. */
    static final int MOST_TITLES = 20;
    /** A log has three keys, or a layout with constants in their place; a row of prose may well hold one name of a field. */
    private static final int KNOWN_COLUMNS = 3;

    /** The first row that names columns of a log. @return null when none of the first rows does */
    static SheetHeader find(SheetRows rows, Layout layout) throws IOException {
        SheetRow row = rows.next();
        for (int seen = 0; row != null && seen < MOST_TITLES; seen++, row = rows.next()) {
            SheetHeader header = of(row);
            if (header.isOfLog(layout)) {
                return header;
            }
        }
        return null;
    }

    static SheetHeader of(SheetRow row) {
        List<String> names = new ArrayList<>();
        List<Integer> columns = new ArrayList<>();
        for (int i = 0; i < row.cells().size(); i++) {
            Cell cell = row.cell(i);
            if (cell != null) {
                names.add(cell.text().strip());
                columns.add(i);
            }
        }
        return new SheetHeader(row.line(), names, columns);
    }

    private boolean isOfLog(Layout layout) {
        return names.stream()
                        .filter(name -> CsvHeader.field(name, layout) != null)
                        .count()
                >= KNOWN_COLUMNS;
    }
}
