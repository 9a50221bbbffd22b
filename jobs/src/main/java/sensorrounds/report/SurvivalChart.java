package sensorrounds.report;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import sensorrounds.survival.CurvePoint;
import sensorrounds.survival.CurvePoint.Method;

/**
 * Survival of one cohort: the fitted law as a full line in its shaded limits, Kaplan–Meier as a broken step line between dotted
 * limits, the estimate without a shape as a thin line, the pessimistic bound as dashes and dots; sensors at risk under the
 * ages, and all of it as a table beneath.
 */
final class SurvivalChart {
    private static final double HEIGHT = 296;
    private static final double AT_RISK = SurvivalFrame.FLOOR + 50;
    private static final double RIGHT = SurvivalFrame.WIDTH - 14;
    private static final double KEY_HEIGHT = 16;

    private final String cohort;
    private final Curve fitted;
    private final Curve stepped;
    private final Curve bound;
    private final Curve shapeless;

    SurvivalChart(String cohort, List<CurvePoint> all) {
        this.cohort = cohort;
        fitted = Curve.of(all, cohort, Method.FITTED_LAW);
        stepped = Curve.of(all, cohort, Method.KAPLAN_MEIER);
        bound = Curve.of(all, cohort, Method.PESSIMISTIC);
        shapeless = Curve.of(all, cohort, Method.TURNBULL);
    }

    void write(Html h) {
        if (curves().allMatch(Curve::isEmpty)) {
            return;
        }
        SurvivalFrame frame = new SurvivalFrame(lastAge(), RIGHT);
        h.open("figure", "class", "chart");
        h.open("figcaption").data(cohort).close();
        Svg svg = Svg.open(
                h,
                SurvivalFrame.WIDTH,
                HEIGHT,
                "Share of sensors still working by age, cohort " + cohort + "; the figures are in the table below",
                "plot");
        frame.axes(svg);
        svg.path(frame.band(fitted), "band");
        svg.path(frame.steps(stepped, CurvePoint::lower), "step-limit");
        svg.path(frame.steps(stepped, CurvePoint::upper), "step-limit");
        svg.path(frame.steps(stepped, CurvePoint::survival), "step");
        svg.path(frame.steps(bound, CurvePoint::survival), "bound");
        svg.path(frame.smooth(shapeless, CurvePoint::survival), "shapeless");
        svg.path(frame.smooth(fitted, CurvePoint::survival), "smooth");
        key(svg);
        atRisk(svg, frame);
        fields(svg, frame);
        svg.close();
        h.empty("p", "class", "readout", "aria-hidden", "true").line();
        table(h, frame);
        h.close("figure").line();
    }

    /** The lower left corner stays free: survival curves begin at the top and fall to the right. */
    private void key(Svg svg) {
        double x = SurvivalFrame.LEFT + 10;
        double y = SurvivalFrame.FLOOR - 12;
        if (!bound.isEmpty()) {
            svg.line(x, y - 4, x + 26, y - 4, "bound");
            svg.text(x + 32, y, "start", "Pessimistic bound", "tick");
            y -= KEY_HEIGHT;
        }
        if (!shapeless.isEmpty()) {
            svg.line(x, y - 4, x + 26, y - 4, "shapeless");
            svg.text(x + 32, y, "start", "Without a shape", "tick");
            y -= KEY_HEIGHT;
        }
        if (!stepped.isEmpty()) {
            svg.line(x, y - 8, x + 26, y - 8, "step-limit").line(x, y - 4, x + 26, y - 4, "step");
            svg.line(x, y, x + 26, y, "step-limit");
            svg.text(x + 32, y, "start", "Kaplan–Meier, 95 % limits", "tick");
            y -= KEY_HEIGHT;
        }
        if (!fitted.isEmpty()) {
            svg.rect(x, y - 8, 26, 8, "band").line(x, y - 4, x + 26, y - 4, "smooth");
            svg.text(x + 32, y, "start", "Fitted law, 95 % limits", "tick");
        }
    }

    private Stream<Curve> curves() {
        return Stream.of(fitted, stepped, shapeless, bound);
    }

    private int lastAge() {
        return curves().mapToInt(Curve::lastAge).max().orElse(0);
    }

    private void atRisk(Svg svg, SurvivalFrame frame) {
        svg.text(SurvivalFrame.LEFT, AT_RISK, "start", "sensors at risk", "tick");
        for (int t : frame.ticks()) {
            reading(Format.days(t))
                    .ifPresent(p -> svg.text(
                            frame.x(Format.days(t)), AT_RISK + 15, "middle", Format.whole(p.atRisk()), "tick"));
        }
    }

    private void fields(Svg svg, SurvivalFrame frame) {
        List<Integer> ticks = frame.ticks();
        for (int i = 0; i < ticks.size(); i++) {
            int age = Format.days(ticks.get(i));
            double from = i == 0 ? frame.x(age) : (frame.x(age) + frame.x(Format.days(ticks.get(i - 1)))) / 2;
            double to =
                    i == ticks.size() - 1 ? frame.right() : (frame.x(age) + frame.x(Format.days(ticks.get(i + 1)))) / 2;
            svg.field(from, SurvivalFrame.TOP, to - from, SurvivalFrame.FLOOR - SurvivalFrame.TOP, tip(ticks.get(i)));
        }
    }

    private String tip(int years) {
        StringBuilder s = new StringBuilder(Format.count(years, "year") + ":");
        curves().forEach(c -> c.at(Format.days(years))
                .ifPresent(p -> s.append(' ')
                        .append(Words.of(c.method()))
                        .append(' ')
                        .append(Format.withLimits(p.survival(), p.lower(), p.upper()))
                        .append(';')));
        reading(Format.days(years))
                .ifPresent(p -> s.append(' ').append(Format.whole(p.atRisk())).append(" at risk"));
        return s.toString();
    }

    /** The point that tells the counts at an age: the smooth curve's grid is finer than the steps. */
    private Optional<CurvePoint> reading(int ageDays) {
        return curves().flatMap(c -> c.at(ageDays).stream()).findFirst();
    }

    private void table(Html h, SurvivalFrame frame) {
        h.open("details").element("summary", "The figures behind the chart");
        Grid<Integer> grid = new Grid<Integer>(
                        Grid.Shape.SCROLLS, "Share still working by age, cohort " + Html.shorten(cohort))
                .number("Age, years", t -> t, (h1, t) -> h1.text(Integer.toString(t)))
                .number("Fitted law", t -> t, (h1, t) -> share(h1, fitted, t))
                .number("Kaplan–Meier", t -> t, (h1, t) -> share(h1, stepped, t));
        if (!shapeless.isEmpty()) {
            grid.number("Without a shape", t -> t, (h1, t) -> share(h1, shapeless, t));
        }
        if (!bound.isEmpty()) {
            grid.number("Pessimistic bound", t -> t, (h1, t) -> share(h1, bound, t));
        }
        grid.number(
                        "At risk",
                        t -> t,
                        (h1, t) -> h1.text(reading(Format.days(t))
                                .map(p -> Format.whole(p.atRisk()))
                                .orElse(Format.NONE)))
                .number(
                        "Failures so far",
                        t -> t,
                        (h1, t) -> h1.text(reading(Format.days(t))
                                .map(p -> Format.whole(p.failures()))
                                .orElse(Format.NONE)))
                .write(h, frame.ticks());
        h.close("details").line();
    }

    private static void share(Html h, Curve curve, int years) {
        h.text(curve.at(Format.days(years))
                .map(p -> Format.withLimits(p.survival(), p.lower(), p.upper()))
                .orElse(Format.NONE));
    }
}
