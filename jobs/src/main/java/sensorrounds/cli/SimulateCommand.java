package sensorrounds.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sensorrounds.run.UsageError;
import sensorrounds.simulate.MessRates;
import sensorrounds.simulate.SimulateTask;
import sensorrounds.simulate.SimulationSettings;

/** Writes an invented fleet whose truth is known. */
@Command(
        name = "simulate",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        header = "Write the visit logs of an invented fleet whose truth is known.",
        description = {
            "",
            "Without options it writes the sample data again: the same seed gives the same bytes. With --readings it writes"
                    + " large logs for measuring. What really happened to each sensor stands under truth/, which the engine"
                    + " never reads (docs/sample-data.md)."
        },
        footer = {
            "",
            "Examples:",
            "  sensor-rounds simulate --replace sample-data",
            "  sensor-rounds simulate big --readings 2000000"
        })
final class SimulateCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FOLDER", description = "Folder to write into; new or empty unless --replace is given.")
    private Path folder;

    @Option(names = "--seed", description = "Seed of all chance. Default: 20260930.")
    private Long seed;

    @Option(names = "--vehicles", description = "Number of vehicles. Default: 150.")
    private Integer vehicles;

    @Option(names = "--years", description = "Years of logs. Default: 4.")
    private Integer years;

    @Option(names = "--end", paramLabel = "DATE", description = "Last day of the logs. Default: 2026-09-30.")
    private LocalDate end;

    @Option(
            names = "--readings",
            description = "About this many rows, in large files; as many vehicles as that takes. No stories, no mess.")
    private Long readings;

    @Option(names = "--format", description = "Form of large logs: ${COMPLETION-CANDIDATES}. Default: jsonl.")
    private Format format = Format.jsonl;

    @Option(names = "--stories", description = "Vehicles with a known story: ${COMPLETION-CANDIDATES}. Default: five.")
    private Stories stories;

    @Option(names = "--mess", description = "Slips of the people who log: ${COMPLETION-CANDIDATES}. Default: ordinary.")
    private Mess mess;

    @Option(names = "--replace", description = "Replace simulated data that the folder holds.")
    private boolean replace;

    /** Words of --format. */
    enum Format {
        jsonl,
        csv
    }

    /** Words of --stories. */
    enum Stories {
        five,
        none
    }

    /** Words of --mess. */
    enum Mess {
        ordinary,
        none
    }

    @Override
    public Integer call() throws IOException {
        try {
            String done = new SimulateTask()
                    .run(
                            settings(),
                            folder,
                            replace ? SimulateTask.Existing.REPLACE_SIMULATED : SimulateTask.Existing.REFUSE)
                    .words();
            spec.commandLine().getOut().println(done);
            return ExitCode.DONE.number();
        } catch (IllegalArgumentException e) {
            throw new UsageError(
                    "nothing was simulated", "simulate", folder.toString(), e.getMessage(), "see simulate --help");
        }
    }

    private SimulationSettings settings() {
        SimulationSettings s = SimulationSettings.sample();
        if (readings != null) {
            s = SimulationSettings.large(
                    s.seed(),
                    s.vehicles(),
                    format == Format.csv
                            ? SimulationSettings.Output.LARGE_CSV
                            : SimulationSettings.Output.LARGE_JSON_LINES);
        }
        // Before the size: a small fleet has no room for the stories.
        s = stories == null
                ? s
                : s.withStories(
                        stories == Stories.five ? SimulationSettings.Stories.FIVE : SimulationSettings.Stories.NONE);
        s = seed == null ? s : s.withSeed(seed);
        s = vehicles == null ? s : s.withVehicles(vehicles);
        s = years == null ? s : s.withYears(years);
        s = end == null ? s : s.withEndDate(end);
        s = mess == null ? s : s.withMess(mess == Mess.none ? MessRates.none() : MessRates.ordinary());
        return readings == null ? s : SimulateTask.forReadings(s, readings);
    }
}
