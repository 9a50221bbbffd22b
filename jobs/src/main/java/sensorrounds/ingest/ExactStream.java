package sensorrounds.ingest;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/**
 * A slice of a stored file, byte for byte. A file that has grown or shrunk since it was listed is still being written or
 * copied, and is refused rather than read in part.
 */
final class ExactStream extends FilterInputStream {
    private final LogSlice slice;
    private long left;

    ExactStream(InputStream in, LogSlice slice) {
        super(in);
        this.slice = slice;
        this.left = slice.length();
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
        if (length == 0) {
            return 0;
        }
        if (left == 0) {
            if (slice.isLast() && in.read() >= 0) {
                throw changed("more than " + slice.file().bytes() + " bytes");
            }
            return -1;
        }
        int size = in.read(buffer, offset, (int) Math.min(length, left));
        if (size < 0) {
            throw changed("less than " + slice.file().bytes() + " bytes");
        }
        left -= size;
        return size;
    }

    @Override
    public long skip(long n) throws IOException {
        long skipped = in.skip(Math.min(n, left));
        left -= skipped;
        return skipped;
    }

    @Override
    public int available() throws IOException {
        return (int) Math.min(in.available(), left);
    }

    @Override
    public boolean markSupported() {
        return false;
    }

    private RefusedInput changed(String found) {
        return changed(slice.file(), found);
    }

    /** @param found what the file is now */
    static RefusedInput changed(LogFile file, String found) {
        return new RefusedInput(
                "a log changed while it was read",
                file.name(),
                found,
                file.bytes() + " bytes, as when the run began",
                "wait until the file is wholly written or copied, and start again");
    }
}
