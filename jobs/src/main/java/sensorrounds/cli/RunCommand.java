package sensorrounds.cli;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import sensorrounds.run.Pipeline;

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
    private ReviewOptions review;

    @Override
    public Integer call() {
        PrintWriter screen = spec.commandLine().getOut();
        PrintWriter err = spec.commandLine().getErr();
        Pipeline.Outcome outcome = new Pipeline(review.options(spec), review.progress(err)).run();
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
