package sensorrounds.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import sensorrounds.survival.CurvePoint;

/** Axes of a survival chart: age in years across, share still working upward, and how curves are laid on them. */
final class SurvivalFrame {
    static final double WIDTH = 430;
    static final double LEFT = 46;
    static final double TOP = 12;
    static final double FLOOR = 226;

    /** Points closer than this across the page look like one; a curve of thousands of steps needs no more. */
    private static final double VISIBLE = 0.6;

    private final int years;
    private final double right;

    /** @param right where the axis of ages ends */
    SurvivalFrame(int lastAgeDays, double right) {
        this.years = Math.max(1, (int) Math.ceil(Format.inYears(lastAgeDays)));
        this.right = right;
    }

    double x(double ageDays) {
        return LEFT + Format.inYears(ageDays) / years * (right - LEFT);
    }

    double y(double survival) {
        return FLOOR - Math.max(0, Math.min(1, survival)) * (FLOOR - TOP);
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
        for (int percent = 0; percent <= 100; percent += 25) {
            double y = y(percent / 100.0);
            svg.line(LEFT, y, right, y, percent == 0 ? "axis" : "grid");
            svg.text(LEFT - 6, y + 4, "end", percent + " %", "tick");
        }
        for (int t : ticks()) {
            double x = x(Format.days(t));
            svg.line(x, FLOOR, x, FLOOR + 4, "axis");
            svg.text(x, FLOOR + 17, "middle", Integer.toString(t), "tick");
        }
        svg.text(LEFT, FLOOR + 32, "start", "age in years", "tick");
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
