package sensorrounds.run;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;
import sensorrounds.fleet.Part;
import sensorrounds.fleet.StockOnHand;
import sensorrounds.fleet.Vehicle;
import sensorrounds.ingest.KnownLogs;
import sensorrounds.ingest.LayoutReader;
import sensorrounds.ingest.LogFile;
import sensorrounds.ingest.LogFiles;
import sensorrounds.ingest.RefusedInput;
import sensorrounds.ingest.RegisterReader;

/**
 * Everything a run reads but the rows of the logs. Looked at before Spark starts, so that a slip in a path or a setting is
 * answered in a second.
 */
public record RunInputs(
        List<LogFile> logs,
        SortedMap<String, Vehicle> fleet,
        SortedMap<String, Part> parts,
        List<StockOnHand> stock,
        RunSettings settings) {

    /** @throws RefusedInput for data that cannot be used @throws UsageError for settings that cannot be */
    public static RunInputs find(RunOptions options, Configuration hadoop) {
        return find(options, hadoop, KnownLogs.NONE);
    }

    /** @param known logs that were recognised before and have not changed; they are not opened */
    static RunInputs find(RunOptions options, Configuration hadoop, KnownLogs known) {
        RunSettings settings = settings(options, hadoop);
        folder(options.data(), hadoop);
        String logs = options.logs() == null ? new Path(options.data(), "visit-logs").toString() : options.logs();
        List<LogFile> files = new LogFiles(
                        hadoop,
                        options.data(),
                        new LayoutReader(hadoop).read(new Path(options.data(), "layouts").toString()))
                .find(logs, known);
        RegisterReader registers = new RegisterReader(hadoop, options.data());
        SortedMap<String, Part> parts = new TreeMap<>();
        registers.parts().forEach(p -> parts.put(p.partId(), p));
        return new RunInputs(files, registers.fleet(), parts, registers.stock(), settings);
    }

    public long bytes() {
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
