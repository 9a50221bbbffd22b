package sensorrounds.workbook;

import java.util.List;

/**
 * One row of a sheet that has a value of its own.
 *
 * @param line its number, from 1, as the spreadsheet program shows it
 * @param cells by column from A; null for a blank one
 * @param merged how many blank cells got the value of the merged cell they belong to
 */
public record SheetRow(int line, List<Cell> cells, int merged) {
    /** @return the cell, or null for a blank one */
    public Cell cell(int column) {
        return column < cells.size() ? cells.get(column) : null;
    }
}
