package sensorrounds.report;

import java.util.List;
import java.util.function.Consumer;

/**
 * A chart of amounts upward from nought, in slots of equal width side by side: months, years or seasons. It draws the
 * frame and the strokes that such charts share; what stands in a slot is drawn by the chart.
 */
final class SlotFrame {
    private static final double WIDTH = 430;
    private static final double RIGHT = WIDTH - 12;
    /** Below the floor: the slots' labels and the unit. */
    private static final double FOOT = 40;

    private static final int MOST_LABELS = 8;

    private final double left;
    private final double top;
    private final double floor;
    private final double most;
    private final List<String> labels;

    /**
     * @param left where the axis stands, right of its figures
     * @param top upper end of the plot, below the key
     * @param floor lower end of the plot
     * @param most largest amount there is room for, above 0; larger ones are drawn at the upper end
     * @param labels one a slot, at least one
     */
    SlotFrame(double left, double top, double floor, double most, List<String> labels) {
        this.left = left;
        this.top = top;
        this.floor = floor;
        this.most = most;
        this.labels = labels;
    }

    /** Draws what stands in the {@code i}-th slot. */
    interface Slot {
        void draw(Svg svg, int i);
    }

    /**
     * Writes the whole figure.
     *
     * @param title from the data
     * @param says what it shows, for who does not see it
     * @param unit of the amounts
     * @param key drawn above the plot
     */
    void write(Html h, String title, String says, String unit, Consumer<Svg> key, Slot slot) {
        h.open("figure", "class", "chart");
        h.open("figcaption").data(title).close();
        Svg svg = Svg.open(h, WIDTH, floor + FOOT, says + "; the figures are in the table below", "plot");
        key.accept(svg);
        axes(svg, unit);
        for (int i = 0; i < labels.size(); i++) {
            slot.draw(svg, i);
        }
        svg.close();
        h.empty("p", "class", "readout", "aria-hidden", "true");
        h.close("figure").line();
    }

    private void axes(Svg svg, String unit) {
        int step = tickStep((int) Math.ceil(most));
        for (int n = 0; n <= most; n += step) {
            acrossAt(svg, n, n == 0 ? "axis" : "grid");
            svg.text(left - 5, y(n) + 4, "end", Format.whole(n), "tick");
        }
        int every = (labels.size() + MOST_LABELS - 1) / MOST_LABELS;
        for (int i = 0; i < labels.size(); i += every) {
            svg.text(x(i), floor + 17, "middle", labels.get(i), "tick");
        }
        svg.text(left, floor + 34, "start", unit, "tick");
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

    double left() {
        return left;
    }

    double x(int slot) {
        return left + (slot + 0.5) * slotWidth();
    }

    double y(double amount) {
        return floor - Math.min(1, amount / most) * (floor - top);
    }

    private double slotWidth() {
        return (RIGHT - left) / labels.size();
    }

    /** A line over the whole width at an amount. */
    void acrossAt(Svg svg, double amount, String cssClass) {
        svg.line(left, y(amount), RIGHT, y(amount), cssClass);
    }

    /** A dot for what is expected, on a bar with caps for its limits; no cap for an upper one that there is no room for. */
    void expected(Svg svg, int slot, double amount, double lower, double upper) {
        double x = x(slot);
        svg.line(x, y(lower), x, y(upper), "interval");
        svg.line(x - 4, y(lower), x + 4, y(lower), "interval");
        if (upper <= most) {
            svg.line(x - 4, y(upper), x + 4, y(upper), "interval");
        }
        svg.circle(x, y(amount), 3.5, "dot");
    }

    /** A broad stroke from the floor for what is planned; nothing for none. */
    void planned(Svg svg, int slot, double amount) {
        if (amount > 0) {
            svg.line(x(slot), y(0), x(slot), y(amount), "planned");
        }
    }

    /** What is said under the pointer anywhere in the slot. */
    void tip(Svg svg, int slot, String tip) {
        svg.field(x(slot) - slotWidth() / 2, top, slotWidth(), floor - top, tip);
    }

    /** The key of {@link #expected} and, {@code at} so far from the left, of {@link #planned}. */
    void key(Svg svg, double at) {
        double y = 12;
        svg.circle(left + 4, y, 3.5, "dot").text(left + 12, y + 4, "start", "expected", "tick");
        svg.line(left + 84, y - 6, left + 84, y + 6, "interval");
        svg.line(left + 80, y - 6, left + 88, y - 6, "interval").line(left + 80, y + 6, left + 88, y + 6, "interval");
        svg.text(left + 94, y + 4, "start", "90 % interval", "tick");
        svg.line(left + at, y + 6, left + at, y - 6, "planned").text(left + at + 8, y + 4, "start", "planned", "tick");
    }
}
