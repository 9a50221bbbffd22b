package sensorrounds.ingest;

import java.io.IOException;
import java.io.InputStream;
import java.util.HexFormat;
import java.util.zip.CRC32;
import java.util.zip.CRC32C;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileChecksum;
import org.apache.hadoop.fs.Path;

/**
 * Tells whether a file still has the content it had. Not proof against forgery, only against mistakes: two independent
 * cyclic sums of 32 bits, or what the file system itself keeps.
 */
final class Checksums {
    private static final int BUFFER = 1 << 16;

    private Checksums() {}

    /** The file system's own sum where it keeps one, which costs no reading; else one of the whole content. */
    static String of(LogFile file, Configuration hadoop) {
        Path path = new Path(file.uri());
        try {
            FileChecksum kept = path.getFileSystem(hadoop).getFileChecksum(path);
            return kept == null
                    ? ofContent(file, hadoop)
                    : kept.getAlgorithmName() + ":" + HexFormat.of().formatHex(kept.getBytes());
        } catch (IOException e) {
            throw LogStreams.unreadable(file, 0, e);
        }
    }

    private static String ofContent(LogFile file, Configuration hadoop) throws IOException {
        CRC32 crc = new CRC32();
        CRC32C castagnoli = new CRC32C();
        byte[] buffer = new byte[BUFFER];
        try (InputStream in = new ExactStream(LogStreams.open(file.uri(), hadoop), LogSlice.whole(file))) {
            for (int size = in.read(buffer); size > 0; size = in.read(buffer)) {
                crc.update(buffer, 0, size);
                castagnoli.update(buffer, 0, size);
            }
        }
        return String.format("crc32+crc32c:%08x%08x", crc.getValue(), castagnoli.getValue());
    }
}
