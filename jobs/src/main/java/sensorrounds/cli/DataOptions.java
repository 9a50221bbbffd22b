package sensorrounds.cli;

import picocli.CommandLine.Option;

/** Where a command finds its input; shared by the commands that read logs. */
final class DataOptions {
    @Option(
            names = "--data",
            required = true,
            paramLabel = "FOLDER",
            description = {
                "Data folder: visit-logs/, and if there are any layouts/, fleet.csv, parts.csv, stock.csv, settings.json."
                        + " A path or a URI."
            })
    String data;

    @Option(
            names = "--logs",
            paramLabel = "PATH",
            description = "Folder, file or glob of visit logs. Default: visit-logs in the data folder.")
    String logs;

    @Option(
            names = "--settings",
            paramLabel = "FILE",
            description = "Settings file. Default: settings.json in the data folder, or the documented defaults"
                    + " (docs/settings.md).")
    String settings;
}
