package sensorrounds.ingest;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;
import sensorrounds.tables.LogRow;

/** Puts the rows of a file into blocks as they come. */
final class Blocks implements Iterator<Block> {
    /** Rows in a block. A visit has fewer; a whole file repeating one header must not become one block. */
    private static final int MOST_ROWS = 64;

    private final Iterator<LogRow> rows;
    private final ByteWriter bytes = new ByteWriter();
    private final List<LogRow> together = new ArrayList<>();
    private LogRow ahead;

    Blocks(Iterator<LogRow> rows) {
        this.rows = rows;
        advance();
    }

    private void advance() {
        ahead = rows.hasNext() ? rows.next() : null;
    }

    @Override
    public boolean hasNext() {
        return ahead != null;
    }

    @Override
    public Block next() {
        if (ahead == null) {
            throw new NoSuchElementException("no more blocks");
        }
        together.clear();
        do {
            together.add(ahead);
            advance();
        } while (ahead != null
                && together.size() < MOST_ROWS
                && Block.together(together.get(together.size() - 1), ahead));
        return Block.of(together, bytes);
    }
}
