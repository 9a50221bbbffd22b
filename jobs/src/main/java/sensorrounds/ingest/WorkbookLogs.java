package sensorrounds.ingest;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.apache.hadoop.conf.Configuration;
import sensorrounds.workbook.Workbook;
import sensorrounds.workbook.WorkbookProblem;

/** The sheets of a workbook as logs. */
final class WorkbookLogs {
    private WorkbookLogs() {}

    /**
     * All sheets, those that are no log too: their rows are counted and left out, so that nothing is passed over unseen.
     *
     * @param asLog what a sheet of this name is
     * @throws RefusedInput for a workbook that cannot be read or of which no sheet is a log
     */
    static List<LogFile> sheets(LogFile workbook, Function<String, LogFile> asLog, Configuration hadoop) {
        try (Workbook open = open(workbook, hadoop)) {
            List<LogFile> sheets = new ArrayList<>();
            boolean anyLog = false;
            for (String title : open.sheets()) {
                LogFile sheet = asLog.apply(title);
                sheets.add(sheet);
                // Reading the header refuses a log that cannot be read.
                anyLog |= SheetLog.isLog(sheet, open);
            }
            if (!anyLog) {
                throw new RefusedInput(
                        "not a visit log",
                        workbook.name(),
                        "sheets " + UnknownNames.shown(open.sheets()),
                        "in one of the first " + SheetHeader.MOST_TITLES
                                + " rows of a sheet a header with three names of a log or more, as in"
                                + " docs/visit-log.md or in a layout",
                        "move the file out of the folder of logs, or map its columns in a layout in layouts/");
            }
            return sheets;
        } catch (IOException e) {
            throw refusal(workbook, 0, e);
        }
    }

    /** As for files: a name with a dot or an underscore before it is left out. */
    static boolean isPassedOver(String title) {
        return title.startsWith(".") || title.startsWith("_");
    }

    static Workbook open(LogFile file, Configuration hadoop) throws IOException {
        byte[] bytes = LogStreams.bytes(file, hadoop);
        try {
            return Workbook.open(bytes);
        } catch (IOException e) {
            throw refusal(file, 0, e);
        }
    }

    /** @param line row read last; 0 before the first */
    static RefusedInput refusal(LogFile file, long line, IOException cause) {
        return cause instanceof WorkbookProblem problem
                ? new RefusedInput(
                        problem.what(),
                        file.name() + (line > 0 ? ", after row " + line : ""),
                        problem.found(),
                        problem.expected(),
                        problem.wayOut())
                : LogStreams.unreadable(file, line, cause);
    }
}
