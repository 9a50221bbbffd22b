package sensorrounds.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sensorrounds.run.Explain;

/** One vehicle's story from the newest run. */
@Command(
        name = "explain",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        header = "Tell one vehicle's story from the newest run, and the working behind its rank.",
        description = {
            "",
            "Prints its warnings and what may be behind them, its lines of the replacement list with their reasons, its"
                    + " sensors over time, follow-ups, watch list and contradictions in its logs."
        },
        footer = {"", "Example:", "  sensor-rounds explain V3974976 --out out"})
final class ExplainCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "VEHICLE", description = "ID of the vehicle as the logs write it.")
    private String vehicle;

    @Option(
            names = "--out",
            paramLabel = "FOLDER",
            defaultValue = "out",
            description = "Output folder of earlier runs. Default: ${DEFAULT-VALUE}.")
    private String out;

    @Override
    public Integer call() {
        spec.commandLine().getOut().print(Explain.of(out, vehicle));
        spec.commandLine().getOut().flush();
        return ExitCode.DONE.number();
    }
}
