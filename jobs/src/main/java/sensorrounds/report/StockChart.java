package sensorrounds.report;

import java.util.Comparator;
import java.util.List;
import sensorrounds.stock.StockOutlook;

/**
 * Demand for one part at one depot by month: a dot for what is expected, a bar with caps for the 90 % prediction interval,
 * a short broad stroke for the pieces that meet the service level, and a broken line for the pieces on hand.
 */
final class StockChart {
    private final List<StockOutlook> months;
    private final SlotFrame frame;

    /** @param months of one part and depot, at least one */
    StockChart(List<StockOutlook> months) {
        this.months =
                months.stream().sorted(Comparator.comparing(StockOutlook::to)).toList();
        int most = this.months.stream().mapToInt(StockChart::highest).max().orElse(1);
        this.frame = new SlotFrame(
                36,
                44,
                196,
                Math.max(1, most),
                this.months.stream().map(StockChart::label).toList());
    }

    private static int highest(StockOutlook m) {
        return Math.max(Math.max(m.upper(), m.serviceLevelPieces()), m.onHand() == null ? 0 : m.onHand());
    }

    void write(Html h, String title) {
        frame.write(
                h,
                title,
                "Expected demand by month, " + title,
                "pieces by month",
                this::key,
                (svg, i) -> month(svg, i));
    }

    private void key(Svg svg) {
        double left = frame.left();
        frame.key(svg, 286);
        svg.line(left + 184, 12, left + 200, 12, "service");
        svg.text(left + 206, 16, "start", "service level", "tick");
        months.stream().filter(m -> m.onHand() != null).findFirst().ifPresent(m -> {
            frame.acrossAt(svg, m.onHand(), "on-hand");
            // Named in the key: at the line the words would run into the intervals.
            svg.line(left, 28, left + 24, 28, "on-hand");
            svg.text(left + 30, 32, "start", "on hand now: " + Format.whole(m.onHand()), "tick");
        });
    }

    private void month(Svg svg, int i) {
        StockOutlook m = months.get(i);
        double service = frame.y(m.serviceLevelPieces());
        svg.line(frame.x(i) - 9, service, frame.x(i) + 9, service, "service");
        frame.planned(svg, i, m.planned());
        frame.expected(svg, i, m.expected(), m.lower(), m.upper());
        frame.tip(svg, i, tip(m));
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
}
