package sensorrounds.report;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sensorrounds.fleet.Part;
import sensorrounds.stock.StockOutlook;

/** Section 8: demand by part, depot and month, and what to order. */
final class StockSection implements Section {
    /** Charts drawn; the tables hold every part and depot. */
    static final int CHARTS = 12;

    private record Key(String partId, String depot) {}

    @Override
    public String id() {
        return "stock";
    }

    @Override
    public String title() {
        return "Stock outlook";
    }

    @Override
    public String question() {
        return "What must be on the shelf in the coming months, and what should be ordered now?";
    }

    @Override
    public String howToRead(ReportData data) {
        return "Planned are the pieces that the replacement list asks for: now, at a stop booked in the month, and for sensors known "
                + "dead; the others are left to chance. Before the months stands what has failed since it last answered and nobody "
                + "has found. The expected figure is the average over all that may happen; with chance nine in ten the demand lies "
                + "within the interval, the uncertainty of the fitted curves included. The service-level figure is the one to hold, and orders are rounded up to whole "
                + "packs. The sum over a fleet is surer than any single sensor’s date, so these figures can be planned with.";
    }

    @Override
    public void body(Html h, ReportData data) {
        if (data.stock().isEmpty()) {
            Cells.nothing(
                    h,
                    "There is no stock outlook: no sensor in service has both a known part and an outlook. "
                            + "Filling in parts in the fleet register or the logs would give one.");
            return;
        }
        orders(h, data);
        charts(h, data);
        months(h, data);
    }

    private static void orders(Html h, ReportData data) {
        h.element("h3", "Orders to place now");
        long unknown = groups(data.stock()).values().stream()
                .filter(g -> g.stream().allMatch(s -> s.onHand() == null))
                .count();
        if (unknown > 0) {
            h.element(
                    "p",
                    "For " + Format.count(unknown, "pair")
                            + " of part and depot nobody wrote down what is on hand, so no "
                            + "order is proposed there.",
                    "class",
                    "cut");
        }
        List<StockOrders.Order> orders = StockOrders.of(data.stock(), data.parts());
        if (orders.isEmpty()) {
            Cells.nothing(
                    h,
                    "Where stock is known, what is on hand meets the service level until the next delivery: nothing to order now.");
            return;
        }
        String currency = data.run().costs().currency();
        new Grid<StockOrders.Order>(Grid.Shape.CARDS, "Orders by part and depot")
                .withTools()
                .marks(o -> Cells.depotMark(o.depot().isEmpty() ? null : o.depot()))
                .column("Part", (h1, o) -> part(h1, o.partId(), o.part()))
                .column("Depot", (h1, o) -> depot(h1, o.depot().isEmpty() ? null : o.depot()))
                .number(
                        "Pieces",
                        StockOrders.Order::pieces,
                        (h1, o) -> h1.element("span", Format.whole(o.pieces()), "class", "key"))
                .number("Cost", StockOrders.Order::cost, (h1, o) -> h1.text(Format.money(currency, o.cost())))
                .column(
                        "Lead time",
                        (h1, o) -> h1.text(
                                o.part() == null
                                        ? Format.NONE
                                        : Format.count(o.part().leadTimeDays(), "day")))
                .column("Can be replaced by", (h1, o) -> substitutes(h1, o.part()))
                .write(h, orders);
    }

    private static void charts(Html h, ReportData data) {
        Map<Key, List<StockOutlook>> groups = groups(data.stock());
        List<Key> largest = groups.keySet().stream()
                .sorted(Comparator.comparingDouble((Key k) -> groups.get(k).stream()
                                .mapToDouble(StockOutlook::expected)
                                .sum())
                        .reversed())
                .limit(CHARTS)
                .toList();
        h.element("h3", "Demand by month");
        if (groups.size() > CHARTS) {
            h.element(
                    "p",
                    "The " + CHARTS + " of " + Format.whole(groups.size())
                            + " pairs of part and depot with most demand are drawn; the table holds all.",
                    "class",
                    "cut");
        }
        Map<String, Part> parts = StockOrders.byId(data.parts());
        h.open("div", "class", "charts");
        largest.forEach(k -> new StockChart(groups.get(k)).write(h, title(k, parts.get(k.partId()))));
        h.close("div").line();
    }

    private static void months(Html h, ReportData data) {
        Map<String, Part> parts = StockOrders.byId(data.parts());
        List<StockOutlook> rows =
                groups(data.stock()).values().stream().flatMap(List::stream).toList();
        h.open("details").element("summary", "All parts, depots and months as a table");
        new Grid<StockOutlook>(Grid.Shape.CARDS, "Demand by part, depot and month")
                .withTools()
                .marks(s -> Cells.depotMark(s.depot()))
                .column("Part", (h1, s) -> part(h1, s.partId(), parts.get(s.partId())))
                .column("Depot", (h1, s) -> depot(h1, s.depot()))
                .column("Month", (h1, s) -> h1.text(period(s)))
                .count("Planned", StockOutlook::planned)
                .number("Expected", StockOutlook::expected, (h1, s) -> h1.text(Format.fixed(s.expected(), 1)))
                .number(
                        "90 % interval",
                        StockOutlook::upper,
                        (h1, s) -> h1.text(Format.whole(s.lower()) + "–" + Format.whole(s.upper())))
                .count("For service level", StockOutlook::serviceLevelPieces)
                .number("On hand", s -> orNaN(s.onHand()), (h1, s) -> h1.text(orDash(s.onHand())))
                .number("Order now", s -> orNaN(s.proposedOrder()), (h1, s) -> h1.text(orDash(s.proposedOrder())))
                .count("Sensors", StockOutlook::sensors)
                .write(h, rows);
        h.close("details").line();
    }

    /** By part and depot, each by month. */
    private static Map<Key, List<StockOutlook>> groups(List<StockOutlook> stock) {
        Comparator<Key> order = Comparator.comparing(Key::partId)
                .thenComparing(Key::depot, Comparator.nullsLast(Comparator.naturalOrder()));
        return stock.stream()
                .sorted(Comparator.comparing(StockOutlook::to))
                .collect(Collectors.groupingBy(
                        s -> new Key(s.partId(), s.depot()), () -> new TreeMap<>(order), Collectors.toList()));
    }

    private static String period(StockOutlook s) {
        if (s.alreadyFailed()) {
            return "failed, not found";
        }
        return s.from().getDayOfMonth() == 1
                ? s.month().toString()
                : s.month() + " from day " + s.from().getDayOfMonth();
    }

    private static String title(Key k, Part part) {
        String name = part == null ? k.partId() : part.description() + " (" + k.partId() + ")";
        return name + ", " + (k.depot() == null ? "no depot on record" : k.depot());
    }

    private static void part(Html h, String partId, Part part) {
        h.open("span", "class", "key").data(partId).close();
        h.open("span", "class", "under");
        if (part == null) {
            h.text("not in the parts list");
        } else {
            h.data(part.description());
        }
        h.close();
    }

    private static void depot(Html h, String depot) {
        h.data(depot == null ? "no depot on record" : depot);
    }

    private static void substitutes(Html h, Part part) {
        if (part == null || part.substitutes().isEmpty()) {
            h.text("nothing on record");
        } else {
            h.data(String.join(", ", part.substitutes()));
        }
    }

    private static double orNaN(Integer n) {
        return n == null ? Double.NaN : n;
    }

    private static String orDash(Integer n) {
        return n == null ? Format.NONE : Format.whole(n);
    }
}
