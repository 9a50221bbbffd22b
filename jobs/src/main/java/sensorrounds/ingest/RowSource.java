package sensorrounds.ingest;

import java.io.Closeable;
import java.io.IOException;
import sensorrounds.intake.IntakeCounts;
import sensorrounds.intake.ParsedRow;

/** The rows of one file, read one at a time. One implementation per file format. */
interface RowSource extends Closeable {
    /** @return the next row, or null after the last */
    ParsedRow next() throws IOException;

    /** Line of the row returned last. */
    long line();

    /** Notes and evidence so far. */
    IntakeCounts counts();
}
