package sensorrounds.run;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.attribute.PosixFilePermissions;
import org.apache.hadoop.fs.Path;
import org.apache.hadoop.fs.RawLocalFileSystem;
import org.apache.hadoop.fs.permission.FsPermission;

/**
 * The local file system for local runs. Hadoop's own forks a process to set permissions for every file it makes when
 * its native library is absent, and leaves a hidden checksum file beside each; this one does neither.
 */
public final class QuickLocalFileSystem extends RawLocalFileSystem {
    private static final boolean POSIX =
            FileSystems.getDefault().supportedFileAttributeViews().contains("posix");

    @Override
    public void setPermission(Path path, FsPermission permission) throws IOException {
        if (POSIX) {
            String rwx = permission.getUserAction().SYMBOL
                    + permission.getGroupAction().SYMBOL
                    + permission.getOtherAction().SYMBOL;
            Files.setPosixFilePermissions(pathToFile(path).toPath(), PosixFilePermissions.fromString(rwx));
        }
    }
}
