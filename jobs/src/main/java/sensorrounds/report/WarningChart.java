package sensorrounds.report;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import sensorrounds.recurrence.PeerRates;
import sensorrounds.recurrence.WarningCurvePoint;
import sensorrounds.recurrence.WarningCurvePoint.Clock;

/**
 * How system warnings add up on a vehicle since its first visit, over all classes: a step line between dotted limits, vehicles
 * under observation beneath, and all of it as a table.
 */
final class WarningChart {
    private static final double WIDTH = SurvivalFrame.WIDTH;
    private static final double LEFT = SurvivalFrame.LEFT;
    private static final double RIGHT = WIDTH - 14;
    private static final double TOP = SurvivalFrame.TOP;
    private static final double FLOOR = SurvivalFrame.FLOOR;
    private static final double AT_RISK = FLOOR + 50;
    private static final double HEIGHT = 296;
    private static final int LINES = 4;

    private final List<WarningCurvePoint> points;
    private final int halfYears;
    private final double tick;

    WarningChart(List<WarningCurvePoint> all) {
        points = all.stream()
                .filter(p -> p.clock() == Clock.SINCE_FIRST_VISIT && p.cohort().equals(PeerRates.ALL))
                .sorted(Comparator.comparingInt(WarningCurvePoint::days))
                .toList();
        int last = points.isEmpty() ? 0 : points.get(points.size() - 1).days();
        halfYears = Math.max(1, (int) Math.ceil(2 * Format.inYears(last)));
        tick = tick(points.stream()
                .mapToDouble(p -> Double.isFinite(p.upper()) ? Math.min(p.upper(), 2 * p.mean()) : p.mean())
                .max()
                .orElse(0));
    }

    /** A round step of which {@link #LINES} reach the highest figure. */
    private static double tick(double highest) {
        double wanted = Math.max(highest, 1e-3) / LINES;
        double power = Math.pow(10, Math.floor(Math.log10(wanted)));
        for (double round : new double[] {1, 2, 2.5, 5}) {
            if (round * power >= wanted) {
                return round * power;
            }
        }
        return 10 * power;
    }

    void write(Html h) {
        if (points.isEmpty()) {
            return;
        }
        h.open("figure", "class", "chart");
        h.element("figcaption", "System warnings of a vehicle since its first visit, all vehicles");
        Svg svg = Svg.open(
                h,
                WIDTH,
                HEIGHT,
                "Mean number of system warnings of a vehicle since its first visit; the figures are in the table below",
                "plot");
        axes(svg);
        svg.path(steps(WarningCurvePoint::lower), "step-limit");
        svg.path(steps(WarningCurvePoint::upper), "step-limit");
        svg.path(steps(WarningCurvePoint::mean), "step");
        svg.text(LEFT + 10, TOP + 12, "start", "mean number, 95 % limits dotted", "tick");
        fields(svg);
        svg.close();
        h.empty("p", "class", "readout", "aria-hidden", "true").line();
        table(h);
        h.close("figure").line();
    }

    private double x(double days) {
        return LEFT + 2 * Format.inYears(days) / halfYears * (RIGHT - LEFT);
    }

    private double y(double warnings) {
        return FLOOR - Math.max(0, Math.min(1, warnings / (LINES * tick))) * (FLOOR - TOP);
    }

    private void axes(Svg svg) {
        for (int i = 0; i <= LINES; i++) {
            double y = y(i * tick);
            svg.line(LEFT, y, RIGHT, y, i == 0 ? "axis" : "grid");
            svg.text(LEFT - 6, y + 4, "end", label(i * tick), "tick");
        }
        svg.text(LEFT, AT_RISK, "start", "vehicles under observation", "tick");
        for (int half : halves()) {
            double x = x(day(half));
            svg.line(x, FLOOR, x, FLOOR + 4, "axis");
            svg.text(x, FLOOR + 17, "middle", Format.fixed(half / 2.0, half % 2), "tick");
            WarningCurvePoint p = at(half);
            if (p != null) {
                svg.text(x, AT_RISK + 15, "middle", Format.whole(p.atRisk()), "tick");
            }
        }
        svg.text(LEFT, FLOOR + 32, "start", "years since the first visit", "tick");
    }

    /** Round figures without closing noughts. */
    private static String label(double warnings) {
        return new BigDecimal(warnings)
                .round(new MathContext(3))
                .stripTrailingZeros()
                .toPlainString();
    }

    private Svg.Path steps(ToDoubleFunction<WarningCurvePoint> value) {
        Svg.Path path = new Svg.Path();
        points.stream()
                .filter(p -> Double.isFinite(value.applyAsDouble(p)))
                .forEach(p -> path.stepTo(x(p.days()), y(value.applyAsDouble(p))));
        return path;
    }

    /** Half-years that carry a label: at most about ten. */
    private List<Integer> halves() {
        int step = halfYears <= 8 ? 1 : halfYears <= 16 ? 2 : 10;
        List<Integer> halves = new ArrayList<>();
        for (int i = 0; i <= halfYears; i += step) {
            halves.add(i);
        }
        return halves;
    }

    private static int day(int half) {
        return Format.days(half / 2.0);
    }

    /** The step in force; null beyond the time watched. */
    private WarningCurvePoint at(int half) {
        int day = day(half);
        WarningCurvePoint found = null;
        for (WarningCurvePoint p : points) {
            if (p.days() <= day) {
                found = p;
            }
        }
        return day <= points.get(points.size() - 1).days() ? found : null;
    }

    private void fields(Svg svg) {
        double width = (RIGHT - LEFT) / halfYears;
        for (int half : halves()) {
            WarningCurvePoint p = at(half);
            if (p != null) {
                double from = Math.max(LEFT, x(day(half)) - width / 2);
                svg.field(from, TOP, Math.min(RIGHT, x(day(half)) + width / 2) - from, FLOOR - TOP, tip(half, p));
            }
        }
    }

    private static String tip(int half, WarningCurvePoint p) {
        return Format.fixed(half / 2.0, 1) + " years: " + number(p) + " warnings of a vehicle, "
                + Format.whole(p.atRisk()) + " under observation";
    }

    static String number(WarningCurvePoint p) {
        String limits = Double.isFinite(p.upper())
                ? " (" + Format.figure(p.lower()) + "–" + Format.figure(p.upper()) + ")"
                : "";
        return Format.figure(p.mean()) + limits;
    }

    private void table(Html h) {
        h.open("details").element("summary", "The figures behind the chart");
        new Grid<Integer>(Grid.Shape.SCROLLS, "System warnings of a vehicle by years since its first visit")
                .number("Years", i -> i / 2.0, (h1, i) -> h1.text(Format.fixed(i / 2.0, 1)))
                .number("Warnings of a vehicle", i -> at(i).mean(), (h1, i) -> h1.text(number(at(i))))
                .count("Under observation", i -> at(i).atRisk())
                .write(h, halves().stream().filter(i -> at(i) != null).toList());
        h.close("details").line();
    }
}
