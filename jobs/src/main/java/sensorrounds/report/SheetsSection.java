package sensorrounds.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import sensorrounds.replacement.Advice;
import sensorrounds.replacement.RankedReplacement;
import sensorrounds.report.RoundSheet.Task;
import sensorrounds.report.RoundSheet.VehicleTasks;
import sensorrounds.report.RoundSheet.Weight;
import sensorrounds.rounds.RoundCall;
import sensorrounds.rounds.RoundStop;
import sensorrounds.rounds.RoundWeek;

/** The sheets to print: one for each depot, by vehicle, with boxes to tick. */
final class SheetsSection implements Section {
    /** Tasks on all sheets together that a page can carry. Over it, the depots that no longer fit have no sheet here. */
    private static final int MOST_TASKS = 5000;

    @Override
    public boolean needsWholeLists() {
        return true;
    }

    @Override
    public String id() {
        return "sheets";
    }

    @Override
    public String title() {
        return "Sheets to print";
    }

    @Override
    public String question() {
        return "What does the crew take along?";
    }

    @Override
    public String howToRead(ReportData data) {
        return "Each depot has so many minutes a week. Booked stops are counted first, then vehicles with a wheel known to give no "
                + "warning, then those the list asks for, by what they save. The rounds are at most so far from the best possible "
                + "as the table says; what is left waits for later weeks. One sheet for each depot holds the round of the first "
                + "week, and behind it what else is asked at its vehicles, from all lists above. Open a sheet and print: only that sheet comes out. "
                + "Printing with none open prints the whole report with every sheet on pages of its own.";
    }

    @Override
    public void body(Html h, ReportData data) {
        List<RoundSheet> all = RoundSheet.of(data);
        List<RoundSheet> sheets = fitting(all, data);
        if (all.isEmpty()) {
            Cells.nothing(h, "No list above asks for anything at a vehicle, so there is no sheet to print.");
            return;
        }
        rounds(h, data);
        h.open("ul", "class", "sheet-list");
        for (int i = 0; i < sheets.size(); i++) {
            RoundSheet sheet = sheets.get(i);
            h.open("li").open("a", "href", "#" + anchor(i));
            h.data(name(sheet)).close();
            h.text(": " + Format.count(sheet.vehicles().size(), "vehicle") + ", "
                    + Format.count(sheet.taskCount(), "task"));
            h.close("li");
        }
        h.close("ul").line();
        if (sheets.size() < all.size()) {
            h.element(
                            "p",
                            "Sheets of " + Format.count(all.size() - sheets.size(), "more depot")
                                    + " do not fit on this page; the lists of lists.xlsx, filtered by depot, hold what is asked there.",
                            "class",
                            "cut")
                    .line();
        }
        for (int i = 0; i < sheets.size(); i++) {
            sheet(h, data, sheets.get(i), anchor(i));
        }
    }

    /** Whole sheets only, as many as fit, the first in any case; none whose round the page was not given. */
    private static List<RoundSheet> fitting(List<RoundSheet> all, ReportData data) {
        Set<String> given = data.decisions().firstWeek().stream()
                .map(RoundStop::depot)
                .map(SheetsSection::key)
                .collect(Collectors.toSet());
        Set<String> withRound = data.decisions().rounds().stream()
                .filter(w -> w.week() == 1 && w.vehicles() > 0)
                .map(w -> key(w.depot()))
                .collect(Collectors.toSet());
        List<RoundSheet> fitting = new ArrayList<>();
        long tasks = 0;
        for (RoundSheet sheet : all) {
            boolean known = given.contains(key(sheet.depot())) || !withRound.contains(key(sheet.depot()));
            if (known && (fitting.isEmpty() || tasks + sheet.taskCount() <= MOST_TASKS)) {
                tasks += sheet.taskCount();
                fitting.add(sheet);
            }
        }
        return fitting;
    }

    private static String key(String depot) {
        return depot == null ? "" : depot;
    }

    private static void rounds(Html h, ReportData data) {
        if (data.decisions().rounds().isEmpty()) {
            return;
        }
        String currency = data.run().costs().currency();
        new Grid<RoundWeek>(Grid.Shape.CARDS, "Rounds by depot and week")
                .withTools()
                .marks(w -> Cells.depotMark(w.depot()))
                .column("Depot", (h1, w) -> h1.data(w.depot() == null ? "no depot on record" : w.depot()))
                .column("Week", (h1, w) -> h1.text(w.week() + ": " + w.from() + " to " + w.to()))
                .number("Vehicles", RoundWeek::vehicles, SheetsSection::vehicles)
                .count("Wheels", RoundWeek::wheels)
                .number("Minutes", RoundWeek::minutes, SheetsSection::minutes)
                .number("Saving", RoundWeek::saving, (h1, w) -> h1.text(Format.money(currency, w.saving())))
                .number(
                        "From the best at most",
                        RoundWeek::gap,
                        (h1, w) -> h1.text(w.gap() < 0.0005 ? "nothing" : Format.chance(w.gap())))
                .count("Left for later", RoundWeek::left)
                .write(
                        h,
                        data.decisions().rounds().stream()
                                .filter(w -> w.vehicles() > 0 || w.left() > 0)
                                .toList());
    }

