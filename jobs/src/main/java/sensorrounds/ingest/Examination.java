package sensorrounds.ingest;

import java.util.List;
import sensorrounds.intake.FileDoubt;

/**
 * What came of looking at logs without storing them.
 *
 * @param doubts entries that would be used but can hardly be right, counted by kind
 */
public record Examination(IngestSummary summary, Doubts doubts) {
    /** Doubts counted by kind, and about whole files. */
    public static final class Doubts {
        private final DoubtTally tally;
        private final List<FileDoubt> files;

        Doubts(DoubtTally tally, List<FileDoubt> files) {
            this.tally = tally;
            this.files = List.copyOf(files);
        }

        List<DoubtTally.Group> groups() {
            return tally.groups();
        }

        List<FileDoubt> files() {
            return files;
        }
    }
}
