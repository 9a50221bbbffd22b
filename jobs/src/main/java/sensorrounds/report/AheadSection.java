package sensorrounds.report;

import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import sensorrounds.analyst.LifeAheadRow;
import sensorrounds.survival.Estimate;

/** For the analyst: what a report on a day says about the months after it. */
final class AheadSection implements Section {
    /** Failures under which a group's figures are too loose to be drawn. */
    private static final double LEAST_DRAWN = 5;

    /** Limits of a median further apart than this, one to the other, say nothing. */
    private static final double LOOSE = 100;

    private static final Comparator<LifeAheadRow> ORDER = Comparator.comparing(
                    LifeAheadRow::ageDays, Comparator.nullsLast(Comparator.naturalOrder()))
            .thenComparing(LifeAheadRow::report, Comparator.nullsLast(Comparator.naturalOrder()))
            .thenComparing(LifeAheadRow::firstLow, Comparator.nullsFirst(Comparator.naturalOrder()));

    @Override
    public String id() {
        return "ahead";
    }

    @Override
    public String title() {
        return "Life still ahead";
    }

    @Override
    public String question() {
        return "What does a report on one day say about the months after it?";
    }

    @Override
    public String howToRead(ReportData data) {
        return "Sensors are put into groups by what was known on a day; only what came after that day counts, so a report is "
                + "never taken for a sign of the failure it stands beside. The share still working after a year is a Weibull "
                + "law fitted to the time after the day, with 95 % limits. The limits take each sensor as standing for itself; "
                + "sensors of one vehicle often fail alike, so the true ones are somewhat wider. The same sensor may stand at "
                + "several ages. The figures say what followed a report, not that the report was the reason.";
    }

    @Override
    public void body(Html h, ReportData data) {
        List<LifeAheadRow> rows = data.survival().ahead().stream().sorted(ORDER).toList();
        if (rows.isEmpty()) {
            Cells.nothing(h, "No sensor was read at a landmark age and again later, so nothing can be told.");
            return;
        }
        List<LifeAheadRow> ages = rows.stream().filter(r -> r.ageDays() != null).toList();
        List<LifeAheadRow> lows = rows.stream().filter(r -> r.ageDays() == null).toList();
        h.open("div", "class", "charts");
        for (int age : new TreeSet<>(ages.stream().map(LifeAheadRow::ageDays).toList())) {
            AheadChart.write(
                    h,
                    "From age " + years(age) + ", by last report",
                    ages.stream()
                            .filter(r -> r.ageDays() == age)
                            .filter(AheadSection::drawn)
                            .toList());
        }
        AheadChart.write(
                h,
                "From the first low report, by how it came about",
                lows.stream()
                        .filter(r -> r.firstLow() != null)
                        .filter(AheadSection::drawn)
                        .toList());
        h.close("div").line();
        atAges(h, ages);
        afterLow(h, lows);
    }

    private static boolean drawn(LifeAheadRow row) {
        return row.failures() >= LEAST_DRAWN && Double.isFinite(row.median().value());
    }

    private static void atAges(Html h, List<LifeAheadRow> rows) {
        if (rows.isEmpty()) {
            return;
        }
        h.element("h3", "At an age, by last report");
        Grid<LifeAheadRow> grid = new Grid<LifeAheadRow>(
                        Grid.Shape.CARDS, "Life ahead from the last visit in the year before an age")
                .number("Age", LifeAheadRow::ageDays, (h1, r) -> h1.text(years(r.ageDays())))
                .column("Last report", (h1, r) -> h1.text(Words.of(r.report())));
        figures(grid).write(h, rows);
    }

    private static void afterLow(Html h, List<LifeAheadRow> rows) {
        h.element("h3", "After a first low battery report");
        if (rows.isEmpty()) {
            Cells.nothing(h, "No battery was reported low and its sensor met again.");
            return;
        }
        Grid<LifeAheadRow> grid = new Grid<LifeAheadRow>(
                        Grid.Shape.CARDS, "Life ahead from the day a battery was first reported low")
                .column("First low report", (h1, r) -> h1.text(AheadChart.words(r)))
                .count("Good again later", LifeAheadRow::recovered);
        figures(grid).write(h, rows);
    }

    private static Grid<LifeAheadRow> figures(Grid<LifeAheadRow> grid) {
        return grid.count("Sensors", r -> Math.round(r.lives()))
                .count("Failed", r -> Math.round(r.failures()))
                .number("Working after a year", r -> r.yearAhead().value(), (h, r) -> {
                    Estimate e = r.yearAhead();
                    Cells.chance(h, e.value(), e.lower(), e.upper());
                })
                .number("Half have failed after", r -> r.median().value(), AheadSection::median)
                .column("To know", (h, r) -> h.text(toKnow(r)));
    }

    private static void median(Html h, LifeAheadRow r) {
        if (!Double.isFinite(r.median().value())) {
            h.text(Format.NONE);
            return;
        }
        if (!r.medianSeen()) {
            h.element("span", "more than " + span(r.lastDay()), "class", "key");
            h.element("span", "as long as any was watched", "class", "under");
            return;
        }
        if (r.median().upper() > LOOSE * r.median().lower()) {
            h.text("not determined");
            return;
        }
        h.element("span", span(r.median().value()), "class", "key");
        h.element("span", span(r.median().lower()) + " to " + span(r.median().upper()), "class", "under");
    }

    private static String toKnow(LifeAheadRow r) {
        if (!r.note().isEmpty()) {
            return "no law: " + Words.ofName(r.status().name());
        }
        return r.failures() < LEAST_DRAWN ? "few failures: rough" : "–";
    }

    static String years(int days) {
        return Format.count(Math.round(Format.inYears(days)), "year");
    }

    private static String span(double days) {
        return days < 60 ? Format.count(Math.round(days), "day") : Format.age((int) Math.min(days, 36525));
    }
}
