package sensorrounds.workbook;

import java.util.List;

/**
 * A sheet that is written: a line of headers, then a line a row.
 *
 * @param name on its tab; at most 31 characters, none of them \ / ? * [ ] :
 * @param fixed columns that stay in sight when the sheet is moved sideways
 */
public record SheetTable<T>(String name, int fixed, List<SheetColumn<T>> columns, List<T> rows) {
    public SheetTable {
        columns = List.copyOf(columns);
        rows = List.copyOf(rows);
    }
}
