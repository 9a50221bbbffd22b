package sensorrounds.run;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;
import sensorrounds.ingest.KnownLogs;
import sensorrounds.ingest.LayoutReader;
import sensorrounds.ingest.LogFile;
import sensorrounds.ingest.LogFiles;
import sensorrounds.ingest.RefusedInput;

/** The logs and the settings: all that a command needs which only reads logs. The register of a fleet can be long. */
record LogInputs(List<LogFile> logs, RunSettings settings) {
    /**
     * @param known logs that were recognised before and have not changed; they are not opened
     * @throws RefusedInput for data that cannot be used
     * @throws UsageError for settings that cannot be
     */
    static LogInputs find(RunOptions options, Configuration hadoop, KnownLogs known) {
        RunSettings settings = settings(options, hadoop);
        folder(options.data(), hadoop);
        String logs = options.logs() == null ? new Path(options.data(), "visit-logs").toString() : options.logs();
        List<LogFile> files = new LogFiles(
                        hadoop,
                        options.data(),
                        new LayoutReader(hadoop).read(new Path(options.data(), "layouts").toString()))
                .find(logs, known);
        return new LogInputs(files, settings);
    }

    long bytes() {
        return logs.stream().mapToLong(LogFile::bytes).sum();
    }

    private static void folder(String data, Configuration hadoop) {
        try {
            Path path = new Path(data);
            FileSystem files = path.getFileSystem(hadoop);
            if (!files.exists(path) || !files.getFileStatus(path).isDirectory()) {
                throw new RefusedInput(
                        "no such data folder",
                        data,
                        null,
                        "a folder with visit-logs, and if there are any layouts, fleet.csv, parts.csv, stock.csv",
                        "check the path given with --data");
            }
        } catch (IOException | IllegalArgumentException e) {
            throw new RefusedInput(
                    "the data folder cannot be read",
                    data,
                    e.getMessage(),
                    "a readable folder",
                    "check the path given with --data");
        }
    }

    private static RunSettings settings(RunOptions options, Configuration hadoop) {
        boolean asked = options.settings() != null;
        String name = asked ? options.settings() : new Path(options.data(), "settings.json").toString();
        try {
            Path path = new Path(name);
            FileSystem files = path.getFileSystem(hadoop);
            if (!files.exists(path)) {
                if (asked) {
                    throw new UsageError(
                            "no such settings file",
                            "--settings",
                            name,
                            "a JSON file",
                            "check the path, or leave the option out to use the defaults");
                }
                return RunSettings.defaults();
            }
            try (InputStream in = files.open(path)) {
                return RunSettings.parse(name, new String(in.readAllBytes(), StandardCharsets.UTF_8));
            }
        } catch (IOException e) {
            throw new UsageError(
                    "the settings file cannot be read", "--settings", name, "a readable JSON file", e.getMessage());
        }
    }
}
