package sensorrounds.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import sensorrounds.survival.CurvePoint;

/** Axes of a survival chart: age in years across, a share of sensors upward, and how curves are laid on them. */
final class SurvivalFrame {
    static final double WIDTH = 430;
    static final double LEFT = 46;
    static final double TOP = 12;
    static final double FLOOR = 226;

    /** Points closer than this across the page look like one; a curve of thousands of steps needs no more. */
    private static final double VISIBLE = 0.6;

    /** Shares that a chart may end at: a quarter of each is a whole per cent. */
    private static final double[] CEILINGS = {0.04, 0.08, 0.12, 0.2, 0.4, 0.6, 0.8, 1};

    private final int years;
    private final double right;
    /** Share at the top of the chart. */
    private final double ceiling;

    /** @param right where the axis of ages ends */
    SurvivalFrame(int lastAgeDays, double right) {
        this(lastAgeDays, right, 1);
    }

    /** @param most highest share to be drawn; the chart ends at a round share above it */
    SurvivalFrame(int lastAgeDays, double right, double most) {
        this.years = Math.max(1, (int) Math.ceil(Format.inYears(lastAgeDays)));
        this.right = right;
        this.ceiling =
                Arrays.stream(CEILINGS).filter(c -> c >= most).findFirst().orElse(1);
    }

    double x(double ageDays) {
        return LEFT + Format.inYears(ageDays) / years * (right - LEFT);
    }

    double y(double share) {
        return FLOOR - Math.max(0, Math.min(1, share / ceiling)) * (FLOOR - TOP);
    }

    double right() {
        return right;
    }

    /** Ages that carry a label, in years. */
    List<Integer> ticks() {
        int step = years <= 8 ? 1 : years <= 16 ? 2 : 5;
        List<Integer> ticks = new ArrayList<>();
        for (int t = 0; t <= years; t += step) {
            ticks.add(t);
        }
        return ticks;
    }

    void axes(Svg svg) {
        axes(svg, "age in years");
    }

    /** @param across what the axis of ages counts */
    void axes(Svg svg, String across) {
        for (int quarter = 0; quarter <= 4; quarter++) {
            double share = ceiling * quarter / 4;
            svg.line(LEFT, y(share), right, y(share), quarter == 0 ? "axis" : "grid");
            svg.text(LEFT - 6, y(share) + 4, "end", Math.round(100 * share) + " %", "tick");
        }
        for (int t : ticks()) {
            double x = x(Format.days(t));
            svg.line(x, FLOOR, x, FLOOR + 4, "axis");
            svg.text(x, FLOOR + 17, "middle", Integer.toString(t), "tick");
        }
        svg.text(LEFT, FLOOR + 32, "start", across, "tick");
    }

    Svg.Path steps(Curve curve, ToDoubleFunction<CurvePoint> value) {
        Svg.Path path = new Svg.Path();
        visible(curve, value).forEach(p -> path.stepTo(x(p.ageDays()), y(value.applyAsDouble(p))));
        return path;
    }

    Svg.Path smooth(Curve curve, ToDoubleFunction<CurvePoint> value) {
        Svg.Path path = new Svg.Path();
        visible(curve, value).forEach(p -> path.to(x(p.ageDays()), y(value.applyAsDouble(p))));
        return path;
    }

    /** The area between the limits of a smooth curve. */
    Svg.Path band(Curve curve) {
        Svg.Path path = new Svg.Path();
        List<CurvePoint> points = visible(curve, p -> p.lower() + p.upper());
        points.forEach(p -> path.to(x(p.ageDays()), y(p.upper())));
        for (int i = points.size() - 1; i >= 0; i--) {
            path.to(x(points.get(i).ageDays()), y(points.get(i).lower()));
        }
        return points.isEmpty() ? path : path.end();
    }

    private List<CurvePoint> visible(Curve curve, ToDoubleFunction<CurvePoint> value) {
        List<CurvePoint> kept = new ArrayList<>();
        CurvePoint last = null;
        for (CurvePoint p : curve.points()) {
            if (!Double.isFinite(value.applyAsDouble(p))) {
                continue;
            }
            boolean seen = last == null || x(p.ageDays()) - x(last.ageDays()) >= VISIBLE;
            if (!seen && p.ageDays() == curve.lastAge()) {
                kept.remove(kept.size() - 1);
                seen = true;
            }
            if (seen) {
                kept.add(p);
                last = p;
            }
        }
        return kept;
    }
}
