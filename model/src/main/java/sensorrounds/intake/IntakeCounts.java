package sensorrounds.intake;

import java.util.EnumMap;
import java.util.Map;

/** Rows per {@link Note}, for one file. A row counts once per note, however many of its fields earned it. */
public final class IntakeCounts {
    private final long[] rows = new long[Note.values().length];
    private final long[] evidence = new long[Evidence.values().length];

    /** Counts what the reader of a file format found, and no single record says. */
    public void add(Note note, long number) {
        rows[note.ordinal()] += number;
    }

    void add(long bits) {
        for (long left = bits; left != 0; left &= left - 1) {
            rows[Long.numberOfTrailingZeros(left)]++;
        }
    }

    void addEvidence(long bits) {
        for (long left = bits; left != 0; left &= left - 1) {
            evidence[Long.numberOfTrailingZeros(left)]++;
        }
    }

    /** Rows that say something about the form of their file; counts above zero. */
    public Map<Evidence, Long> evidence() {
        Map<Evidence, Long> map = new EnumMap<>(Evidence.class);
        for (Evidence kind : Evidence.values()) {
            if (evidence[kind.ordinal()] > 0) {
                map.put(kind, evidence[kind.ordinal()]);
            }
        }
        return map;
    }

    /** Counts above zero, in the order of the notes. */
    public Map<Note, Long> asMap() {
        Map<Note, Long> map = new EnumMap<>(Note.class);
        for (Note note : Note.values()) {
            if (rows[note.ordinal()] > 0) {
                map.put(note, rows[note.ordinal()]);
            }
        }
        return map;
    }
}
