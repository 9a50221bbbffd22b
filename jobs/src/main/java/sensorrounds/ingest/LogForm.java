package sensorrounds.ingest;

import java.util.Locale;
import java.util.Set;

/**
 * The form of a log, told by the ending of its name.
 *
 * @param gzipped true when it is compressed as a whole
 */
record LogForm(LogFile.Format format, boolean gzipped) {
    static final String ENDINGS = ".jsonl, .jsonl.gz, .csv, .csv.gz, .xlsx or .parquet";

    private static final String GZIP = ".gz";
    private static final Set<String> OTHER_SHEETS =
            Set.of("xls", "xlsb", "xlt", "xltx", "ods", "fods", "numbers", "sxc");

    /** @throws RefusedInput for a name that is none of a log */
    static LogForm of(String name) {
        String lower = name.toLowerCase(Locale.ROOT);
        boolean gzipped = lower.endsWith(GZIP);
        String plain = gzipped ? lower.substring(0, lower.length() - GZIP.length()) : lower;
        String ending = plain.substring(plain.lastIndexOf('.') + 1);
        LogFile.Format format = switch (ending) {
            case "jsonl" -> LogFile.Format.JSON_LINES;
            case "csv" -> LogFile.Format.CSV;
            // The same with macros, which are not looked at.
            case "xlsx", "xlsm" -> LogFile.Format.XLSX;
            case "parquet" -> LogFile.Format.PARQUET;
            default -> null;
        };
        if (format == null) {
            throw OTHER_SHEETS.contains(ending)
                    ? new RefusedInput(
                            "a spreadsheet of a form that is not read",
                            name,
                            "." + ending,
                            "the form .xlsx",
                            "open it with a spreadsheet program and save it as .xlsx, or export the sheet as CSV")
                    : new RefusedInput(
                            "not a visit log",
                            name,
                            null,
                            "a name ending in " + ENDINGS,
                            "move the file out of the folder of logs, or put an underscore before its name");
        }
        if (gzipped && (format == LogFile.Format.XLSX || format == LogFile.Format.PARQUET)) {
            throw new RefusedInput(
                    "a workbook or Parquet file inside a gzip file",
                    name,
                    null,
                    "the file itself, which is compressed already",
                    "unpack it with gunzip");
        }
        return new LogForm(format, gzipped);
    }

    /** A file a spreadsheet program lays beside a workbook while it is open. */
    static boolean isLock(String fileName) {
        return fileName.startsWith("~$");
    }
}
