package sensorrounds.ingest;

import static org.apache.spark.sql.functions.col;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import sensorrounds.ingest.IngestSummary.Example;
import sensorrounds.ingest.IngestSummary.FileResult;
import sensorrounds.ingest.IngestSummary.Reason;
import sensorrounds.intake.Duplicate;
import sensorrounds.intake.FileCount;
import sensorrounds.intake.Rejection;
import sensorrounds.tables.LogRow;
import sensorrounds.tables.LogRows;

/**
 * Counts of rows that can be taken over any parts of them and put together in any order. Its size grows with files and
 * reasons, not with rows.
 */
final class IngestTally implements Serializable {
    private static final long serialVersionUID = 1L;

    private final TreeMap<String, long[]> rows = new TreeMap<>();
    private final TreeMap<String, FileCount> counts = new TreeMap<>();
    private final TreeMap<String, Reason> reasons = new TreeMap<>();
    private final EnumMap<Duplicate.Rule, Long> duplicates = new EnumMap<>(Duplicate.Rule.class);

    /** Counts rows that are not stored. */
    static IngestTally of(JavaRDD<LogRow> rows) {
        IngestTally whole = new IngestTally();
        rows.mapPartitions(part -> {
                    IngestTally tally = new IngestTally();
                    part.forEachRemaining(tally::add);
                    return Stream.of(tally).iterator();
                })
                .collect()
                .forEach(whole::add);
        return whole;
    }

    /** Counts the stored table. Accepted rows, nearly all of them, are counted by their file column alone. */
    static IngestTally ofTable(SparkSession spark, String folder) {
        IngestTally tally = of(LogTable.read(spark, folder)
                .where(col(LogRows.OUTCOME).notEqual(LogRow.Outcome.ACCEPTED.word()))
                .javaRDD()
                .map(LogRows::decode));
        for (Row file : LogTable.read(spark, folder, LogRow.Outcome.ACCEPTED)
                .groupBy(LogRows.SOURCE_FILE)
                .count()
                .collectAsList()) {
            tally.add(file.getString(0), LogRow.Outcome.ACCEPTED, file.getLong(1));
        }
        return tally;
    }

    void add(LogRow row) {
        switch (row.outcome()) {
            case QUARANTINED -> add(reason(row.quarantined()));
            case DUPLICATE -> duplicates.merge(row.duplicate().rule(), 1L, Long::sum);
            case FILE -> counts.merge(row.file().file(), row.file(), FileCount::plus);
            default -> {
                // An accepted row is only counted, below like the others.
            }
        }
        add(row.source().file(), row.outcome(), 1);
    }

    void add(String file, LogRow.Outcome outcome, long number) {
        rows.computeIfAbsent(file, f -> new long[LogRow.Outcome.values().length])[outcome.ordinal()] += number;
    }

    private void add(IngestTally other) {
        other.rows.forEach((file, numbers) -> {
            for (LogRow.Outcome outcome : LogRow.Outcome.values()) {
                add(file, outcome, numbers[outcome.ordinal()]);
            }
        });
        other.counts.forEach((file, count) -> counts.merge(file, count, FileCount::plus));
        other.reasons.values().forEach(this::add);
        other.duplicates.forEach((rule, number) -> duplicates.merge(rule, number, Long::sum));
    }

    private static Reason reason(Rejection r) {
        return new Reason(
                r.rule(), r.field(), 1, r.remedy(), List.of(new Example(r.source(), r.rawValue(), r.expected())));
    }

    private void add(Reason reason) {
        reasons.merge(reason.rule() + " " + reason.field(), reason, IngestTally::sum);
    }

    private static Reason sum(Reason a, Reason b) {
        Example lastOfA = a.examples().get(a.examples().size() - 1);
        boolean full = a.examples().size() == Reason.MOST_EXAMPLES;
        List<Example> examples = a.examples();
        // Most rows come after the examples already found; they only count.
        if (!full || b.examples().get(0).source().compareTo(lastOfA.source()) < 0) {
            examples = new ArrayList<>(a.examples());
            examples.addAll(b.examples());
            examples.sort(Comparator.comparing(Example::source)
                    .thenComparing(Example::rawValue, Comparator.nullsFirst(Comparator.naturalOrder())));
            examples = List.copyOf(examples.subList(0, Math.min(examples.size(), Reason.MOST_EXAMPLES)));
        }
        return new Reason(a.rule(), a.field(), a.rows() + b.rows(), a.remedy(), examples);
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
        Map<Duplicate.Rule, Long> byRule = new EnumMap<>(duplicates);
        return new IngestSummary(files, ordered, byRule);
    }
}
