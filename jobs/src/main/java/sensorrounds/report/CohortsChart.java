package sensorrounds.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sensorrounds.survival.CohortFit;
import sensorrounds.survival.CurvePoint;
import sensorrounds.survival.CurvePoint.Method;

/** The fitted curves of several cohorts on one pair of axes, each with its own line style and its name at its end. */
final class CohortsChart {
    /** More curves than this cannot be told apart; the largest cohorts are drawn. */
    static final int MOST = 6;

    private static final double HEIGHT = 262;
    private static final double RIGHT = 300;
    private static final double LABEL_HEIGHT = 14;
    private static final int LABEL_LENGTH = 17;

    private record Line(String cohort, int style, Curve curve) {}

    private CohortsChart() {}

    /** Draws nothing when there are fewer than two curves to compare. */
    static void write(Html h, List<CohortFit> fits, List<CurvePoint> points) {
        List<Line> lines = lines(fits, points);
        if (lines.size() < 2) {
            return;
        }
        int lastAge = lines.stream().mapToInt(l -> l.curve().lastAge()).max().orElse(0);
        SurvivalFrame frame = new SurvivalFrame(lastAge, RIGHT);
        h.open("figure", "class", "chart");
        h.element("figcaption", "Cohorts compared (Weibull)");
        Svg svg = Svg.open(
                h,
                SurvivalFrame.WIDTH,
                HEIGHT,
                "Fitted share of sensors still working by age, one line for each cohort; the fits are in the table below",
                "plot");
        frame.axes(svg);
        lines.forEach(l -> svg.path(frame.smooth(l.curve(), CurvePoint::survival), "cohort style-" + l.style()));
        labels(svg, frame, lines);
        svg.close();
        h.close("figure").line();
    }

    private static List<Line> lines(List<CohortFit> fits, List<CurvePoint> points) {
        List<Line> lines = new ArrayList<>();
        fits.stream()
                .sorted(Comparator.comparingLong(CohortFit::lives).reversed().thenComparing(CohortFit::cohort))
                .forEach(f -> {
                    Curve curve = Curve.of(points, f.cohort(), Method.WEIBULL);
                    if (!curve.isEmpty() && lines.size() < MOST) {
                        lines.add(new Line(f.cohort(), lines.size() + 1, curve));
                    }
                });
        return lines;
    }

    /** Names at the ends of the lines, pushed down where they would overlap, each with a leader to its line. */
    private static void labels(Svg svg, SurvivalFrame frame, List<Line> lines) {
        List<Line> byHeight = lines.stream()
                .sorted(Comparator.comparingDouble(CohortsChart::endSurvival)
                        .reversed()
                        .thenComparing(Line::cohort))
                .toList();
        double overflow = 0;
        double[] heights = new double[byHeight.size()];
        for (int i = 0; i < heights.length; i++) {
            double wanted = frame.y(endSurvival(byHeight.get(i)));
            heights[i] = i == 0 ? wanted : Math.max(wanted, heights[i - 1] + LABEL_HEIGHT);
            overflow = heights[i] - SurvivalFrame.FLOOR;
        }
        for (int i = heights.length - 1; i >= 0 && overflow > 0; i--) {
            double below = i == heights.length - 1 ? SurvivalFrame.FLOOR : heights[i + 1] - LABEL_HEIGHT;
            heights[i] = Math.min(heights[i], below);
        }
        for (int i = 0; i < heights.length; i++) {
            Line l = byHeight.get(i);
            svg.line(frame.x(l.curve().lastAge()) + 2, frame.y(endSurvival(l)), RIGHT + 12, heights[i], "leader");
            svg.line(RIGHT + 12, heights[i], RIGHT + 30, heights[i], "cohort style-" + l.style());
            svg.text(RIGHT + 34, heights[i] + 4, "start", cut(l.cohort()), "tick");
        }
    }

    private static double endSurvival(Line l) {
        return l.curve().points().get(l.curve().points().size() - 1).survival();
    }

    private static String cut(String name) {
        return name.length() <= LABEL_LENGTH ? name : name.substring(0, LABEL_LENGTH - 1) + "…";
    }
}
