package sensorrounds.report;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sensorrounds.stock.BudgetMonth;

/** Section 9: what each depot is expected to spend, month by month. */
final class BudgetSection implements Section {
    /** Charts drawn; the table holds every depot. */
    private static final int CHARTS = 12;

    private static final Comparator<String> DEPOTS = Comparator.nullsLast(Comparator.naturalOrder());

    @Override
    public String id() {
        return "budget";
    }

    @Override
    public String title() {
        return "Budget outlook";
    }

    @Override
    public String question() {
        return "What will each depot spend on sensors in the coming months?";
    }

    @Override
    public String howToRead(ReportData data) {
        return "Planned are the pieces that the list asks for now, at stops booked in the month and for sensors known dead, with the "
                + "work on their wheels; bringing vehicles in for them, and reading, falls into the first month. Failures are those "
                + "that nothing planned forestalls, with a call-out where one comes before the next stop; the first month also "
                + "holds what has failed already and nobody has found. With chance nine in ten the cost lies within the interval. "
                + "Pieces are those of the stock outlook, at the prices of the parts list as they are today; stops are those of the "
                + "replacement list. What is ordered for stock is not a cost here until it is fitted.";
    }

    @Override
    public void body(Html h, ReportData data) {
        List<BudgetMonth> rows = data.decisions().budget();
        if (rows.isEmpty()) {
            Cells.nothing(h, "There is no budget outlook: nothing is planned and no sensor in service has an outlook.");
            return;
        }
        String currency = data.run().costs().currency();
        Map<String, List<BudgetMonth>> depots = new TreeMap<>(DEPOTS);
        rows.forEach(
                r -> depots.computeIfAbsent(r.depot(), d -> new ArrayList<>()).add(r));
        total(h, rows, currency);
        h.open("div", "class", "charts");
        depots.entrySet().stream()
                .sorted(Comparator.comparingDouble((Map.Entry<String, List<BudgetMonth>> e) -> -e.getValue().stream()
                        .mapToDouble(BudgetMonth::expected)
                        .sum()))
                .limit(CHARTS)
                .forEach(e -> new BudgetChart(e.getValue(), currency).write(h, name(e.getKey())));
        h.close("div").line();
        if (depots.size() > CHARTS) {
            h.element(
                    "p",
                    "The " + CHARTS + " of " + Format.whole(depots.size())
                            + " depots with most cost are drawn; the table " + "holds all.",
                    "class",
                    "cut");
        }
        table(h, rows, currency);
    }

    private static void total(Html h, List<BudgetMonth> rows, String currency) {
        Map<YearMonth, Double> months = rows.stream()
                .collect(Collectors.groupingBy(
                        BudgetMonth::month, TreeMap::new, Collectors.summingDouble(BudgetMonth::expected)));
        double planned =
                rows.stream().mapToDouble(r -> r.plannedCost() + r.comingIn()).sum();
        double all = months.values().stream().mapToDouble(v -> v).sum();
        h.element(
                "p",
                "Over " + Format.count(months.size(), "month") + " and all depots " + Format.money(currency, all)
                        + " are expected, " + Format.money(currency, planned) + " of it planned; "
                        + months.entrySet().stream()
                                .map(e -> e.getKey() + " " + Format.money(currency, e.getValue()))
                                .collect(Collectors.joining(", "))
                        + ".");
    }

    private static void table(Html h, List<BudgetMonth> rows, String currency) {
        new Grid<BudgetMonth>(Grid.Shape.CARDS, "Expected cost by depot and month")
                .withTools()
                .marks(b -> Cells.depotMark(b.depot()))
                .column("Depot", (h1, b) -> h1.data(name(b.depot())))
                .column("Month", (h1, b) -> h1.text(b.month().toString()))
                .number(
                        "Expected",
                        BudgetMonth::expected,
                        (h1, b) -> h1.element("span", Format.money(currency, b.expected()), "class", "key"))
                .number(
                        "90 % interval",
                        BudgetMonth::upper,
                        (h1, b) ->
                                h1.text(Format.money(currency, b.lower()) + " to " + Format.money(currency, b.upper())))
                .count("Pieces planned", BudgetMonth::plannedPieces)
                .number(
                        "Planned work",
                        BudgetMonth::plannedCost,
                        (h1, b) -> h1.text(Format.money(currency, b.plannedCost())))
                .number("Coming in", BudgetMonth::comingIn, (h1, b) -> h1.text(Format.money(currency, b.comingIn())))
                .number("Failures", BudgetMonth::failures, (h1, b) -> h1.text(Format.fixed(b.failures(), 1)))
                .number(
                        "Their cost",
                        BudgetMonth::failureCost,
                        (h1, b) -> h1.text(Format.money(currency, b.failureCost())))
                .write(h, rows);
    }

    private static String name(String depot) {
        return depot == null ? "no depot on record" : depot;
    }
}
