package sensorrounds.report;

import java.util.Comparator;
import java.util.List;

/** Names beside the ends of the lines of a chart, pushed apart where they would overlap, each with a leader to its line. */
final class EndLabels {
    /** Where the axis of ages ends when names stand beside it. */
    static final double RIGHT = 300;

    private static final double LABEL_HEIGHT = 14;
    private static final int LABEL_LENGTH = 17;

    /** @param style number of the line's stroke in the style sheet */
    record End(String name, int style, double x, double y) {}

    private EndLabels() {}

    static void write(Svg svg, List<End> ends) {
        List<End> byHeight = ends.stream()
                .sorted(Comparator.comparingDouble(End::y).thenComparing(End::name))
                .toList();
        double overflow = 0;
        double[] heights = new double[byHeight.size()];
        for (int i = 0; i < heights.length; i++) {
            double wanted = byHeight.get(i).y();
            heights[i] = i == 0 ? wanted : Math.max(wanted, heights[i - 1] + LABEL_HEIGHT);
            overflow = heights[i] - SurvivalFrame.FLOOR;
        }
        for (int i = heights.length - 1; i >= 0 && overflow > 0; i--) {
            double below = i == heights.length - 1 ? SurvivalFrame.FLOOR : heights[i + 1] - LABEL_HEIGHT;
            heights[i] = Math.min(heights[i], below);
        }
        for (int i = 0; i < heights.length; i++) {
            End end = byHeight.get(i);
            svg.line(end.x() + 2, end.y(), RIGHT + 12, heights[i], "leader");
            svg.line(RIGHT + 12, heights[i], RIGHT + 30, heights[i], "cohort style-" + end.style());
            svg.text(RIGHT + 34, heights[i] + 4, "start", cut(end.name()), "tick");
        }
    }

    private static String cut(String name) {
        return name.length() <= LABEL_LENGTH ? name : name.substring(0, LABEL_LENGTH - 1) + "…";
    }
}
