package sensorrounds.tables;

import java.io.Serializable;
import sensorrounds.intake.Duplicate;
import sensorrounds.intake.FileCount;
import sensorrounds.intake.ParsedRow;
import sensorrounds.intake.Rejection;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.Source;

/**
 * One row of the table of log rows: what became of one row of a log, or the count of one file. Exactly one of the last four
 * is given, the one the outcome names.
 */
public record LogRow(Outcome outcome, LoggedWheel accepted, Rejection quarantined, Duplicate duplicate, FileCount file)
        implements Serializable {
    /** What the row stands for. */
    public enum Outcome {
        ACCEPTED("accepted"),
        QUARANTINED("quarantined"),
        DUPLICATE("duplicate"),
        FILE("file");

        private final String word;

        Outcome(String word) {
            this.word = word;
        }

        /** The word stored. */
        public String word() {
            return word;
        }
    }

    public static LogRow of(LoggedWheel row) {
        return new LogRow(Outcome.ACCEPTED, row, null, null, null);
    }

    public static LogRow of(Rejection rejection) {
        return new LogRow(Outcome.QUARANTINED, null, rejection, null, null);
    }

    public static LogRow of(Duplicate duplicate) {
        return new LogRow(Outcome.DUPLICATE, null, null, duplicate, null);
    }

    public static LogRow of(FileCount file) {
        return new LogRow(Outcome.FILE, null, null, null, file);
    }

    public static LogRow of(ParsedRow row) {
        return row instanceof Rejection rejection ? of(rejection) : of(((ParsedRow.Accepted) row).row());
    }

    /** The row of the log that was understood; null in quarantine and for a file. */
    public LoggedWheel understood() {
        return accepted != null ? accepted : duplicate == null ? null : duplicate.row();
    }

    /** Where it stands; for a file its name and line 0. */
    public Source source() {
        return switch (outcome) {
            case ACCEPTED, DUPLICATE -> understood().source();
            case QUARANTINED -> quarantined.source();
            case FILE -> new Source(file.file(), 0);
        };
    }
}