    private static void vehicles(Html h, RoundWeek w) {
        h.text(Format.whole(w.vehicles()));
        if (w.booked() > 0) {
            h.element("span", Format.whole(w.booked()) + " booked anyway", "class", "under");
        }
    }

    private static void minutes(Html h, RoundWeek w) {
        h.text(Format.whole(Math.round(w.minutes())) + " of " + Format.whole(Math.round(w.capacity())));
        if (w.minutes() > w.capacity()) {
            h.element("span", "more than there is", "class", "under");
        }
    }

    private static void sheet(Html h, ReportData data, RoundSheet sheet, String anchor) {
        h.open("article", "class", "sheet", "id", anchor, "aria-labelledby", anchor + "-title");
        h.open("h3", "id", anchor + "-title")
                .text("Round sheet: ")
                .data(name(sheet))
                .close();
        h.open("p", "class", "under");
        h.text("As of " + data.run().asOf() + ", run ").data(data.run().runId());
        h.text(". Pressures by placard or handbook only. A place on this sheet is no verdict on safety. ");
        if (moreIsAsked(data)) {
            h.text("Replacements at vehicles that are not on the round: only those among the first "
                    + Format.whole(data.ranked().rows().size()) + " of "
                    + Format.whole(data.ranked().total())
                    + " lines of the whole list stand here; ranked-replacements.csv holds the depot's others. ");
        }
        h.element("a", "Close this sheet", "href", "#sheets", "class", "screen-only");
        h.element("button", "Print this sheet", "type", "button", "class", "print-sheet", "hidden", "hidden");
        h.close("p").line();
        // Spelled-out roles: laid out as blocks on a phone, a table loses them for screen readers.
        h.open("table", "class", "tasks", "role", "table");
        h.open("caption", "class", "unseen")
                .text("Tasks by vehicle, depot ")
                .data(name(sheet))
                .close();
        h.open("thead", "role", "rowgroup").open("tr", "role", "row");
        List.of("Done", "Place", "Task", "Sensor and part", "Found, fitted")
                .forEach(head -> h.element("th", head, "scope", "col", "role", "columnheader"));
        h.close("tr").close("thead").line();
        boolean onRound = sheet.vehicles().stream().anyMatch(v -> v.stop() != null);
        for (VehicleTasks v : sheet.vehicles()) {
            if (onRound && v.stop() == null) {
                h.open("tbody", "role", "rowgroup").open("tr", "class", "part-row", "role", "row");
                h.element(
                        "th",
                        "Not on this week’s round: only if the vehicle comes in",
                        "scope",
                        "rowgroup",
                        "colspan",
                        "5",
                        "role",
                        "rowheader");
                h.close("tr").close("tbody").line();
                onRound = false;
            }
            vehicle(h, data, v);
        }
        h.close("table").close("article").line();
    }

    /** What asks for something leads the list; so nothing is missing unless its last line here still asks. */
    private static boolean moreIsAsked(ReportData data) {
        List<RankedReplacement> rows = data.ranked().rows();
        return data.ranked().cut()
                && !rows.isEmpty()
                && rows.get(rows.size() - 1).advice().urgency().compareTo(Advice.Urgency.WHEN_IT_SUITS) <= 0;
    }

    private static void vehicle(Html h, ReportData data, VehicleTasks v) {
        h.open("tbody", "role", "rowgroup").open("tr", "class", "vehicle-row", "role", "row");
        h.open("th", "scope", "rowgroup", "colspan", "5", "role", "rowheader");
        h.open("span", "class", "vehicle-name").data(v.vehicleId()).close();
        h.open("span", "class", "under")
                .text(v.stop() == null ? "" : onRound(v.stop()))
                .text(
                        v.weight() == Weight.WHILE_THERE && v.stop() == null
                                ? "only if it is in anyway; next booked stop: "
                                : "next booked stop: ");
        Cells.dayOr(h, data.nextPlannedVisits().get(v.vehicleId()), "none booked");
        h.close().close("th").close("tr");
        v.tasks().forEach(t -> task(h, t));
        h.close("tbody").line();
    }

    private static String onRound(RoundStop stop) {
        return "stop " + stop.order() + " of the round, about " + Math.round(stop.minutes()) + " minutes"
                + (stop.call().kind() == RoundCall.Kind.BOOKED ? ", it stands anyway" : "") + "; ";
    }

    private static void task(Html h, Task t) {
        h.open("tr", "role", "row").open("td", "class", "tick", "role", "cell");
        h.element("span", "☐", "aria-label", "to be ticked", "role", "img").close();
        h.open("td", "class", "place", "role", "cell").data(t.place() == null ? "Vehicle" : t.place());
        h.close().open("td", "role", "cell");
        h.element("span", t.what(), "class", "key");
        h.open("span", "class", "under").data(t.detail()).close().close();
        h.open("td", "class", "sensor", "role", "cell");
        if (t.sensorId() != null) {
            h.open("code").data(t.sensorId()).close();
        }
        if (t.part() != null) {
            h.open("span", "class", "under").text("take along ").data(t.part()).close();
        }
        h.close().empty("td", "class", "blank", "role", "cell").close("tr");
    }

    private static String name(RoundSheet sheet) {
        return sheet.depot() == null ? "vehicles without a depot on record" : sheet.depot();
    }

    /** Numbered, since a depot's name may hold anything. */
    private static String anchor(int i) {
        return "sheet-" + (i + 1);
    }
}
