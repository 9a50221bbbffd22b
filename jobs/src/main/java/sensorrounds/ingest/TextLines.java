package sensorrounds.ingest;

import java.io.IOException;
import java.io.Reader;

/** Lines of a text one after the other, counted, never longer than a limit: a file without line ends must not fill the memory. */
final class TextLines {
    /** Longest line, characters. A visit with all its wheels is a few thousand. */
    static final int LONGEST = 8 << 20;

    private final Reader in;
    private final String file;
    private final char[] buffer = new char[1 << 15];
    private int at;
    private int end;
    private long line;

    TextLines(Reader in, String file) {
        this(in, file, 0);
    }

    /** @param linesBefore lines of the file before the text */
    TextLines(Reader in, String file, long linesBefore) {
        this.in = in;
        this.file = file;
        this.line = linesBefore;
    }

    /** Number of the line returned last, from 1. */
    long line() {
        return line;
    }

    /** @return the next line without its end, or null after the last */
    String next() throws IOException {
        StringBuilder parts = null;
        while (true) {
            if (at == end && !fill()) {
                if (parts == null) {
                    return null;
                }
                line++;
                return finish(parts.toString());
            }
            int lineEnd = at;
            while (lineEnd < end && buffer[lineEnd] != '\n') {
                lineEnd++;
            }
            if (lineEnd < end) {
                String text = new String(buffer, at, lineEnd - at);
                at = lineEnd + 1;
                line++;
                return finish(parts == null ? text : parts.append(text).toString());
            }
            parts = parts == null ? new StringBuilder() : parts;
            parts.append(buffer, at, end - at);
            at = end;
            if (parts.length() > LONGEST) {
                throw new RefusedInput(
                        "a line is too long to be a visit",
                        file + ", line " + (line + 1),
                        "more than " + LONGEST + " characters",
                        "one visit per line",
                        "write each visit on a line of its own");
            }
        }
    }

    private String finish(String text) {
        String whole = text.endsWith("\r") ? text.substring(0, text.length() - 1) : text;
        return line == 1 && whole.startsWith("\uFEFF") ? whole.substring(1) : whole;
    }

    private boolean fill() throws IOException {
        at = 0;
        end = Math.max(0, in.read(buffer, 0, buffer.length));
        return end > 0;
    }
}
