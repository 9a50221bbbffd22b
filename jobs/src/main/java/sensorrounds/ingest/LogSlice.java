package sensorrounds.ingest;

import java.io.Serializable;

/**
 * The part of a file that one task reads. For now always the whole file: line numbers come free that way, and technicians'
 * files are small.
 */
public record LogSlice(LogFile file, long offset, long length) implements Serializable {
    public static LogSlice whole(LogFile file) {
        return new LogSlice(file, 0, file.bytes());
    }
}
