package sensorrounds.ingest;

import java.io.Serializable;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import sensorrounds.intake.Duplicate;
import sensorrounds.intake.FileCount;
import sensorrounds.intake.FileDoubt;
import sensorrounds.intake.Note;
import sensorrounds.intake.RejectionRule;
import sensorrounds.visit.Source;

/**
 * What became of the rows, per file and per reason.
 *
 * @param files ordered by name
 * @param quarantine ordered by count, the largest first
 * @param duplicates rows per rule
 */
public record IngestSummary(List<FileResult> files, List<Reason> quarantine, Map<Duplicate.Rule, Long> duplicates) {
    public IngestSummary {
        files = List.copyOf(files);
        quarantine = List.copyOf(quarantine);
        duplicates = Collections.unmodifiableMap(duplicates);
    }

    /**
     * One file.
     *
     * @param count what its reader counted; null when the reader's own row is missing
     */
    public record FileResult(String file, FileCount count, long accepted, long quarantined, long duplicates) {
        /** Rows of a sheet that is no visit log; they are no rows of a log, and not among the others. */
        public long leftOut() {
            return count == null ? 0 : count.notes().getOrDefault(Note.SHEET_LEFT_OUT, 0L);
        }

        public long rowsOut() {
            return accepted + quarantined + duplicates;
        }
    }

    /**
     * Rows in quarantine for one rule and field.
     *
     * @param field null when the whole row is at fault
     * @param examples the first {@value #MOST_EXAMPLES} of them by file and line
     */
    public record Reason(RejectionRule rule, String field, long rows, String remedy, List<Example> examples)
            implements Serializable {
        /** Examples shown per reason. */
        public static final int MOST_EXAMPLES = 3;
    }

    /** One row in quarantine. */
    public record Example(Source source, String rawValue, String expected) implements Serializable {}

    public long rowsIn() {
        return files.stream()
                .mapToLong(f -> f.count() == null ? 0 : f.count().rows())
                .sum();
    }

    /** Rows of sheets that are no visit log. */
    public long leftOut() {
        return files.stream().mapToLong(FileResult::leftOut).sum();
    }

    public long accepted() {
        return files.stream().mapToLong(FileResult::accepted).sum();
    }

    public long quarantined() {
        return files.stream().mapToLong(FileResult::quarantined).sum();
    }

    public long duplicateRows() {
        return files.stream().mapToLong(FileResult::duplicates).sum();
    }

    /** What is to be doubted about whole files, in their order. */
    public List<FileDoubt> fileDoubts() {
        return files.stream()
                .filter(f -> f.count() != null)
                .flatMap(f -> FileDoubt.of(f.count()).stream())
                .toList();
    }

    /** Rows per note over all files. */
    public Map<Note, Long> notes() {
        Map<Note, Long> all = new EnumMap<>(Note.class);
        files.forEach(f -> {
            if (f.count() != null) {
                f.count().notes().forEach((note, rows) -> all.merge(note, rows, Long::sum));
            }
        });
        return all;
    }
}
