package sensorrounds.ingest;

import java.io.Closeable;
import java.io.IOException;
import java.util.Map;
import sensorrounds.intake.Note;
import sensorrounds.intake.ParsedRow;

/** The rows of one file, read one at a time. One implementation per file format. */
interface RowSource extends Closeable {
    /** @return the next row, or null after the last */
    ParsedRow next() throws IOException;

    /** Line of the row returned last. */
    long line();

    /** Rows per note so far. */
    Map<Note, Long> notes();
}
