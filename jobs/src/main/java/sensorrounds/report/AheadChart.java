package sensorrounds.report;

import java.util.ArrayList;
import java.util.List;
import sensorrounds.analyst.LifeAheadRow;
import sensorrounds.landmark.FirstLow;
import sensorrounds.survival.CurvePoint;
import sensorrounds.survival.CurvePoint.Method;

/** Share still working from a day on, a line for each group, and beneath it the figures with the numbers at risk. */
final class AheadChart {
    private static final double HEIGHT = 262;
    /** Ages ahead that the table gives, in days. */
    private static final int[] AHEAD = {0, 183, 365, 731, 1096};

    private record Line(LifeAheadRow row, int style, Curve curve) {}

    private AheadChart() {}

    /** Draws nothing for fewer than two groups: there is nothing to compare, and the table holds the figures. */
    static void write(Html h, String caption, List<LifeAheadRow> rows) {
        if (rows.size() < 2) {
            return;
        }
        List<Line> lines = new ArrayList<>();
        for (LifeAheadRow row : rows) {
            lines.add(new Line(row, lines.size() + 1, Curve.of(row.curve(), row.known(), Method.WEIBULL)));
        }
        int last = lines.stream().mapToInt(l -> l.curve().lastAge()).max().orElse(0);
        SurvivalFrame frame = new SurvivalFrame(last, EndLabels.RIGHT);
        h.open("figure", "class", "chart");
        h.element("figcaption", caption);
        Svg svg = Svg.open(
                h,
                SurvivalFrame.WIDTH,
                HEIGHT,
                "Share of sensors still working by years from the day, one line for each group; the figures are in the"
                        + " table below",
                "plot");
        frame.axes(svg, "years from that day");
        lines.forEach(l -> svg.path(frame.smooth(l.curve(), CurvePoint::survival), "cohort style-" + l.style()));
        EndLabels.write(
                svg,
                lines.stream()
                        .map(l -> new EndLabels.End(
                                brief(l.row()),
                                l.style(),
                                frame.x(l.curve().lastAge()),
                                frame.y(l.curve()
                                        .points()
                                        .get(l.curve().points().size() - 1)
                                        .survival())))
                        .toList());
        svg.close();
        figures(h, caption, lines);
        h.close("figure").line();
    }

    private static void figures(Html h, String caption, List<Line> lines) {
        h.open("details").element("summary", "The figures behind the chart, with numbers at risk");
        Grid<Line> grid = new Grid<Line>(Grid.Shape.SCROLLS, caption + ": still working, with 95 % limits")
                .column("Group", (h1, l) -> h1.text(words(l.row())));
        for (int days : AHEAD) {
            grid.number(
                    days == 0 ? "That day" : "After " + Format.age(days),
                    l -> l.curve().at(days).map(CurvePoint::survival).orElse(Double.NaN),
                    (h1, l) -> point(h1, l, days));
        }
        grid.write(h, lines);
        h.close("details").line();
    }

    private static void point(Html h, Line line, int days) {
        line.curve()
                .at(days)
                .ifPresentOrElse(
                        p -> {
                            h.element(
                                    "span",
                                    days == 0
                                            ? Format.chance(1)
                                            : Format.withLimits(p.survival(), p.lower(), p.upper()),
                                    "class",
                                    "key");
                            h.element("span", Format.whole(p.atRisk()) + " at risk", "class", "under");
                        },
                        () -> h.text(Format.NONE));
    }

    static String words(LifeAheadRow row) {
        if (row.report() != null) {
            return Words.of(row.report());
        }
        return row.firstLow() == null ? "any" : words(row.firstLow());
    }

    private static String words(FirstLow how) {
        return switch (how) {
            case IN_WARMTH -> "after a good report, air not cold";
            case IN_THE_COLD -> "after a good report, in the cold";
            case TEMPERATURE_NOT_KNOWN -> "after a good report, air not known";
            case LOW_FROM_THE_START -> "low at its very first report";
        };
    }

    private static String brief(LifeAheadRow row) {
        if (row.report() != null) {
            return switch (row.report()) {
                case SOUND -> "nothing amiss";
                case SLOW_TO_WAKE -> "slow to wake";
                case LOW_BATTERY -> "low battery";
                case SILENT_ONCE -> "silent";
            };
        }
        return switch (row.firstLow()) {
            case IN_WARMTH -> "not cold";
            case IN_THE_COLD -> "in the cold";
            case TEMPERATURE_NOT_KNOWN -> "air not known";
            case LOW_FROM_THE_START -> "low at first";
        };
    }
}
