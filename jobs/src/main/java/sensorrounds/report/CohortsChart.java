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

    private record Line(String cohort, int style, Curve curve) {}

    private CohortsChart() {}

    /** Draws nothing when there are fewer than two curves to compare. */
    static void write(Html h, List<CohortFit> fits, List<CurvePoint> points) {
        List<Line> lines = lines(fits, points);
        if (lines.size() < 2) {
            return;
        }
        int lastAge = lines.stream().mapToInt(l -> l.curve().lastAge()).max().orElse(0);
        SurvivalFrame frame = new SurvivalFrame(lastAge, EndLabels.RIGHT);
        h.open("figure", "class", "chart");
        h.element("figcaption", "Cohorts compared (fitted laws)");
        Svg svg = Svg.open(
                h,
                SurvivalFrame.WIDTH,
                HEIGHT,
                "Fitted share of sensors still working by age, one line for each cohort; the fits are in the table below",
                "plot");
        frame.axes(svg);
        lines.forEach(l -> svg.path(frame.smooth(l.curve(), CurvePoint::survival), "cohort style-" + l.style()));
        EndLabels.write(
                svg,
                lines.stream()
                        .map(l -> new EndLabels.End(
                                l.cohort(), l.style(), frame.x(l.curve().lastAge()), frame.y(endSurvival(l))))
                        .toList());
        svg.close();
        h.close("figure").line();
    }

    private static List<Line> lines(List<CohortFit> fits, List<CurvePoint> points) {
        List<Line> lines = new ArrayList<>();
        fits.stream()
                .sorted(Comparator.comparingLong(CohortFit::lives).reversed().thenComparing(CohortFit::cohort))
                .forEach(f -> {
                    Curve curve = Curve.of(points, f.cohort(), Method.FITTED_LAW);
                    if (!curve.isEmpty() && lines.size() < MOST) {
                        lines.add(new Line(f.cohort(), lines.size() + 1, curve));
                    }
                });
        return lines;
    }

    private static double endSurvival(Line l) {
        return l.curve().points().get(l.curve().points().size() - 1).survival();
    }
}
