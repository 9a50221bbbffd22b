package sensorrounds.ingest;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.FileSystems;
import java.nio.file.PathMatcher;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.LocatedFileStatus;
import org.apache.hadoop.fs.Path;
import org.apache.hadoop.fs.RemoteIterator;
import sensorrounds.intake.Layout;

/**
 * Finds the files of visit logs and recognises each by its first record, before any work starts. Folders are searched to
 * their depths; files and folders whose name starts with a dot or an underscore are passed over.
 */
public final class LogFiles {
    private final Configuration hadoop;
    private final Path dataFolder;
    private final List<Layout> layouts;

    /**
     * @param dataFolder folder that names of files, and the globs of layouts, are relative to
     * @param layouts the foreign layouts known
     */
    public LogFiles(Configuration hadoop, String dataFolder, List<Layout> layouts) {
        this.hadoop = hadoop;
        this.dataFolder = new Path(dataFolder);
        this.layouts = List.copyOf(layouts);
    }

    /**
     * The logs under a folder, a file or a glob.
     *
     * @return at least one file, ordered by name
     * @throws RefusedInput when there is none, or when one of them is no visit log
     */
    public List<LogFile> find(String where) {
        return find(where, KnownLogs.NONE);
    }

    /**
     * As {@link #find(String)}.
     *
     * @param known files that were recognised before and have not changed; they are not opened
     */
    public List<LogFile> find(String where, KnownLogs known) {
        try {
            Path path = new Path(where);
            FileSystem files = path.getFileSystem(hadoop);
            FileStatus[] matched = files.globStatus(path);
            if (matched == null || matched.length == 0) {
                throw new RefusedInput(
                        "no such file or folder",
                        where,
                        null,
                        "a folder, a file or a glob of visit logs",
                        "check the path; logs belong into the folder visit-logs of the data folder");
            }
            List<FileStatus> found = new ArrayList<>();
            for (FileStatus status : matched) {
                collect(files, status, found);
            }
            if (found.isEmpty()) {
                throw new RefusedInput(
                        "a folder without logs",
                        where,
                        null,
                        "files ending in " + LogForm.ENDINGS,
                        "put the logs into this folder, or name another one");
            }
            Path root = files.makeQualified(dataFolder);
            List<LogFile> logs = new ArrayList<>();
            for (FileStatus status : found) {
                logs.addAll(recognise(status, root, known));
            }
            logs.sort(Comparator.comparing(LogFile::name));
            return logs;
        } catch (IOException e) {
            throw new RefusedInput(
                    "logs cannot be listed",
                    where,
                    e.getMessage(),
                    "a readable folder",
                    "check the path and its permissions");
        }
    }

    static RefusedInput empty(String name) {
        return new RefusedInput(
                "an empty file",
                name,
                "nothing",
                "a header or at least one visit",
                "export the file again, or move it out of the folder of logs");
    }

    private static void collect(FileSystem files, FileStatus status, List<FileStatus> found) throws IOException {
        if (status.isFile()) {
            found.add(status);
            return;
        }
        RemoteIterator<LocatedFileStatus> below = files.listFiles(status.getPath(), true);
        while (below.hasNext()) {
            FileStatus file = below.next();
            if (!isHidden(file.getPath(), status.getPath())) {
                found.add(file);
            }
        }
    }

    private static boolean isHidden(Path file, Path folder) {
        for (Path p = file; p != null && !p.equals(folder); p = p.getParent()) {
            if (p.getName().startsWith(".") || p.getName().startsWith("_") || LogForm.isLock(p.getName())) {
                return true;
            }
        }
        return false;
    }

    private List<LogFile> recognise(FileStatus status, Path root, KnownLogs known) {
        String name = name(status.getPath(), root);
        LogForm form = LogForm.of(name);
        if (status.getLen() == 0) {
            throw empty(name);
        }
        LogFile log = new LogFile(
                status.getPath().toString(),
                name,
                status.getLen(),
                status.getModificationTime(),
                form.format(),
                null,
                form.gzipped(),
                layout(name, form.format()));
        if (form.format() == LogFile.Format.XLSX) {
            return sheets(log, known);
        }
        if (!known.knows(log)) {
            sniff(log);
        }
        return List.of(log);
    }

    private List<LogFile> sheets(LogFile workbook, KnownLogs known) {
        List<LogFile> before = known.sheets(workbook.name()).stream()
                .map(title -> sheet(workbook, title))
                .toList();
        return !before.isEmpty() && before.stream().allMatch(known::knows)
                ? before
                : WorkbookLogs.sheets(workbook, title -> sheet(workbook, title), hadoop);
    }

    /** A layout may be for one sheet alone. */
    private LogFile sheet(LogFile workbook, String title) {
        LogFile sheet = workbook.sheet(title);
        return workbook.layout().name() == null ? sheet.with(layout(sheet.name(), sheet.format())) : sheet;
    }

    private static String name(Path file, Path root) {
        String path = file.toUri().getPath();
        String folder = root.toUri().getPath();
        String prefix = folder.endsWith("/") ? folder : folder + "/";
        return path.startsWith(prefix) ? path.substring(prefix.length()) : path;
    }

    private Layout layout(String name, LogFile.Format format) {
        Layout match = null;
        for (Layout layout : layouts) {
            if (layout.appliesTo().stream().noneMatch(glob -> matches(glob, name))) {
                continue;
            }
            if (match != null) {
                throw new RefusedInput(
                        "two layouts for one file",
                        name,
                        "\"" + match.name() + "\" and \"" + layout.name() + "\"",
                        "one layout at most",
                        "narrow appliesTo in one of the two layouts");
            }
            match = layout;
        }
        if (match != null && format == LogFile.Format.JSON_LINES) {
            throw new RefusedInput(
                    "a layout for a file that is no table",
                    name,
                    "layout \"" + match.name() + "\"",
                    "JSON in the canonical form",
                    "narrow appliesTo to files with one row per wheel");
        }
        return match == null ? Layout.CANONICAL : match;
    }

    private static boolean matches(String glob, String name) {
        PathMatcher matcher = FileSystems.getDefault().getPathMatcher("glob:" + glob);
        return matcher.matches(java.nio.file.Path.of(name));
    }

    /** Reads the first record only. */
    private void sniff(LogFile log) {
        if (log.format() == LogFile.Format.PARQUET) {
            // Its columns stand at its end, and tell all.
            LogReader.open(LogSlice.whole(log), hadoop).close();
            return;
        }
        try (Reader text = LogStreams.open(log, hadoop)) {
            if (log.format() == LogFile.Format.CSV) {
                // Reading the header refuses what is no log.
                CsvRows.withHeader(log, text).close();
            } else {
                FirstJsonLine.check(log, text);
            }
        } catch (IOException e) {
            throw LogStreams.unreadable(log, 0, e);
        }
    }
}
