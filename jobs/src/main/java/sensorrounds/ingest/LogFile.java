package sensorrounds.ingest;

import java.io.Serializable;
import sensorrounds.intake.Layout;

/**
 * One file of visit logs, found and recognised; of a workbook, one of its sheets.
 *
 * @param uri where it is
 * @param name how it is called in sources and messages: its path below the data folder, and for a sheet {@code #} and the
 *     sheet's name
 * @param bytes size as stored
 * @param modified when it was last written, milliseconds by the clock of its file system
 * @param format form of its lines
 * @param sheet name of the sheet of a workbook; null for other files
 * @param gzipped true when it is compressed
 * @param layout the layout that applies; {@link Layout#CANONICAL} when none does
 */
public record LogFile(
        String uri, String name, long bytes, long modified, Format format, String sheet, boolean gzipped, Layout layout)
        implements Serializable {
    /** Stands between the name of a workbook and that of its sheet. */
    static final String SHEET_MARK = "#";

    /** Form of the lines of a log. */
    public enum Format {
        JSON_LINES("jsonl"),
        CSV("csv"),
        XLSX("xlsx"),
        PARQUET("parquet");

        private final String word;

        Format(String word) {
            this.word = word;
        }

        /** The ending of the file's name. */
        public String word() {
            return word;
        }
    }

    /** The sheet of this name. */
    LogFile sheet(String title) {
        return new LogFile(uri, name + SHEET_MARK + title, bytes, modified, format, title, gzipped, layout);
    }

    LogFile with(Layout other) {
        return new LogFile(uri, name, bytes, modified, format, sheet, gzipped, other);
    }
}
