package sensorrounds.ingest;

import static org.apache.spark.sql.functions.col;
import static org.apache.spark.sql.functions.count;
import static org.apache.spark.sql.functions.lit;
import static org.apache.spark.sql.functions.max;
import static org.apache.spark.sql.functions.min;
import static org.apache.spark.sql.functions.struct;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import sensorrounds.intake.Duplicate;
import sensorrounds.intake.FileCount;
import sensorrounds.intake.Note;
import sensorrounds.intake.RejectionRule;
import sensorrounds.tables.LogRow;
import sensorrounds.tables.LogRows;
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
    }

    /**
     * One file.
     *
     * @param count what its reader counted; null when the reader's own row is missing
     */
    public record FileResult(String file, FileCount count, long accepted, long quarantined, long duplicates) {
        public long rowsOut() {
            return accepted + quarantined + duplicates;
        }
    }

    /**
     * Rows in quarantine for one rule and field.
     *
     * @param field null when the whole row is at fault
     * @param examples the first of them in each of up to {@value #MOST_EXAMPLES} files
     */
    public record Reason(RejectionRule rule, String field, long rows, String remedy, List<Example> examples) {
        /** Examples shown per reason. */
        public static final int MOST_EXAMPLES = 3;
    }

    /** One row in quarantine. */
    public record Example(Source source, String rawValue, String expected) {}

    public long rowsIn() {
        return files.stream()
                .mapToLong(f -> f.count() == null ? 0 : f.count().rows())
                .sum();
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

    /** Counts a table of log rows in one pass; what comes to the driver grows with files and reasons, not with rows. */
    static IngestSummary of(Dataset<Row> rows) {
        List<Row> groups = rows.groupBy(LogRows.SOURCE_FILE, LogRows.OUTCOME, LogRows.RULE, LogRows.FIELD)
                .agg(
                        count(lit(1)),
                        min(struct(
                                col(LogRows.SOURCE_LINE),
                                col(LogRows.RAW_VALUE),
                                col(LogRows.EXPECTED),
                                col(LogRows.REMEDY))),
                        max(LogRows.FILE_ROWS),
                        max(LogRows.FILE_LINES),
                        max(LogRows.FILE_BYTES),
                        max(LogRows.FILE_FORMAT),
                        max(LogRows.FILE_LAYOUT),
                        max(LogRows.FILE_NOTES))
                .collectAsList();
        Tally tally = new Tally();
        groups.forEach(tally::add);
        return tally.summary();
    }

    /** Puts the groups together. */
    private static final class Tally {
        private static final int COUNT = 4;
        private static final int EXAMPLE = 5;
        private static final int FILE = 6;

        private final Map<String, long[]> rows = new TreeMap<>();
        private final Map<String, FileCount> counts = new TreeMap<>();
        private final Map<String, Reason> reasons = new TreeMap<>();
        private final Map<Duplicate.Rule, Long> duplicates = new EnumMap<>(Duplicate.Rule.class);

        void add(Row group) {
            String file = group.getString(0);
            long number = group.getLong(COUNT);
            LogRow.Outcome outcome = LogRows.outcome(group.getString(1));
            long[] ofFile = rows.computeIfAbsent(file, f -> new long[LogRow.Outcome.values().length]);
            switch (outcome) {
                case FILE ->
                    counts.put(
                            file,
                            new FileCount(
                                    file,
                                    group.getLong(FILE),
                                    group.getLong(FILE + 1),
                                    group.getLong(FILE + 2),
                                    group.getString(FILE + 3),
                                    group.getString(FILE + 4),
                                    LogRows.notes(group.getString(FILE + 5))));
                case QUARANTINED -> reason(file, group, number);
                case DUPLICATE -> duplicates.merge(Duplicate.Rule.valueOf(group.getString(2)), number, Long::sum);
                case ACCEPTED -> {
                    // Counted below like the others.
                }
            }
            ofFile[outcome.ordinal()] += number;
        }

        private void reason(String file, Row group, long number) {
            RejectionRule rule = RejectionRule.valueOf(group.getString(2));
            String field = group.getString(3);
            Row example = group.getStruct(EXAMPLE);
            List<Example> examples = List.of(
                    new Example(new Source(file, example.getLong(0)), example.getString(1), example.getString(2)));
            reasons.merge(
                    rule + " " + field, new Reason(rule, field, number, example.getString(3), examples), (a, b) -> {
                        List<Example> both = new ArrayList<>(a.examples());
                        both.addAll(b.examples());
                        both.sort(Comparator.comparing(Example::source));
                        return new Reason(
                                rule,
                                field,
                                a.rows() + b.rows(),
                                a.remedy(),
                                both.subList(0, Math.min(both.size(), Reason.MOST_EXAMPLES)));
                    });
        }

        IngestSummary summary() {
            List<FileResult> files = rows.entrySet().stream()
                    .map(e -> new FileResult(
                            e.getKey(),
                            counts.get(e.getKey()),
                            e.getValue()[LogRow.Outcome.ACCEPTED.ordinal()],
                            e.getValue()[LogRow.Outcome.QUARANTINED.ordinal()],
                            e.getValue()[LogRow.Outcome.DUPLICATE.ordinal()]))
                    .toList();
            List<Reason> ordered = reasons.values().stream()
                    .sorted(Comparator.comparingLong((Reason r) -> -r.rows())
                            .thenComparing(r -> r.rule() + " " + r.field()))
                    .toList();
            return new IngestSummary(files, ordered, duplicates);
        }
    }
}
