package sensorrounds.ingest;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.StandardOpenOption;
import org.apache.hadoop.fs.FileAlreadyExistsException;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;

/**
 * Keeps a store to one user at a time. On a local disk the operating system holds the lock and frees it even when the
 * program is killed; elsewhere a file does, which a killed program leaves behind.
 */
final class StoreLock implements AutoCloseable {
    private static final String NAME = "in-use";

    private final FileSystem files;
    private final Path file;
    private final FileChannel held;

    private StoreLock(FileSystem files, Path file, FileChannel held) {
        this.files = files;
        this.file = file;
        this.held = held;
    }

    /** @throws RefusedInput when another has it */
    static StoreLock take(FileSystem files, Path folder) throws IOException {
        Path file = new Path(folder, NAME);
        byte[] note = ("process " + ProcessHandle.current().pid() + "\n").getBytes(StandardCharsets.UTF_8);
        if (!PointerFile.isLocal(files)) {
            try (OutputStream out = files.create(file, false)) {
                out.write(note);
                return new StoreLock(files, file, null);
            } catch (FileAlreadyExistsException e) {
                throw inUse(file, "wait for it to end; if none is running, one was killed: remove the file " + NAME);
            }
        }
        FileChannel channel =
                FileChannel.open(PointerFile.local(files, file), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        boolean locked = false;
        try {
            locked = channel.tryLock() != null;
        } catch (OverlappingFileLockException e) {
            // This very process has it: the same as any other.
            locked = false;
        } finally {
            if (!locked) {
                channel.close();
            }
        }
        if (!locked) {
            throw inUse(file, "wait for it to end, and start again");
        }
        channel.truncate(0);
        channel.write(ByteBuffer.wrap(note));
        return new StoreLock(files, file, channel);
    }

    private static RefusedInput inUse(Path file, String wayOut) {
        return new RefusedInput(
                "the store is in use", file.toString(), null, "one ingest or run at a time for a store", wayOut);
    }

    /** When it was taken, milliseconds by the clock of the store's file system. */
    long takenAt() throws IOException {
        return files.getFileStatus(file).getModificationTime();
    }

    @Override
    public void close() {
        try {
            if (held == null) {
                files.delete(file, false);
            } else {
                held.close();
            }
        } catch (IOException e) {
            throw new UncheckedIOException("the store " + file.getParent() + " could not be freed", e);
        }
    }
}
