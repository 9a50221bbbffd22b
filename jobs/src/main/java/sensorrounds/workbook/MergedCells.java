package sensorrounds.workbook;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;

/**
 * Cells merged over several rows. A file holds their value in the first row only; people read it in all of them. Over
 * columns nothing is carried: a pressure that runs into the next column is no second pressure.
 */
final class MergedCells {
    private static final int MOST = 1_000_000;
    private static final byte[] MARK = "mergeCell".getBytes(StandardCharsets.US_ASCII);

    private final Map<Integer, List<Range>> byFirstRow = new HashMap<>();
    private final List<Range> open = new ArrayList<>();

    private static final class Range {
        private final int column;
        private final int lastRow;
        private Cell value;

        Range(int column, int lastRow) {
            this.column = column;
            this.lastRow = lastRow;
        }
    }

    /** Whether the part names merged cells, which stand behind all its rows. */
    static boolean areIn(InputStream sheet) throws IOException {
        byte[] buffer = new byte[1 << 16];
        int met = 0;
        for (int size = sheet.read(buffer); size >= 0; size = sheet.read(buffer)) {
            for (int i = 0; i < size; i++) {
                // No beginning of the mark comes again inside it but its first letter.
                met = buffer[i] == MARK[met] ? met + 1 : buffer[i] == MARK[0] ? 1 : 0;
                if (met == MARK.length) {
                    return true;
                }
            }
        }
        return false;
    }

    void read(Xml sheet) throws IOException {
        for (int ranges = 0; sheet.next(); ) {
            if (sheet.starts("mergeCell")) {
                add(sheet.attribute("ref"));
                if (++ranges > MOST) {
                    throw WorkbookProblem.damaged("more than " + MOST + " merged cells");
                }
            }
        }
    }

    private void add(String range) throws IOException {
        String[] corners = range == null ? new String[0] : range.split(":");
        if (corners.length != 2) {
            return;
        }
        CellPlace first = CellPlace.of(corners[0]);
        CellPlace last = CellPlace.of(corners[1]);
        if (last.row() > first.row()) {
            byFirstRow.computeIfAbsent(first.row(), r -> new ArrayList<>(2)).add(new Range(first.column(), last.row()));
        }
    }

    /** Fills the cells of the row that are merged with one above. @return how many */
    int fill(int row, List<Cell> cells) {
        int filled = 0;
        for (Iterator<Range> ranges = open.iterator(); ranges.hasNext(); ) {
            Range range = ranges.next();
            if (range.lastRow < row) {
                ranges.remove();
                continue;
            }
            while (cells.size() <= range.column) {
                cells.add(null);
            }
            if (cells.get(range.column) == null && range.value != null) {
                cells.set(range.column, range.value);
                filled++;
            }
        }
        return filled;
    }

    /** Takes the values of the merged cells that begin in this row. */
    void begin(int row, List<Cell> cells) {
        for (Range range : byFirstRow.getOrDefault(row, List.of())) {
            range.value = range.column < cells.size() ? cells.get(range.column) : null;
            open.add(range);
        }
    }
}
