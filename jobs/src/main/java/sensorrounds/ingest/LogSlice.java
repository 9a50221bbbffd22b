package sensorrounds.ingest;

import java.io.Serializable;

/**
 * The part of a file that one task reads: whole lines, with the number of lines before it, so that every row knows its line.
 *
 * @param offset first byte, the beginning of a line
 * @param linesBefore lines of the file before that byte
 */
public record LogSlice(LogFile file, long offset, long length, long linesBefore) implements Serializable {
    public static LogSlice whole(LogFile file) {
        return new LogSlice(file, 0, file.bytes(), 0);
    }

    boolean isWhole() {
        return offset == 0 && length == file.bytes();
    }

    boolean isLast() {
        return offset + length == file.bytes();
    }
}
