package sensorrounds.report;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import sensorrounds.condition.ReaderQuality;
import sensorrounds.history.Finding;
import sensorrounds.intake.FileDoubt;
import sensorrounds.report.ReportData.FindingGroup;
import sensorrounds.report.RunFacts.FileRows;
import sensorrounds.report.RunFacts.Labelled;
import sensorrounds.report.RunFacts.QuarantineGroup;
import sensorrounds.report.RunFacts.RowCounts;

/** Section 10: what was read, what was refused and why, and how good the reads are. Readers are tools, never people. */
final class QualitySection implements Section {
    /** Below so many files their table stands open. */
    private static final int FEW_FILES = 12;

    @Override
    public String id() {
        return "quality";
    }

    @Override
    public String title() {
        return "What was read, and how good it is";
    }

    @Override
    public String question() {
        return "Was every row taken up, what was refused, and what would mend it?";
    }

    @Override
    public String howToRead(ReportData data) {
        return "Every row read is accepted, refused, or set aside as a duplicate, and the three must add up to what was read. "
                + "Refused rows are kept with file, line and reason. A finding is a contradiction between rows that are each "
                + "well written; it says what the engine made of it, and what would settle it.";
    }

    @Override
    public void body(Html h, ReportData data) {
        rows(h, data.run());
        quarantine(h, data.run());
        fileDoubts(h, data.run());
        findings(h, data);
        readers(h, data);
        labelled(h, "Settings used", data.run().settings());
        labelled(h, "Versions", data.run().versions());
    }

    private static void rows(Html h, RunFacts run) {
        RowCounts all = run.rows();
        h.element("h3", "Rows");
        if (all.read() == 0) {
            Cells.nothing(h, "No row was read. Check the path given for the logs.");
            return;
        }
        h.element(
                "p",
                Format.count(all.read(), "row") + " read = " + Format.whole(all.accepted()) + " accepted + "
                        + Format.whole(all.quarantined()) + " refused + "
                        + Format.count(all.duplicates(), "duplicate") + ".",
                "class",
                "key");
        if (all.unaccounted() != 0) {
            h.element(
                    "p",
                    "This does not add up: " + Format.count(all.unaccounted(), "row")
                            + " cannot be accounted for. That is a fault of the program; do not act on this report.",
                    "class",
                    "owed");
        }
        files(h, run);
    }

    private static void files(Html h, RunFacts run) {
        List<FileRows> files = run.files().rows().stream()
                .sorted(Comparator.comparing(FileRows::file))
                .toList();
        if (files.isEmpty()) {
            return;
        }
        h.open("details", "open", files.size() <= FEW_FILES ? "open" : null);
        h.element("summary", "Rows by file (" + Format.count(run.files().total(), "file") + ")");
        Cells.cut(h, run.files(), "files");
        new Grid<FileRows>(Grid.Shape.CARDS, "Rows by file")
                .withTools()
                .column("File", (h1, f) -> h1.data(f.file()))
                .count("Read", f -> f.rows().read())
                .count("Accepted", f -> f.rows().accepted())
                .count("Refused", f -> f.rows().quarantined())
                .count("Duplicates", f -> f.rows().duplicates())
                .column(
                        "Adds up",
                        (h1, f) -> h1.text(
                                f.rows().unaccounted() == 0
                                        ? "yes"
                                        : "no: " + Format.whole(f.rows().unaccounted())))
                .write(h, files);
        h.close("details").line();
    }

    private static void quarantine(Html h, RunFacts run) {
        h.element("h3", "Refused rows and how to mend them");
        List<QuarantineGroup> groups = run.quarantine().stream()
                .sorted(Comparator.comparingLong(QuarantineGroup::count)
                        .reversed()
                        .thenComparing(QuarantineGroup::rule))
                .toList();
        if (groups.isEmpty()) {
            Cells.nothing(h, "No row was refused.");
            return;
        }
        new Grid<QuarantineGroup>(Grid.Shape.CARDS, "Refused rows by reason")
                .column("Reason", (h1, g) -> h1.data(g.rule()))
                .count("Rows", QuarantineGroup::count)
                .column("First seen at", (h1, g) -> h1.data(g.example().toString()))
                .column("Value there", (h1, g) -> {
                    if (g.value() == null) {
                        h1.element("span", "the row as a whole", "class", "quiet");
                    } else {
                        h1.open("code").data(g.value()).close();
                    }
                })
                .column("How to mend it", (h1, g) -> h1.data(g.remedy()))
                .write(h, groups);
    }

    private static void fileDoubts(Html h, RunFacts run) {
        if (run.fileDoubts().total() == 0) {
            return;
        }
        h.element("h3", "Doubts about whole files");
        h.element("p", "The rows of these files were used as they stand, but something about the file may be wrong.");
        Cells.cut(h, run.fileDoubts(), "doubts");
        new Grid<FileDoubt>(Grid.Shape.CARDS, "Doubts about whole files")
                .column("File", (h1, d) -> h1.data(d.file()))
                .column("What was found", (h1, d) -> h1.data(d.what()))
                .column("What to do", (h1, d) -> h1.data(d.remedy()))
                .write(h, run.fileDoubts().rows());
    }

