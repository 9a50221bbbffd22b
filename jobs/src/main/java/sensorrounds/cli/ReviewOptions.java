package sensorrounds.cli;

import java.io.PrintWriter;
import java.time.LocalDate;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import sensorrounds.run.Progress;
import sensorrounds.run.RunOptions;

/** What the commands that review the fleet share: what is kept, where results go, the last day that counts. */
final class ReviewOptions {
    @Mixin
    private DataOptions input;

    @Option(
            names = "--store",
            paramLabel = "FOLDER",
            description = "Folder that keeps what was read from the logs, so that only new or changed logs are read."
                    + " Default: none; all logs are read.")
    private String store;

    @Option(names = "--out", required = true, paramLabel = "FOLDER", description = "Output folder. A path or a URI.")
    private String out;

    @Option(
            names = "--as-of",
            paramLabel = "DATE",
            description =
                    "Last day of which anything is known, YYYY-MM-DD; later visits are left out. Default: the latest visit"
                            + " in the logs.")
    private LocalDate asOf;

    @Mixin
    private PseudonymOption pseudonyms;

    @Option(names = "--quiet", description = "No progress lines; only the summary.")
    private boolean quiet;

    RunOptions options(CommandSpec command) {
        return new RunOptions(input.data, input.logs, input.settings, store, out, asOf, pseudonyms.options(command));
    }

    Progress progress(PrintWriter err) {
        return quiet ? Progress.SILENT : Progress.timed(err::println);
    }
}
