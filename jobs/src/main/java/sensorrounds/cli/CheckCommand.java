package sensorrounds.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import sensorrounds.run.CheckRun;
import sensorrounds.run.RunOptions;

/** Validates logs without writing anything. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        header = "Read visit logs and say what would become of each row; writes nothing.",
        description = {
            "",
            "Prints the rows per file, why rows would go into quarantine, and what to do about it. Ends with exit code 4"
                    + " when any row would be quarantined, so that a script can stop on it."
        },
        footer = {"", "Example:", "  sensor-rounds check --data sample-data"})
final class CheckCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Mixin
    private DataOptions input;

    @Override
    public Integer call() {
        CheckRun.Outcome outcome = CheckRun.of(new RunOptions(input.data, input.logs, input.settings, null, null));
        spec.commandLine().getOut().print(outcome.text());
        spec.commandLine().getOut().flush();
        return (outcome.clean() ? ExitCode.DONE : ExitCode.OVER_QUARANTINE_LIMIT).number();
    }
}
