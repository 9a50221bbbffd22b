package sensorrounds.report;

import java.util.Comparator;
import java.util.List;
import sensorrounds.analyst.CovariateEffect;
import sensorrounds.analyst.Factor;

/** Life factors with their limits on a scale of ratios, a line for each level; the table beneath it holds the figures. */
final class EffectsChart {
    private static final double WIDTH = 520;
    private static final double LEFT = 210;
    private static final double RIGHT = 500;
    private static final double ROW = 22;
    private static final double TOP = 8;
    /** The scale ends at these factors; limits beyond it are cut there, as the table tells. */
    private static final double LEAST = 0.25;

    private static final double MOST = 4;
    private static final double[] TICKS = {0.25, 0.5, 1, 2, 4};
    private static final int LABEL = 30;

    private EffectsChart() {}

    static void write(Html h, List<CovariateEffect> effects) {
        List<CovariateEffect> rows = effects.stream()
                .filter(e -> !e.reference() && Double.isFinite(e.lifeFactor().value()))
                .sorted(Comparator.comparing(CovariateEffect::factor).thenComparing(CovariateEffect::level))
                .toList();
        if (rows.isEmpty()) {
            return;
        }
        double floor = TOP + ROW * rows.size();
        h.open("div", "class", "charts");
        h.open("figure", "class", "chart wide");
        h.element("figcaption", "Life factors against each reference level, with 95 % limits");
        Svg svg = Svg.open(
                h,
                WIDTH,
                floor + 38,
                "How many times as long sensors last at each level as at the reference; the figures are in the table below",
                "plot");
        for (double tick : TICKS) {
            svg.line(x(tick), TOP, x(tick), floor, tick == 1 ? "axis" : "grid");
            svg.text(x(tick), floor + 17, "middle", tick < 1 ? Format.fixed(tick, 2) : Format.fixed(tick, 0), "tick");
        }
        svg.text(LEFT, floor + 32, "start", "shorter lives to the left, longer to the right of 1", "tick");
        for (int i = 0; i < rows.size(); i++) {
            row(svg, rows.get(i), TOP + ROW * (i + 0.5));
        }
        svg.close();
        h.close("figure").close("div").line();
    }

    private static void row(Svg svg, CovariateEffect e, double y) {
        svg.text(LEFT - 10, y + 4, "end", cut(label(e)), "tick");
        svg.line(x(e.lifeFactor().lower()), y, x(e.lifeFactor().upper()), y, "cohort style-1");
        svg.circle(x(e.lifeFactor().value()), y, 4, "dot");
    }

    private static String label(CovariateEffect e) {
        String level = e.factor() == Factor.PLACE ? EffectsSection.place(e.level()) : e.level();
        return e.factor().numeric() ? e.level() : e.factor().words() + ": " + level;
    }

    private static String cut(String label) {
        return label.length() <= LABEL ? label : label.substring(0, LABEL - 1) + "…";
    }

    private static double x(double factor) {
        double within = Math.max(LEAST, Math.min(MOST, factor));
        return LEFT + Math.log(within / LEAST) / Math.log(MOST / LEAST) * (RIGHT - LEFT);
    }
}
