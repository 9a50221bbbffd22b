package sensorrounds.workbook;

import java.io.IOException;

/**
 * Where a cell lies in its sheet.
 *
 * @param row from 1
 * @param column from 0
 */
record CellPlace(int row, int column) {
    /** Rows and columns of the largest sheet a spreadsheet program makes. */
    static final int MOST_ROWS = 1 << 20;

    static final int MOST_COLUMNS = 1 << 14;

    /** @param name letters and digits, such as B12 */
    static CellPlace of(String name) throws IOException {
        int column = 0;
        int row = 0;
        int letters = 0;
        for (int i = 0; i < name.length(); i++) {
            char c = name.charAt(i);
            if (c >= 'A' && c <= 'Z' && i == letters && column <= MOST_COLUMNS) {
                column = 26 * column + (c - 'A' + 1);
                letters++;
            } else if (c >= '0' && c <= '9' && row <= MOST_ROWS) {
                row = 10 * row + (c - '0');
            } else if (c != '$') {
                row = -1;
                break;
            }
        }
        if (row < 1 || row > MOST_ROWS || column < 1 || column > MOST_COLUMNS) {
            throw WorkbookProblem.damaged("a cell at " + name);
        }
        return new CellPlace(row, column - 1);
    }
}
