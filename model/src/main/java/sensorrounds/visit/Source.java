package sensorrounds.visit;

import java.io.Serializable;

/**
 * Where a row of a log came from.
 *
 * @param file path as it was given, relative to the folder of logs
 * @param line line of the row in that file, from 1
 */
public record Source(String file, long line) implements Serializable, Comparable<Source> {
    @Override
    public int compareTo(Source o) {
        int byFile = file.compareTo(o.file);
        return byFile != 0 ? byFile : Long.compare(line, o.line);
    }

    @Override
    public String toString() {
        return file + ":" + line;
    }
}
