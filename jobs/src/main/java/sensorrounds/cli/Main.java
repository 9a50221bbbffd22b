package sensorrounds.cli;

import java.io.PrintWriter;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;
import sensorrounds.ingest.RefusedInput;
import sensorrounds.run.UsageError;

/** The command line. The only place that ends the process. */
@Command(
        name = "sensor-rounds",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        subcommands = {
            RunCommand.class,
            IngestCommand.class,
            CheckCommand.class,
            LayoutCommand.class,
            ExplainCommand.class,
            BacktestCommand.class,
            SimulateCommand.class
        },
        sortOptions = false,
        header = "Which tyre-pressure sensors are on their way out, which vehicles keep coming back, what to replace.",
        description = {
            "",
            "Reads the visit logs of many technicians, rebuilds each sensor's life, and writes a ranked replacement list,"
                    + " the vehicles with recurring warnings, a stock outlook and a report.",
            "A rank is never a safety verdict: the vehicle handbook and licensed practice decide."
        },
        footer = {
            "",
            "Exit codes: 0 done; 1 command line or settings wrong; 2 input refused; 3 our mistake;"
                    + " 4 done, but more rows were quarantined than the settings allow.",
            "",
            "Example:",
            "  sensor-rounds run --data sample-data --out out",
            "",
            "On a cluster: sensor-rounds submit [spark-submit options] -- run --data URI --out URI"
        })
public final class Main implements Runnable {
    @Spec
    private CommandSpec spec;

    @Option(
            names = "--trace",
            scope = ScopeType.INHERIT,
            description = "Show the stack trace of an error; for a report of our mistake.")
    private boolean trace;

    private Main() {}

    /** Runs the command and ends the process with its exit code. */
    public static void main(String[] args) {
        System.exit(execute(args, new PrintWriter(System.out, true), new PrintWriter(System.err, true)));
    }

    /** Runs the command. @return the exit code */
    public static int execute(String[] args, PrintWriter out, PrintWriter err) {
        Main main = new Main();
        return new CommandLine(main)
                .setOut(out)
                .setErr(err)
                .setUsageHelpAutoWidth(false)
                .setUsageHelpWidth(100)
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setParameterExceptionHandler((e, a) -> usage(e))
                .setExecutionExceptionHandler((e, line, parsed) -> main.failed(e, line.getErr()))
                .execute(args);
    }

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "no command given");
    }

    private static int usage(ParameterException e) {
        PrintWriter err = e.getCommandLine().getErr();
        err.println("sensor-rounds: " + e.getMessage());
        CommandLine.UnmatchedArgumentException.printSuggestions(e, err);
        err.println("See: " + e.getCommandLine().getCommandSpec().qualifiedName(" ") + " --help");
        err.flush();
        return ExitCode.USAGE.number();
    }

    private int failed(Exception e, PrintWriter err) {
        // A task's exception reaches the driver wrapped; what the user must hear is the innermost one of ours.
        for (Throwable t = e; t != null; t = t.getCause()) {
            if (t instanceof RefusedInput || t instanceof UsageError) {
                err.println("sensor-rounds: " + t.getMessage());
                trace(e, err);
                return (t instanceof UsageError ? ExitCode.USAGE : ExitCode.INPUT_REFUSED).number();
            }
        }
        err.println("sensor-rounds: this should not happen, and it is our mistake: " + innermost(e));
        if (!trace) {
            err.println("Earlier results are untouched. Call again with --trace and send us what it prints.");
        }
        trace(e, err);
        return ExitCode.BUG.number();
    }

    /** The first cause in a line; what Spark wraps around it helps nobody but us. */
    private static String innermost(Exception e) {
        Throwable cause = e;
        while (cause.getCause() != null) {
            cause = cause.getCause();
        }
        return cause.toString().lines().findFirst().orElse(e.getClass().getName());
    }

    private void trace(Exception e, PrintWriter err) {
        if (trace) {
            e.printStackTrace(err);
        }
        err.flush();
    }
}
