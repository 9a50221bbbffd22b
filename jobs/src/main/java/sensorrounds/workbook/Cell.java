package sensorrounds.workbook;

/**
 * One cell of a sheet that is not blank.
 *
 * @param text a text as written; a number with a decimal point, as far as a spreadsheet program keeps its digits; a day or
 *     time in ISO 8601; {@code true} or {@code false}; an error as it is shown, such as {@code #N/A}
 */
public record Cell(Kind kind, String text) {
    /** What a cell holds. */
    public enum Kind {
        TEXT,
        NUMBER,
        DAY,
        FLAG,
        ERROR
    }
}
