package sensorrounds.cli;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import sensorrounds.ingest.StoreUpdate.Scrutiny;
import sensorrounds.run.IngestRun;
import sensorrounds.run.Progress;
import sensorrounds.run.RunOptions;

/** Reads new and changed logs into a store. */
@Command(
        name = "ingest",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        header = "Read new and changed visit logs into a store, which a run can start from.",
        description = {
            "",
            "Logs that are as they were are not read again; logs that are gone no longer count. The store is a copy of"
                    + " what was read and can be removed at any time: the next call fills it again. It holds number"
                    + " plates, VINs and remarks as the logs do, so keep it where the logs are kept, or give a key with"
                    + " --pseudonymise.",
            "",
            "One ingest or run at a time can use a store. A call that is stopped leaves it as it was."
        },
        footer = {
            "",
            "Example:",
            "  sensor-rounds ingest --data sample-data --store store",
            "  sensor-rounds run --data sample-data --store store --out out"
        })
final class IngestCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Mixin
    private DataOptions input;

    @Option(
            names = "--store",
            required = true,
            paramLabel = "FOLDER",
            description = "Folder of the store; made when it is not there. A path or a URI.")
    private String store;

    @Mixin
    private PseudonymOption pseudonyms;

    @Option(
            names = "--verify",
            description = "Compare the content of every log with what was read, not only its size and time.")
    private boolean verify;

    @Option(names = "--quiet", description = "No progress lines; only the summary.")
    private boolean quiet;

    @Override
    public Integer call() {
        PrintWriter err = spec.commandLine().getErr();
        IngestRun.Outcome outcome = IngestRun.of(
                new RunOptions(input.data, input.logs, input.settings, store, null, null, pseudonyms.options(spec)),
                verify ? Scrutiny.CONTENT : Scrutiny.SIZE_AND_TIME,
                quiet ? Progress.SILENT : Progress.timed(err::println));
        spec.commandLine().getOut().print(outcome.text());
        spec.commandLine().getOut().flush();
        if (outcome.overLimit()) {
            err.println("sensor-rounds: done, but more of the rows in the store are quarantined than quarantineLimit in"
                    + " the settings allows. 'sensor-rounds check' prints all of them with what to do.");
            return ExitCode.OVER_QUARANTINE_LIMIT.number();
        }
        return ExitCode.DONE.number();
    }
}
