package sensorrounds.report;

import java.util.Comparator;
import java.util.List;
import sensorrounds.stock.StockOutlook;

/**
 * Demand for one part at one depot by month: a dot for what is expected, a bar with caps for the 90 % prediction interval,
 * a short broad stroke for the pieces that meet the service level, and a broken line for the pieces on hand.
 */
final class StockChart {
    private static final double WIDTH = 430;
    private static final double HEIGHT = 236;
    private static final double LEFT = 36;
    private static final double RIGHT = WIDTH - 12;
    private static final double TOP = 44;
    private static final double FLOOR = 196;

    private final List<StockOutlook> months;
    private final int most;

    /** @param months of one part and depot, at least one */
    StockChart(List<StockOutlook> months) {
        this.months =
                months.stream().sorted(Comparator.comparing(StockOutlook::to)).toList();
        most = Math.max(
                1,
                this.months.stream()
                        .mapToInt(m -> Math.max(
                                Math.max(m.upper(), m.serviceLevelPieces()), m.onHand() == null ? 0 : m.onHand()))
                        .max()
                        .orElse(1));
    }

    void write(Html h, String title) {
        h.open("figure", "class", "chart");
        h.open("figcaption").data(title).close();
        Svg svg = Svg.open(
                h,
                WIDTH,
                HEIGHT,
                "Expected demand by month, " + title + "; the figures are in the table below",
                "plot");
        key(svg);
        axes(svg);
        onHand(svg);
        for (int i = 0; i < months.size(); i++) {
            month(svg, i);
        }
        svg.close();
        h.empty("p", "class", "readout", "aria-hidden", "true");
        h.close("figure").line();
    }

    /** Steps of 1, 2 or 5 times a power of ten that give at most five lines. */
    static int tickStep(int most) {
        int power = 1;
        while (true) {
            for (int factor : new int[] {1, 2, 5}) {
                if ((long) most <= 5L * factor * power) {
                    return factor * power;
                }
            }
            power *= 10;
        }
    }

    private void key(Svg svg) {
        double y = 12;
        svg.circle(LEFT + 4, y, 3.5, "dot").text(LEFT + 12, y + 4, "start", "expected", "tick");
        svg.line(LEFT + 84, y - 6, LEFT + 84, y + 6, "interval");
        svg.line(LEFT + 80, y - 6, LEFT + 88, y - 6, "interval").line(LEFT + 80, y + 6, LEFT + 88, y + 6, "interval");
        svg.text(LEFT + 94, y + 4, "start", "90 % interval", "tick");
        svg.line(LEFT + 184, y, LEFT + 200, y, "service");
        svg.text(LEFT + 206, y + 4, "start", "service level", "tick");
        svg.line(LEFT + 286, y + 6, LEFT + 286, y - 6, "planned").text(LEFT + 294, y + 4, "start", "planned", "tick");
    }

    private void axes(Svg svg) {
        int step = tickStep(most);
        for (int n = 0; n <= most; n += step) {
            svg.line(LEFT, y(n), RIGHT, y(n), n == 0 ? "axis" : "grid");
            svg.text(LEFT - 5, y(n) + 4, "end", Format.whole(n), "tick");
        }
        int every = (months.size() + 7) / 8;
        for (int i = 0; i < months.size(); i += every) {
            svg.text(x(i), FLOOR + 17, "middle", label(months.get(i)), "tick");
        }
        svg.text(LEFT, FLOOR + 34, "start", "pieces by month", "tick");
    }

    private void onHand(Svg svg) {
        months.stream().filter(m -> m.onHand() != null).findFirst().ifPresent(m -> {
            svg.line(LEFT, y(m.onHand()), RIGHT, y(m.onHand()), "on-hand");
            // Named in the key: at the line the words would run into the intervals.
            svg.line(LEFT, 28, LEFT + 24, 28, "on-hand");
            svg.text(LEFT + 30, 32, "start", "on hand now: " + Format.whole(m.onHand()), "tick");
        });
    }

    private void month(Svg svg, int i) {
        StockOutlook m = months.get(i);
        double x = x(i);
        svg.line(x, y(m.lower()), x, y(m.upper()), "interval");
        svg.line(x - 4, y(m.lower()), x + 4, y(m.lower()), "interval");
        svg.line(x - 4, y(m.upper()), x + 4, y(m.upper()), "interval");
        svg.line(x - 9, y(m.serviceLevelPieces()), x + 9, y(m.serviceLevelPieces()), "service");
        if (m.planned() > 0) {
            svg.line(x, y(0), x, y(m.planned()), "planned");
        }
        svg.circle(x, y(m.expected()), 3.5, "dot");
        double width = (RIGHT - LEFT) / months.size();
        svg.field(x - width / 2, TOP, width, FLOOR - TOP, tip(m));
    }

    private static String label(StockOutlook m) {
        return m.alreadyFailed() ? "not found" : m.month().toString();
    }

    private static String tip(StockOutlook m) {
        return (m.alreadyFailed() ? "failed already, not yet found" : m.month().toString()) + ": "
                + Format.fixed(m.expected(), 1) + " expected"
                + (m.planned() == 0 ? ", " : ", " + m.planned() + " of them planned, ") + m.lower() + " to " + m.upper()
                + " with 90 %, " + m.serviceLevelPieces() + " for the service level";
    }

    private double x(int i) {
        return LEFT + (i + 0.5) * (RIGHT - LEFT) / months.size();
    }

    private double y(double pieces) {
        return FLOOR - pieces / most * (FLOOR - TOP);
    }
}
