package sensorrounds.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sensorrounds.run.Explain;
import sensorrounds.run.UsageError;

/** One vehicle's story from the newest run. */
@Command(
        name = "explain",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        header = "Tell one vehicle's story from the newest run, and the working behind its rank.",
        description = {
            "",
            "Prints on one page what the vehicle comes to and what to do next; what may be behind its warnings, with the"
                    + " weight of each sign; its warnings and repairs and whether they held; every visit and wheel; its"
                    + " sensors; and the working behind its rank. Names nobody."
        },
        footer = {
            "",
            "Examples:",
            "  sensor-rounds explain V3974976 --out out",
            "  sensor-rounds explain V3974976 --out out --html V3974976.html",
            "",
            "Ends with 1 for a vehicle the newest run does not know, and names those spelt most like it; also for one of the"
                    + " fleet register that no log mentions."
        })
final class ExplainCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(
            paramLabel = "VEHICLE",
            description = "ID of the vehicle as the logs write it, or its number plate or VIN.")
    private String vehicle;

    @Option(
            names = "--out",
            paramLabel = "FOLDER",
            defaultValue = "out",
            description = "Output folder of earlier runs. Default: ${DEFAULT-VALUE}.")
    private String out;

    @Option(
            names = "--width",
            paramLabel = "COLUMNS",
            defaultValue = "${env:COLUMNS:-100}",
            description = "Longest line to print, 40 to 120. Default: the width of the terminal, else 100.")
    private int width;

    @Option(
            names = "--html",
            paramLabel = "FILE",
            description = "Write the page as HTML to this file, in place of printing it.")
    private Path html;

    @Override
    public Integer call() {
        Explain explain = Explain.of(out, vehicle);
        if (explain.isByIdentity()) {
            spec.commandLine().getErr().println("Found by its number plate or VIN.");
        }
        if (html == null) {
            spec.commandLine().getOut().print(explain.text(width));
        } else {
            write(explain.html());
            spec.commandLine().getOut().println("Page: " + html);
        }
        spec.commandLine().getOut().flush();
        return ExitCode.DONE.number();
    }

    private void write(String page) {
        try {
            Files.writeString(html, page, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UsageError(
                    "the page cannot be written",
                    "--html",
                    html.toString(),
                    "a file in a folder that exists and can be written",
                    "give another file");
        }
    }
}
