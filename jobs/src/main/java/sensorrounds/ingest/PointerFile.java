package sensorrounds.ingest;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.StandardCopyOption;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileContext;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Options;
import org.apache.hadoop.fs.Path;

/** A small file that readers see whole, either as it was or as it is now. */
public final class PointerFile {
    private PointerFile() {}

    /**
     * Replaces the file in one step.
     *
     * @param writer a word that no other writer of this file uses at the same time
     */
    public static void replace(Path target, String writer, byte[] bytes, Configuration hadoop) throws IOException {
        FileSystem files = target.getFileSystem(hadoop);
        Path fresh = new Path(target.getParent(), "." + target.getName() + "." + writer);
        if (isLocal(files)) {
            Files.write(local(files, fresh), bytes);
            Files.move(
                    local(files, fresh),
                    local(files, target),
                    StandardCopyOption.ATOMIC_MOVE,
                    StandardCopyOption.REPLACE_EXISTING);
        } else {
            try (OutputStream out = files.create(fresh, true)) {
                out.write(bytes);
            }
            FileContext.getFileContext(files.getUri(), hadoop).rename(fresh, target, Options.Rename.OVERWRITE);
        }
    }

    static boolean isLocal(FileSystem files) {
        return files.getUri().getScheme().equals("file");
    }

    static java.nio.file.Path local(FileSystem files, Path path) {
        return java.nio.file.Path.of(files.makeQualified(path).toUri().getPath());
    }
}
