package sensorrounds.ingest;

import java.io.FilterReader;
import java.io.IOException;
import java.io.Reader;

/** Remembers the last character of a text that is read to its end. */
final class LastCharacter extends FilterReader {
    private int last = -1;

    LastCharacter(Reader in) {
        super(in);
    }

    @Override
    public int read() throws IOException {
        int c = in.read();
        last = c < 0 ? last : c;
        return c;
    }

    @Override
    public int read(char[] buffer, int offset, int length) throws IOException {
        int size = in.read(buffer, offset, length);
        if (size > 0) {
            last = buffer[offset + size - 1];
        }
        return size;
    }

    /** True when nothing was read, or what was read ends with its line. */
    boolean isLineEnd() {
        return last < 0 || last == '\n' || last == '\r';
    }
}
