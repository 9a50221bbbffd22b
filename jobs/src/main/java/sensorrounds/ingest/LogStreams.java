package sensorrounds.ingest;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.Charset;
import java.util.zip.GZIPInputStream;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FSDataInputStream;
import org.apache.hadoop.fs.Path;

/** Opens files wherever they lie, as text. */
final class LogStreams {
    private static final int BUFFER = 1 << 16;
    private static final int MOST_BYTES = 512 << 20;

    private LogStreams() {}

    /** Text of a log, from its first character; a byte order mark is left for the reader to see. */
    static Reader open(LogFile file, Configuration hadoop) throws IOException {
        return open(LogSlice.whole(file), hadoop);
    }

    /** Text of a part of a log. */
    static Reader open(LogSlice slice, Configuration hadoop) throws IOException {
        LogFile file = slice.file();
        InputStream raw = new ExactStream(open(file.uri(), slice.offset(), hadoop), slice);
        try {
            InputStream plain = file.gzipped() ? new GZIPInputStream(raw, BUFFER) : raw;
            return new InputStreamReader(plain, Charset.forName(file.layout().encoding()));
        } catch (IOException e) {
            raw.close();
            throw e;
        }
    }

    /** A file that can only be read as a whole. */
    static byte[] bytes(LogFile file, Configuration hadoop) throws IOException {
        if (file.bytes() > MOST_BYTES) {
            throw new RefusedInput(
                    "a file too large to be read as a whole",
                    file.name(),
                    file.bytes() + " bytes",
                    "at most " + MOST_BYTES + " bytes",
                    "split it, or export it as CSV");
        }
        try (InputStream in = new ExactStream(open(file.uri(), hadoop), LogSlice.whole(file))) {
            return in.readAllBytes();
        }
    }

    static InputStream open(String uri, Configuration hadoop) throws IOException {
        return open(uri, 0, hadoop);
    }

    static InputStream open(String uri, long offset, Configuration hadoop) throws IOException {
        Path path = new Path(uri);
        FSDataInputStream in = path.getFileSystem(hadoop).open(path, BUFFER);
        try {
            if (offset > 0) {
                in.seek(offset);
            }
            return in;
        } catch (IOException e) {
            in.close();
            throw e;
        }
    }

    /** The refusal for a file that cannot be read on from some line. */
    static RefusedInput unreadable(LogFile file, long line, IOException cause) {
        String where = file.name() + (line > 0 ? ", about line " + line : "");
        String reason = cause.getMessage() == null ? cause.getClass().getSimpleName() : cause.getMessage();
        return file.gzipped()
                ? new RefusedInput(
                        "a compressed log is cut short or damaged",
                        where,
                        reason,
                        "a whole gzip file",
                        "copy or export the file again; check it with gzip -t")
                : new RefusedInput(
                        "a log cannot be read", where, reason, "a readable file", "check the file and its permissions");
    }
}
