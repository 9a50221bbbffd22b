package sensorrounds.report;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sensorrounds.backtest.Backtest;
import sensorrounds.backtest.StockRow;

/** Demand for parts against the sensors that crews fitted. */
final class BacktestStock {
    private BacktestStock() {}

    private record Part(String part, List<StockRow> months) {
        double expected() {
            return months.stream().mapToDouble(StockRow::expected).sum();
        }

        long fitted() {
            return months.stream().mapToLong(StockRow::fitted).sum();
        }

        long inside() {
            return months.stream().filter(StockRow::inside).count();
        }
    }

    static void write(Html h, Backtest b) {
        h.element(
                        "p",
                        "What was expected for each month after a day asked on, against the sensors fitted in it. The two"
                                + " are not quite the same: the outlook counts a sensor when it fails and takes the list as"
                                + " followed, while crews fit one when they find a dead sensor, and for other reasons too.",
                        "class",
                        "how")
                .line();
        Map<String, List<StockRow>> byPart =
                b.stock().stream().collect(Collectors.groupingBy(StockRow::partId, TreeMap::new, Collectors.toList()));
        new Grid<Part>(Grid.Shape.CARDS, "Months of demand by part, all depots and days asked on together")
                .column("Part", (h1, p) -> h1.data(p.part()))
                .count("Months", p -> p.months().size())
                .number("Pieces expected", Part::expected, (h1, p) -> h1.text(Format.fixed(p.expected(), 1)))
                .count("Pieces fitted", Part::fitted)
                .number(
                        "Months inside 90 % interval",
                        p -> (double) p.inside() / p.months().size(),
                        (h1, p) -> h1.text(Format.share(p.inside(), p.months().size())))
                .write(
                        h,
                        byPart.entrySet().stream()
                                .map(e -> new Part(e.getKey(), e.getValue()))
                                .toList());
    }
}
