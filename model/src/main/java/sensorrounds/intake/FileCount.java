package sensorrounds.intake;

import java.io.Serializable;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;

/**
 * What the reader of one file counted while reading, apart from what became of the rows; the two must agree.
 *
 * @param file name as in {@link sensorrounds.visit.Source}
 * @param rows rows in
 * @param lines lines read, blank ones and the header included
 * @param bytes size of the file as stored
 * @param format {@code csv} or {@code jsonl}
 * @param layout name of the layout applied; null for the canonical form
 * @param notes rows per note
 */
public record FileCount(
        String file, long rows, long lines, long bytes, String format, String layout, Map<Note, Long> notes)
        implements Serializable {
    public FileCount {
        Map<Note, Long> ordered = new EnumMap<>(Note.class);
        ordered.putAll(notes);
        notes = Collections.unmodifiableMap(ordered);
    }
}
