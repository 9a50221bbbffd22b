package sensorrounds.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import sensorrounds.intake.FileDoubt;
import sensorrounds.report.RunFacts.QuarantineGroup;
import sensorrounds.report.RunFacts.RowCounts;

/** What a run says on the terminal when it is done: read, refused, found, what to do first, where the report is. */
public final class RunSummary {
    /** A line fits the narrowest terminal in common use. */
    static final int WIDTH = 100;

    static final int MOST_LINES = 25;
    private static final String INDENT = "         ";
    private static final int REASONS = 2;

    private RunSummary() {}

    /**
     * The summary as plain text, at most 25 lines, each ended by a line feed. Control characters from logs are taken out, so
     * that no value can steer the terminal.
     *
     * @param folder of the run
     */
    public static String text(ReportData data, String folder) {
        Headline head = Headline.of(data);
        List<String> lines = new ArrayList<>();
        RunFacts run = data.run();
        lines.add("Sensor Rounds, as of " + run.asOf() + " (run " + run.runId() + ")");
        read(lines, run);
        found(lines, data, head);
        lines.add("");
        first(lines, data, head);
        lines.add("");
        lines.add("A rank says inspect or offer; it is never a verdict on safety.");
        // The path is printed whole: half of one opens nothing.
        return lines.stream().map(RunSummary::wrapped).collect(Collectors.joining("\n")) + "\nLists:  " + plain(folder)
                + "/lists.xlsx\nReport: " + plain(folder) + "/report.html\n";
    }

    private static void read(List<String> lines, RunFacts run) {
        RowCounts rows = run.rows();
        lines.add("Read     " + Format.count(rows.read(), "row") + " in "
                + Format.count(run.files().total(), "file") + ": "
                + Format.whole(rows.accepted()) + " accepted, " + Format.whole(rows.quarantined()) + " refused, "
                + Format.count(rows.duplicates(), "duplicate"));
        if (rows.unaccounted() != 0) {
            lines.add("         DOES NOT ADD UP: " + Format.whole(rows.unaccounted())
                    + " rows unaccounted for; a fault of the program, do not act on this run");
        }
        run.quarantine().stream()
                .sorted(Comparator.comparingLong(QuarantineGroup::count)
                        .reversed()
                        .thenComparing(QuarantineGroup::rule))
                .limit(REASONS)
                .forEach(g -> lines.add("Refused  " + Format.whole(g.count()) + " × " + g.rule() + ", first at "
                        + g.example() + ": " + g.remedy()));
        if (run.quarantine().size() > REASONS) {
            lines.add("         and " + Format.count(run.quarantine().size() - REASONS, "other reason")
                    + ", all in the report");
        }
        if (run.fileDoubts().total() > 0) {
            FileDoubt first = run.fileDoubts().rows().get(0);
            lines.add("Doubted  " + Format.count(run.fileDoubts().total(), "file") + ", read as written; first "
                    + first.file() + ": " + first.what());
        }
    }

    private static void found(List<String> lines, ReportData data, Headline head) {
        lines.add("Found    " + Format.count(data.run().vehicles(), "vehicle") + ", "
                + Format.count(data.run().sensorsInService(), "sensor") + " in service, "
                + Format.count(data.fits().size(), "fitted cohort") + ", "
                + Format.count(head.weakFits().size(), "fit", "fits") + " with a caution");
        lines.add("         " + Format.count(head.recurringCount(), "vehicle") + " with a returning warning, "
                + Format.count(data.watch().total(), "sensor") + " to watch");
    }

    private static void first(List<String> lines, ReportData data, Headline head) {
        String currency = data.run().costs().currency();
        List<String> steps = new ArrayList<>();
        if (head.unmonitoredWheels() + head.silentWheels() + head.systemWarnings() > 0) {
            steps.add("Tell the drivers, gauge by hand: no low-pressure warning on "
                    + Format.count(head.unmonitoredWheels(), "wheel") + " known, "
                    + Format.whole(head.silentWheels()) + " probably; system warning on at "
                    + Format.count(head.systemWarnings(), "vehicle"));
        }
        if (head.now() > 0) {
            steps.add("Replace " + Format.count(head.now(), "sensor") + " on "
                    + Format.count(head.vehiclesNow(), "vehicle") + " now for "
                    + Format.money(currency, head.outlayNow())
                    + ", saving " + Format.money(currency, head.savingNow()) + "; begin with "
                    + head.firstVehicles().stream()
                            .map(v -> v.vehicleId() + " (" + v.sensors() + ")")
                            .collect(Collectors.joining(", ")));
        }
        if (head.readFirst() > 0) {
            steps.add("Go and read " + Format.count(head.readFirst(), "vehicle") + " before anything is fitted there");
        }
        head.worstRecurring()
                .ifPresent(v -> steps.add("Look closer at " + v.vehicleId() + ", whose warning returns"
                        + v.suspects().stream()
                                .findFirst()
                                .map(s -> ": " + RecurringSection.suspectName(s) + ", " + Format.sure(s.probability()))
                                .orElse("")));
        if (!head.owed().isEmpty()) {
            steps.add("Prove " + Format.count(head.owedCount(), "repair") + " by a drive; oldest: "
                    + head.owed().get(0).vehicleId() + ", "
                    + Format.count(
                            FollowUpSection.daysOpen(
                                    head.owed().get(0), data.run().asOf()),
                            "day")
                    + (head.outcomesMissing() == 0
                            ? ""
                            : "; " + Format.whole(head.outcomesMissing()) + " by asking the driver alone"));
        }
        if (!head.orders().isEmpty()) {
            steps.add("Order " + Format.count(head.piecesToOrder(), "piece") + ", about "
                    + Format.money(currency, head.orderCost()));
        }
        if (data.run().rows().read() == 0) {
            lines.add("No row was read: check the path given for the logs.");
        } else {
            lines.add(steps.isEmpty() ? "Nothing needs doing now." : "Do first");
        }
        for (int i = 0; i < steps.size(); i++) {
            lines.add("  " + (i + 1) + ". " + steps.get(i));
        }
    }

    /** At most two lines, broken at a space where there is one; what is longer still is cut. */
    private static String wrapped(String line) {
        String plain = plain(line);
        if (plain.length() <= WIDTH) {
            return plain;
        }
        int space = plain.lastIndexOf(' ', WIDTH);
        int cut = space > INDENT.length() * 2 ? space : WIDTH;
        String rest = INDENT + plain.substring(cut).strip();
        return plain.substring(0, cut).stripTrailing() + "\n"
                + (rest.length() <= WIDTH ? rest : rest.substring(0, end(rest)) + " …");
    }

    /** The last word that fits, with room for the mark of the cut; within the word when it alone is too long. */
    private static int end(String rest) {
        int space = rest.lastIndexOf(' ', WIDTH - 2);
        return space > INDENT.length() ? space : WIDTH - 2;
    }

    /** Without control and format characters; typographic spaces become plain ones, which every terminal has. */
    static String plain(String text) {
        return typed(text).replaceAll("[\\p{Cc}\\p{Cf}]", "?");
    }

    /** With plain spaces for typographic ones. */
    static String typed(String text) {
        return text.replaceAll("[\u00a0\u202f]", " ");
    }
}
