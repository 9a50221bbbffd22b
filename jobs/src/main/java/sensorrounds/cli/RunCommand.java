package sensorrounds.cli;

import java.io.PrintWriter;
import java.time.LocalDate;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import sensorrounds.run.Pipeline;
import sensorrounds.run.Progress;
import sensorrounds.run.RunOptions;

/** The whole way: logs to tables and report. */
@Command(
        name = "run",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        header = "Read all visit logs, review the fleet, write tables and report.",
        description = {
            "",
            "Reads every visit log, rebuilds the sensors' lives, fits their survival, and writes the ranked replacement"
                    + " list, vehicles with recurring warnings, follow-ups, watch list and stock outlook: as Parquet"
                    + " under tables/, as CSV under csv/, as lists.xlsx, and as report.html.",
            "",
            "Each run stands in a folder of its own under runs/ of the output folder; latest.json names the newest"
                    + " finished one. Nothing is overwritten, and a run that fails leaves earlier results as they were."
        },
        footer = {"", "Example:", "  sensor-rounds run --data sample-data --out out --as-of 2026-09-30"})
final class RunCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

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
                    "Day the figures hold for, YYYY-MM-DD; later visits are left out. Default: the latest visit in"
                            + " the logs.")
    private LocalDate asOf;

    @Mixin
    private PseudonymOption pseudonyms;

    @Option(names = "--quiet", description = "No progress lines; only the summary.")
    private boolean quiet;

    @Override
    public Integer call() {
        PrintWriter screen = spec.commandLine().getOut();
        PrintWriter err = spec.commandLine().getErr();
        Progress progress = quiet ? Progress.SILENT : Progress.timed(err::println);
        Pipeline.Outcome outcome = new Pipeline(
                        new RunOptions(
                                input.data, input.logs, input.settings, store, out, asOf, pseudonyms.options(spec)),
                        progress)
                .run();
        screen.println(outcome.summary());
        if (outcome.overLimit()) {
            err.println(
                    "sensor-rounds: done, but more rows were quarantined than quarantineLimit in the settings allows."
                            + " csv/quarantine.csv lists them with what to do; 'sensor-rounds check' prints the same.");
            return ExitCode.OVER_QUARANTINE_LIMIT.number();
        }
        return ExitCode.DONE.number();
    }
}
