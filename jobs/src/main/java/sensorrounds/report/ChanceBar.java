package sensorrounds.report;

import sensorrounds.replacement.RankedReplacement;

/**
 * A chance against its break-even, small enough for a cell: a dot on a bar of its limits, and an upright stroke where
 * replacing begins to pay. The figures stand beside it, so screen readers pass over the picture.
 */
final class ChanceBar {
    private static final double WIDTH = 110;
    private static final double HEIGHT = 16;
    private static final double MARGIN = 5;

    private ChanceBar() {}

    static void write(Html h, RankedReplacement r) {
        double middle = HEIGHT / 2;
        Svg svg = Svg.open(h, WIDTH, HEIGHT, null, "chance-bar");
        svg.line(MARGIN, middle, WIDTH - MARGIN, middle, "rail");
        double lower = r.outlook().chances().pHorizonLower();
        double upper = r.outlook().chances().pHorizonUpper();
        if (Double.isFinite(lower) && Double.isFinite(upper)) {
            svg.line(x(lower), middle, x(upper), middle, "limits");
        }
        if (r.breakEvenProbability() >= 0 && r.breakEvenProbability() <= 1) {
            svg.line(x(r.breakEvenProbability()), 1, x(r.breakEvenProbability()), HEIGHT - 1, "break-even");
        }
        if (Double.isFinite(r.outlook().chances().pHorizon())) {
            svg.circle(x(r.outlook().chances().pHorizon()), middle, 3.6, "dot");
        }
        svg.close();
    }

    private static double x(double p) {
        return MARGIN + Math.max(0, Math.min(1, p)) * (WIDTH - 2 * MARGIN);
    }
}
