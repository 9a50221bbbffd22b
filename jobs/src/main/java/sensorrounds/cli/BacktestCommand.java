package sensorrounds.cli;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import sensorrounds.backtest.BacktestSettings;
import sensorrounds.backtest.Horizon;
import sensorrounds.run.BacktestRun;

/** What the lists of days gone by would have been worth. */
@Command(
        name = "backtest",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        header = "Ask the engine on days gone by, and hold what it said against what happened.",
        description = {
            "",
            "Rolls the as-of date back to several days. On each, everything is rebuilt from the visits up to that day alone,"
                    + " in their first form, and each sensor's chances and the replacement list are taken down. Then the"
                    + " visits since tell what failed. Writes how far the chances can be trusted, and what the list hit"
                    + " against simple rules such as the oldest first: as tables, and as report.html.",
            "",
            "Each backtest stands in a folder of its own under backtests/ of the output folder;"
                    + " latest-backtest.json names the newest finished one. Runs beside it are left as they are."
        },
        footer = {"", "Example:", "  sensor-rounds backtest --data sample-data --out out"})
final class BacktestCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Mixin
    private ReviewOptions review;

    @Option(
            names = "--cuts",
            paramLabel = "N",
            defaultValue = "4",
            description = "Most days to ask on; fewer where the logs are short. Default: ${DEFAULT-VALUE}.")
    private int cuts;

    @Option(
            names = "--every",
            paramLabel = "DAYS",
            defaultValue = "180",
            description = "Days from one to the next. Default: ${DEFAULT-VALUE}.")
    private int every;

    @Option(
            names = "--horizon",
            paramLabel = "DAYS",
            defaultValue = "365",
            description =
                    "Longest horizon to judge: 30, 90, 180 or 365 days; the shorter ones are judged as well. The last day"
                            + " asked on lies this horizon and half a year before the end of the logs."
                            + " Default: ${DEFAULT-VALUE}.")
    private int horizon;

    @Override
    public Integer call() {
        PrintWriter err = spec.commandLine().getErr();
        BacktestRun.Outcome outcome = new BacktestRun(review.options(spec), settings(), review.progress(err)).run();
        spec.commandLine().getOut().print(outcome.summary());
        spec.commandLine().getOut().flush();
        return ExitCode.DONE.number();
    }

    private BacktestSettings settings() {
        BacktestSettings defaults = BacktestSettings.defaults();
        Horizon longest =
                Horizon.ofDays(horizon).orElseThrow(() -> refused("--horizon", horizon, "30, 90, 180 or 365 days"));
        if (cuts < 1) {
            throw refused("--cuts", cuts, "1 or more");
        }
        if (every < 1) {
            throw refused("--every", every, "a day or more");
        }
        return new BacktestSettings(cuts, every, longest, defaults.historyDays(), defaults.graceDays());
    }

    private ParameterException refused(String option, int value, String expected) {
        return new ParameterException(
                spec.commandLine(), "Invalid value for option '" + option + "': " + value + "; expected " + expected);
    }
}
