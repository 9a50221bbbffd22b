package sensorrounds.report;

import java.util.List;
import java.util.function.Function;
import sensorrounds.backtest.Backtest;
import sensorrounds.backtest.Horizon;
import sensorrounds.backtest.ListKind;
import sensorrounds.backtest.ListRow;
import sensorrounds.backtest.ListRule;

/** The engine's lists against simple rules of the same length. */
final class BacktestLists {
    private static final double WIDTH = 430;
    private static final double LEFT = 132;
    private static final double RIGHT = 408;
    private static final double ROW = 24;
    private static final double TOP = 8;

    private BacktestLists() {}

    static void write(Html h, Backtest b, String currency) {
        Horizon horizon = b.settings().longest();
        h.element(
                        "p",
                        "For each day asked on, the engine's list is taken as long as it was, and every rule picks as many"
                                + " sensors. Where a rule cannot tell sensors apart, its figure is that of drawing among"
                                + " them. Lift is how many times they hit what chance would; saving is at the prices of the"
                                + " settings. A sensor replaced at a stop that happens anyway pays from a small chance: the"
                                + " list that hits most often is not the one that saves most.",
                        "class",
                        "how")
                .line();
        h.open("div", "class", "charts");
        for (ListKind list : ListKind.compared()) {
            chart(h, list, rows(b, list, horizon), horizon);
        }
        h.close("div").line();
        for (ListKind list : ListKind.compared()) {
            h.element("h3", title(list));
            List<ListRow> rows = rows(b, list, horizon);
            if (list != ListKind.ONE_IN_TWENTY && rows.get(0).sensors() == 0) {
                Cells.nothing(h, "The list was empty on every day asked on.");
                continue;
            }
            grid(
                            title(list) + ", all days together, failed within " + BacktestVerdict.words(horizon),
                            currency,
                            r -> words(r.rule()))
                    .write(h, rows);
            if (list == ListKind.REPLACE) {
                List<ListRow> parts = ListKind.parts().stream()
                        .map(part -> b.list(part, ListRule.ENGINE, horizon))
                        .filter(r -> r.sensors() > 0)
                        .toList();
                grid("What the engine's list is made of", currency, r -> title(r.list()))
                        .write(h, parts);
            }
        }
        h.open("details").element("summary", "The same for shorter horizons");
        for (Horizon shorter : b.settings().horizons()) {
            if (shorter != horizon) {
                grid(
                                title(ListKind.ONE_IN_TWENTY) + ": failed within " + BacktestVerdict.words(shorter),
                                currency,
                                r -> words(r.rule()))
                        .write(h, rows(b, ListKind.ONE_IN_TWENTY, shorter));
            }
        }
        h.close("details").line();
    }

    private static List<ListRow> rows(Backtest b, ListKind list, Horizon horizon) {
        return list.rules().stream().map(rule -> b.list(list, rule, horizon)).toList();
    }

    private static Grid<ListRow> grid(String caption, String currency, Function<ListRow, String> name) {
        return new Grid<ListRow>(Grid.Shape.SCROLLS, caption)
                .column("Sensors picked by", (h, r) -> h.text(name.apply(r)))
                .number("Sensors", ListRow::sensors, (h, r) -> h.text(Format.whole(r.sensors())))
                .number("Failed", ListRow::failures, (h, r) -> h.text(Format.whole(r.failures())))
                .number(
                        "Share that failed",
                        r -> r.precision().value(),
                        (h, r) -> Cells.chance(
                                h,
                                r.precision().value(),
                                r.precision().lower(),
                                r.precision().upper()))
                .number(
                        "Saving a sensor",
                        r -> r.saving().value(),
                        (h, r) -> h.text(Format.money(currency, r.saving().value()) + " ("
                                + Format.whole(r.saving().lower()) + " to "
                                + Format.whole(r.saving().upper()) + ")"))
                .number("Saving in all", ListRow::saved, (h, r) -> h.text(Format.money(currency, r.saved())))
                .number("Lift", ListRow::lift, (h, r) -> h.text(Format.figure(r.lift())))
                .number("Of all failures", ListRow::captured, (h, r) -> h.text(Format.chance(r.captured())));
    }

    private static void chart(Html h, ListKind list, List<ListRow> all, Horizon horizon) {
        List<ListRow> rows =
                all.stream().filter(r -> Double.isFinite(r.precision().value())).toList();
        if (rows.isEmpty()) {
            return;
        }
        double floor = TOP + ROW * rows.size();
        h.open("figure", "class", "chart");
        h.element("figcaption", title(list));
        Svg svg = Svg.open(
                h,
                WIDTH,
                floor + 38,
                "Share of the listed sensors that failed within " + BacktestVerdict.words(horizon)
                        + ", for the engine's list and for simple rules; the figures are in the table below",
                "plot");
        for (int tenth = 0; tenth <= 10; tenth += 2) {
            double x = x(tenth / 10.0);
            svg.line(x, TOP, x, floor, tenth == 0 ? "axis" : "grid");
            svg.text(x, floor + 17, "middle", tenth * 10 + " %", "tick");
        }
        svg.text(
                LEFT, floor + 32, "start", "failed within " + BacktestVerdict.words(horizon) + ", 95 % limits", "tick");
        for (int i = 0; i < rows.size(); i++) {
            ListRow r = rows.get(i);
            double y = TOP + ROW * (i + 0.5);
            svg.text(LEFT - 10, y + 4, "end", words(r.rule()), "tick");
            String style = r.rule() == ListRule.ENGINE ? "cohort style-1" : "interval";
            svg.line(x(r.precision().lower()), y, x(r.precision().upper()), y, style);
            svg.circle(x(r.precision().value()), y, 4, "dot");
        }
        svg.close();
        h.close("figure").line();
    }

    private static double x(double share) {
        return LEFT + share * (RIGHT - LEFT);
    }

    private static String title(ListKind list) {
        return switch (list) {
            case REPLACE -> "To be replaced, now or at the next stop";
            case REPLACE_LEADING -> "now: the likeliest to fail of each stop";
            case REPLACE_RIDING_ALONG -> "now: the others of the stop";
            case REPLACE_AT_A_STOP -> "at a stop that happens anyway";
            case REPLACE_AFTER_READING -> "read first, then replaced in any case";
            case SEE_TO_NOW -> "To be seen to now: replaced, or read first";
            case ONE_IN_TWENTY -> "One in twenty of all sensors";
        };
    }

    private static String words(ListRule rule) {
        return switch (rule) {
            case ENGINE -> "the engine's list";
            case HIGHEST_CHANCE -> "highest chance";
            case OLDEST_FIRST -> "oldest first";
            case AT_SEVEN_YEARS -> "at seven years";
            case LAST_REPORT_WEAK -> "last report weak";
            case AT_RANDOM -> "any sensors";
        };
    }
}
