package sensorrounds.report;

import java.util.List;
import sensorrounds.stock.BudgetMonth;

/** Cost of one depot by month: a broad stroke for what is planned, a dot for what is expected, a bar for its interval. */
final class BudgetChart {
    private static final double WIDTH = 430;
    private static final double HEIGHT = 220;
    private static final double LEFT = 52;
    private static final double RIGHT = WIDTH - 12;
    private static final double TOP = 30;
    private static final double FLOOR = 180;

    private final List<BudgetMonth> months;
    private final String currency;
    private final int most;

    /** @param months of one depot in order, at least one */
    BudgetChart(List<BudgetMonth> months, String currency) {
        this.months = months;
        this.currency = currency;
        this.most = (int) Math.ceil(Math.max(
                1, months.stream().mapToDouble(BudgetMonth::upper).max().orElse(1)));
    }

    void write(Html h, String title) {
        h.open("figure", "class", "chart");
        h.open("figcaption").data(title).close();
        Svg svg = Svg.open(
                h, WIDTH, HEIGHT, "Expected cost by month, " + title + "; the figures are in the table below", "plot");
        key(svg);
        int step = StockChart.tickStep(most);
        for (int n = 0; n <= most; n += step) {
            svg.line(LEFT, y(n), RIGHT, y(n), n == 0 ? "axis" : "grid");
            svg.text(LEFT - 5, y(n) + 4, "end", Format.whole(n), "tick");
        }
        int every = (months.size() + 7) / 8;
        for (int i = 0; i < months.size(); i++) {
            month(svg, i);
            if (i % every == 0) {
                svg.text(x(i), FLOOR + 17, "middle", months.get(i).month().toString(), "tick");
            }
        }
        svg.text(LEFT, FLOOR + 34, "start", currency + " by month", "tick");
        svg.close();
        h.empty("p", "class", "readout", "aria-hidden", "true");
        h.close("figure").line();
    }

    private void key(Svg svg) {
        double y = 12;
        svg.circle(LEFT + 4, y, 3.5, "dot").text(LEFT + 12, y + 4, "start", "expected", "tick");
        svg.line(LEFT + 84, y - 6, LEFT + 84, y + 6, "interval");
        svg.line(LEFT + 80, y - 6, LEFT + 88, y - 6, "interval").line(LEFT + 80, y + 6, LEFT + 88, y + 6, "interval");
        svg.text(LEFT + 94, y + 4, "start", "90 % interval", "tick");
        svg.line(LEFT + 190, y + 6, LEFT + 190, y - 6, "planned").text(LEFT + 198, y + 4, "start", "planned", "tick");
    }

    private void month(Svg svg, int i) {
        BudgetMonth m = months.get(i);
        double x = x(i);
        double planned = m.plannedCost() + m.comingIn();
        svg.line(x, y(m.lower()), x, y(m.upper()), "interval");
        svg.line(x - 4, y(m.lower()), x + 4, y(m.lower()), "interval");
        svg.line(x - 4, y(m.upper()), x + 4, y(m.upper()), "interval");
        if (planned > 0) {
            svg.line(x, y(0), x, y(planned), "planned");
        }
        svg.circle(x, y(m.expected()), 3.5, "dot");
        double width = (RIGHT - LEFT) / months.size();
        svg.field(
                x - width / 2,
                TOP,
                width,
                FLOOR - TOP,
                m.month() + ": " + Format.money(currency, m.expected()) + " expected, "
                        + Format.money(currency, planned) + " of it planned; " + Format.money(currency, m.lower())
                        + " to " + Format.money(currency, m.upper()) + " with 90 %");
    }

    private double x(int i) {
        return LEFT + (i + 0.5) * (RIGHT - LEFT) / months.size();
    }

    private double y(double amount) {
        return FLOOR - amount / most * (FLOOR - TOP);
    }
}
