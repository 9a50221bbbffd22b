package sensorrounds.intake;

import java.io.Serializable;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;

/**
 * What the reader of one file counted while reading, apart from what became of the rows; the two must agree.
 *
 * @param file name as in {@link sensorrounds.visit.Source}
 * @param rows rows in
 * @param lines lines read, blank ones and the header included
 * @param bytes size of the file as stored
 * @param format {@code csv}, {@code jsonl}, {@code xlsx} or {@code parquet}
 * @param layout name of the layout applied; null for the canonical form
 * @param notes rows per note
 * @param evidence rows per kind of evidence about the form of the file
 */
public record FileCount(
        String file,
        long rows,
        long lines,
        long bytes,
        String format,
        String layout,
        Map<Note, Long> notes,
        Map<Evidence, Long> evidence)
        implements Serializable {
    public FileCount {
        Map<Evidence, Long> seen = new EnumMap<>(Evidence.class);
        seen.putAll(evidence);
        evidence = Collections.unmodifiableMap(seen);
        Map<Note, Long> ordered = new EnumMap<>(Note.class);
        ordered.putAll(notes);
        notes = Collections.unmodifiableMap(ordered);
    }

    /** The count of two parts of one file together. */
    public FileCount plus(FileCount other) {
        if (!file.equals(other.file)) {
            throw new IllegalArgumentException("counts of two files, " + file + " and " + other.file);
        }
        return new FileCount(
                file,
                rows + other.rows,
                Math.max(lines, other.lines),
                bytes,
                format,
                layout,
                sum(notes, other.notes),
                sum(evidence, other.evidence));
    }

    private static <K> Map<K, Long> sum(Map<K, Long> a, Map<K, Long> b) {
        Map<K, Long> sum = new HashMap<>(a);
        b.forEach((kind, count) -> sum.merge(kind, count, Long::sum));
        return sum;
    }
}
