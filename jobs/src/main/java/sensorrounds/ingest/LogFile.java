package sensorrounds.ingest;

import java.io.Serializable;
import sensorrounds.intake.Layout;

/**
 * One file of visit logs, found and recognised.
 *
 * @param uri where it is
 * @param name how it is called in sources and messages: its path below the data folder
 * @param bytes size as stored
 * @param modified when it was last written, milliseconds by the clock of its file system
 * @param format form of its lines
 * @param gzipped true when it is compressed
 * @param layout the layout that applies; {@link Layout#CANONICAL} when none does
 */
public record LogFile(String uri, String name, long bytes, long modified, Format format, boolean gzipped, Layout layout)
        implements Serializable {
    /** Form of the lines of a log. */
    public enum Format {
        JSON_LINES("jsonl"),
        CSV("csv");

        private final String word;

        Format(String word) {
            this.word = word;
        }

        /** The ending of the file's name. */
        public String word() {
            return word;
        }
    }
}
