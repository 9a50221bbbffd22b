package sensorrounds.ingest;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import sensorrounds.ingest.IngestSummary.Example;
import sensorrounds.ingest.IngestSummary.FileResult;
import sensorrounds.ingest.IngestSummary.Reason;
import sensorrounds.intake.FileDoubt;
import sensorrounds.intake.Note;

/** The outcome of reading logs as plain text: rows per file, why rows went to quarantine, and what to do about it. */
public final class CheckReport {
    private static final int MOST_FILES = 200;
    private static final int FEW_FILES = 3;
    private static final int VALUE_SHOWN = 60;
    private static final int TEXT_SHOWN = 300;

    private CheckReport() {}

    /** As {@link #text(IngestSummary)}, with what would be used but is to be doubted. */
    public static String text(Examination examination) {
        StringBuilder out = new StringBuilder(text(examination.summary()));
        List<FileDoubt> files = examination.doubts().files();
        List<DoubtTally.Group> groups = examination.doubts().groups();
        if (!files.isEmpty() || !groups.isEmpty()) {
            line(out, "%nUsed as written, but to be doubted:");
        }
        aboutFiles(files, out);
        groups.forEach(group -> doubts(group, out));
        return out.toString();
    }

    /** Open ends are told together: a program that never ends its last line writes hundreds of them. */
    private static void aboutFiles(List<FileDoubt> doubts, StringBuilder out) {
        List<FileDoubt> open = doubts.stream()
                .filter(d -> d.kind() == FileDoubt.Kind.LAST_LINE_OPEN)
                .toList();
        doubts.stream()
                .filter(d -> d.kind() != FileDoubt.Kind.LAST_LINE_OPEN)
                .limit(MOST_FILES)
                .forEach(d -> {
                    line(out, "  %s: %s", d.file(), d.what());
                    line(out, "    way out: %s", d.remedy());
                });
        if (!open.isEmpty()) {
            line(
                    out,
                    "  %d: %s",
                    open.size(),
                    open.size() == 1 ? "log without a last line end" : "logs without a last line end");
            open.stream().limit(FEW_FILES).forEach(d -> line(out, "    %s: %s", d.file(), d.what()));
            line(out, "    way out: %s", open.get(0).remedy());
        }
    }

    private static void doubts(DoubtTally.Group group, StringBuilder out) {
        line(out, "  %d: %s", group.count(), group.kind().words());
        group.examples()
                .forEach(d -> line(
                        out,
                        "    %s: vehicle %s%s: %s",
                        d.sources().get(0),
                        shown(d.vehicleId()),
                        d.position() == null ? "" : ", " + d.position(),
                        shown(d.what(), TEXT_SHOWN)));
        line(out, "    way out: %s", group.kind().remedy());
    }

    /** What an update of a store did, and what came of the logs that were read. */
    public static String text(StoreUpdate.Outcome update) {
        StringBuilder out = new StringBuilder();
        IngestSummary read = update.read();
        if (read != null) {
            files(read.files(), Duplicates.NOT_YET_KNOWN, out);
            line(
                    out,
                    "%n%d rows in = %d understood + %d quarantined",
                    read.rowsIn(),
                    read.accepted(),
                    read.quarantined());
            reasons(read, out);
            if (!read.fileDoubts().isEmpty()) {
                line(out, "%nUsed as written, but to be doubted:");
                aboutFiles(read.fileDoubts(), out);
            }
            out.append(System.lineSeparator());
        }
        line(
                out,
                "logs: %d new, %d changed, %d withdrawn, %d as before",
                update.fresh(),
                update.changed(),
                update.withdrawn(),
                update.unchanged());
        line(
                out,
                "in the store: %d rows of %d logs, %d of them quarantined; a run settles duplicates over all of them",
                update.logs().rows(),
                update.logs().files().size(),
                update.logs().quarantined());
        return out.toString();
    }

    public static String text(IngestSummary summary) {
        StringBuilder out = new StringBuilder();
        files(summary.files(), Duplicates.SETTLED, out);
        line(
                out,
                "%n%d rows in = %d accepted + %d quarantined + %d duplicates",
                summary.rowsIn(),
                summary.accepted(),
                summary.quarantined(),
                summary.duplicateRows());
        summary.duplicates().forEach((rule, rows) -> line(out, "  %d duplicates: %s", rows, rule.words()));
        reasons(summary, out);
        return out.toString();
    }

    private static void reasons(IngestSummary summary, StringBuilder out) {
        Map<Note, Long> used = new TreeMap<>(summary.notes());
        used.remove(Note.SHEET_LEFT_OUT);
        if (!used.isEmpty()) {
            line(out, "%nConverted or odd, but used:");
            used.forEach((note, rows) -> line(out, "  %d rows: %s", rows, note.words()));
        }
        if (!summary.quarantine().isEmpty()) {
            line(out, "%nIn quarantine:");
            summary.quarantine().forEach(reason -> reason(reason, out));
        }
    }

    /** Whether the rows of all logs have been held against each other. */
    private enum Duplicates {
        SETTLED,
        NOT_YET_KNOWN
    }

    private static void files(List<FileResult> files, Duplicates duplicates, StringBuilder out) {
        int width = files.stream()
                .limit(MOST_FILES)
                .mapToInt(f -> f.file().length())
                .max()
                .orElse(0);
        boolean settled = duplicates == Duplicates.SETTLED;
        String form = "%-" + Math.max(4, width) + "s %10s %10s %11s" + (settled ? " %10s" : "%s") + "  %s";
        line(
                out,
                form,
                "file",
                "rows in",
                settled ? "accepted" : "understood",
                "quarantined",
                settled ? "duplicates" : "",
                "layout");
        files.stream()
                .limit(MOST_FILES)
                .forEach(f -> line(
                        out,
                        form,
                        f.file(),
                        f.count().rows(),
                        f.accepted(),
                        f.quarantined(),
                        settled ? f.duplicates() : "",
                        layout(f)));
        if (files.size() > MOST_FILES) {
            line(out, "and %d more files", files.size() - MOST_FILES);
        }
    }

    private static String layout(FileResult file) {
        return file.leftOut() > 0
                ? "(no visit log: " + file.leftOut() + (file.leftOut() == 1 ? " row" : " rows") + " left out)"
                : file.count().layout() == null ? "canonical" : file.count().layout();
    }

    private static void reason(Reason reason, StringBuilder out) {
        line(
                out,
                "  %d rows: %s%s",
                reason.rows(),
                reason.rule().words(),
                reason.field() == null ? "" : " (" + reason.field() + ")");
        for (Example example : reason.examples()) {
            line(
                    out,
                    "    %s: %s, expected %s",
                    example.source(),
                    example.rawValue() == null ? "nothing" : "\"" + shown(example.rawValue()) + "\"",
                    example.expected());
        }
        line(out, "    way out: %s", reason.remedy());
    }

    /** A value from a log must not run over lines or move the cursor of the terminal. */
    private static String shown(String value) {
        return shown(value, VALUE_SHOWN);
    }

    private static String shown(String value, int most) {
        String plain = value.replaceAll("\\p{Cntrl}", "?");
        return plain.length() <= most ? plain : plain.substring(0, most) + "…";
    }

    private static void line(StringBuilder out, String form, Object... values) {
        out.append(String.format(Locale.ROOT, form, values)).append(System.lineSeparator());
    }
}
