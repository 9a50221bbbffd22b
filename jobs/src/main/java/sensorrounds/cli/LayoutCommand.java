package sensorrounds.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sensorrounds.run.ProposeLayout;
import sensorrounds.visit.Side;

/** Proposes a mapping file for logs in another layout. */
@Command(
        name = "layout",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        header = "Propose a mapping file for logs in another layout, from the logs themselves.",
        description = {
            "",
            "Looks at files of one technician and says which column is which field, how dates, units, wheel places, sensor IDs"
                    + " and words are written, and what was counted for and against each. What the files do not decide"
                    + " stays \"?\" in the mapping file, and a run refuses it until you have filled it in."
        },
        footer = {
            "",
            "Example:",
            "  sensor-rounds layout data/visit-logs/T12/*.csv --driving-side left --out data/layouts/t12.json",
            "",
            "docs/visit-log.md explains each entry."
        })
final class LayoutCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(
            paramLabel = "FILE",
            arity = "1..*",
            description = "CSV files (plain or gzip), workbooks (.xlsx) or flat Parquet files, with one header.")
    private List<String> files;

    @Option(
            names = "--driving-side",
            paramLabel = "SIDE",
            description = "Side of the road these vehicles drive on: left or right. Needed for nearside and offside.")
    private DrivingSide drivingSide;

    @Option(
            names = "--out",
            paramLabel = "FILE",
            description = "Mapping file to write, in layouts/ of the data folder; must not exist. Default: printed.")
    private Path out;

    /** Words of --driving-side. */
    enum DrivingSide {
        left,
        right
    }

    @Override
    public Integer call() {
        Side side = drivingSide == null ? null : Side.valueOf(drivingSide.name().toUpperCase(Locale.ROOT));
        spec.commandLine().getOut().print(ProposeLayout.of(files, side, out));
        spec.commandLine().getOut().flush();
        return ExitCode.DONE.number();
    }
}