    private static void findings(Html h, ReportData data) {
        h.element("h3", "Findings");
        List<FindingGroup> groups = data.findings().stream()
                .filter(g -> g.count() > 0)
                .sorted(Comparator.comparingLong(FindingGroup::count).reversed().thenComparing(FindingGroup::kind))
                .toList();
        if (groups.isEmpty()) {
            Cells.nothing(h, "The accepted rows do not contradict each other.");
            return;
        }
        groups.forEach(g -> {
            h.open("details");
            h.element("summary", Words.of(g.kind()) + " (" + Format.whole(g.count()) + ")");
            if (g.examples().size() < g.count()) {
                h.element(
                        "p",
                        "The first " + Format.whole(g.examples().size()) + "; the table of findings holds all.",
                        "class",
                        "cut");
            }
            new Grid<Finding>(Grid.Shape.CARDS, Words.of(g.kind()) + ": examples")
                    .column("Vehicle", (h1, f) -> h1.data(f.vehicleId()))
                    .column("Place and sensor", (h1, f) -> placeAndSensor(h1, f))
                    .column("Day", (h1, f) -> Cells.day(h1, f.day()))
                    .column("What was found", (h1, f) -> h1.data(f.what()))
                    .column("What was made of it", (h1, f) -> h1.data(f.done()))
                    .column("What would settle it", (h1, f) -> h1.data(f.settle()))
                    .column(
                            "Where",
                            (h1, f) -> h1.data(
                                    f.sources().stream().map(Object::toString).collect(Collectors.joining(", "))))
                    .write(h, g.examples());
            h.close("details").line();
        });
    }

    private static void placeAndSensor(Html h, Finding f) {
        h.data(f.position() == null ? "the vehicle" : Words.place(f.position(), null));
        if (f.sensorId() != null) {
            h.open("span", "class", "under")
                    .open("code")
                    .data(f.sensorId())
                    .close()
                    .close();
        }
    }

    private static void readers(Html h, ReportData data) {
        h.element("h3", "Readers");
        List<ReaderQuality> rows = data.readers().rows().stream()
                .filter(r -> r.of() != ReaderQuality.Of.TECHNICIAN)
                .sorted(Comparator.comparingDouble(ReaderQuality::chance).thenComparing(ReaderQuality::readerId))
                .toList();
        if (rows.isEmpty()) {
            Cells.nothing(h, "No log gives the number of tries together with a reader, so readers cannot be compared.");
            return;
        }
        h.element(
                "p",
                "The chance that one try wakes a sound sensor, over all sensors the reader tried. A slow reader makes sound "
                        + "sensors look weak; its effect is taken off before a sensor is put on the watch list.");
        technicians(h, data);
        Cells.cut(h, data.readers(), "readers");
        new Grid<ReaderQuality>(Grid.Shape.CARDS, "Readers, the slowest first")
                .withTools()
                .column("Reader", (h1, r) -> h1.data(r.readerId()))
                .count("Wheels tried", ReaderQuality::reads)
                .number(
                        "Tries a wheel",
                        ReaderQuality::meanAttempts,
                        (h1, r) -> h1.text(Format.fixed(r.meanAttempts(), 1)))
                .number(
                        "Wakes at one try",
                        ReaderQuality::chance,
                        (h1, r) -> Cells.chance(h1, r.chance(), r.chanceLower(), r.chanceUpper()))
                .column("To know", (h1, r) -> h1.text(toKnow(r)))
                .write(h, rows);
    }

    private static String toKnow(ReaderQuality r) {
        if (!r.slow()) {
            return "nothing amiss";
        }
        return r.of() == ReaderQuality.Of.PAIR
                ? "slower than the others; one technician alone uses it, so it may be the reader or the way it is held"
                : "slower than the others: check its battery and how it is held";
    }

    /** How many, never who: names stay in the table. */
    private static void technicians(Html h, ReportData data) {
        List<ReaderQuality> told = data.readers().rows().stream()
                .filter(r -> r.of() == ReaderQuality.Of.TECHNICIAN)
                .toList();
        if (told.isEmpty()) {
            return;
        }
        long slow = told.stream().filter(ReaderQuality::slow).count();
        h.element(
                "p",
                "Of " + Format.count(told.size(), "technician", "technicians")
                        + " who share readers with colleagues, and so can be told apart from them, "
                        + (slow == 0 ? "none needs" : slow == 1 ? "one needs" : slow + " need")
                        + " more tries than the colleagues with the same readers. That too is taken off before a sensor is "
                        + "suspected; the table reader_quality has the names.");
    }

    private static void labelled(Html h, String title, List<Labelled> pairs) {
        if (pairs.isEmpty()) {
            return;
        }
        h.open("details").element("summary", title);
        h.open("dl", "class", "pairs");
        pairs.forEach(p -> {
            h.open("div").open("dt").data(p.label()).close();
            h.open("dd").data(p.value()).close().close();
        });
        h.close("dl").close("details").line();
    }
}
