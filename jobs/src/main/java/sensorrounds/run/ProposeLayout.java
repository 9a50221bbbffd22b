package sensorrounds.run;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.TreeSet;
import sensorrounds.ingest.LayoutFile;
import sensorrounds.ingest.ProposalReport;
import sensorrounds.ingest.SampleReader;
import sensorrounds.proposal.LayoutProposal;
import sensorrounds.proposal.LayoutProposer;
import sensorrounds.visit.Side;

/** Proposes a layout from files that nobody has described yet. */
public final class ProposeLayout {
    private static final String LOGS = "visit-logs/";

    private ProposeLayout() {}

    /**
     * @param files files of one technician, with one header
     * @param drivingSide side of the road; null when it was not given
     * @param out where the mapping file goes; null to print it
     * @return what to print
     * @throws UsageError when the mapping file exists already
     */
    public static String of(List<String> files, Side drivingSide, Path out) {
        SampleReader.Cut cut = new SampleReader(Pipeline.hadoop()).read(files);
        LayoutProposal proposal = LayoutProposer.propose(cut.sample(), drivingSide);
        String name = name(out == null ? Path.of(files.get(0)) : out);
        String mapping = LayoutFile.text(name, appliesTo(files), cut, proposal);
        String report = ProposalReport.text(cut, proposal);
        if (out == null) {
            return report + System.lineSeparator() + mapping;
        }
        write(out, mapping);
        return report
                + String.format(
                        "%nWritten: %s%s%n",
                        out,
                        proposal.open().isEmpty()
                                ? ". Read it through, then try it with sensor-rounds check."
                                : ". Fill each \"?\", take out \"undecided\", then try it with sensor-rounds check.");
    }

    private static void write(Path out, String mapping) {
        try {
            if (out.toAbsolutePath().getParent() != null) {
                Files.createDirectories(out.toAbsolutePath().getParent());
            }
            Files.write(out, mapping.getBytes(StandardCharsets.UTF_8), StandardOpenOption.CREATE_NEW);
        } catch (FileAlreadyExistsException e) {
            throw new UsageError(
                    "the mapping file exists already",
                    "--out",
                    out.toString(),
                    "a new file",
                    "name another file, or move this one away: your own entries are not overwritten");
        } catch (IOException e) {
            throw new UsageError(
                    "the mapping file cannot be written", "--out", out.toString(), "a writable folder", e.toString());
        }
    }

    private static String name(Path file) {
        String name = file.getFileName().toString();
        int dot = name.indexOf('.');
        return dot > 0 ? name.substring(0, dot) : name;
    }

    /** All files of the same ending in the folders of these, when they lie where logs lie; otherwise a gap. */
    private static List<String> appliesTo(List<String> files) {
        TreeSet<String> globs = new TreeSet<>();
        for (String file : files) {
            String path = file.replace('\\', '/');
            int at = path.lastIndexOf("/" + LOGS);
            String below = path.startsWith(LOGS) ? path : at >= 0 ? path.substring(at + 1) : null;
            if (below == null) {
                globs.add(LayoutProposal.GAP);
            } else {
                int slash = below.lastIndexOf('/');
                String ending = below.substring(below.indexOf('.', slash));
                globs.add(below.substring(0, slash + 1) + "*" + ending);
            }
        }
        return List.copyOf(globs);
    }
}
