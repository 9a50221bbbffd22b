package sensorrounds.workbook;

import java.io.IOException;

/** A file that cannot be read as a workbook, with what would have been right and the way out. */
public final class WorkbookProblem extends IOException {
    private static final long serialVersionUID = 1L;

    private final String what;
    private final String found;
    private final String expected;
    private final String wayOut;

    WorkbookProblem(String what, String found, String expected, String wayOut) {
        super(what + (found == null ? "" : ": " + found));
        this.what = what;
        this.found = found;
        this.expected = expected;
        this.wayOut = wayOut;
    }

    static WorkbookProblem damaged(String found) {
        return new WorkbookProblem(
                "a workbook that is cut short or damaged",
                found,
                "a whole .xlsx file",
                "copy it again, or open it with a spreadsheet program and save it anew");
    }

    public String what() {
        return what;
    }

    /** What was found; null when there is nothing to show. */
    public String found() {
        return found;
    }

    public String expected() {
        return expected;
    }

    public String wayOut() {
        return wayOut;
    }
}
