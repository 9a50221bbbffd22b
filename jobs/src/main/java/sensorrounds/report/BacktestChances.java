package sensorrounds.report;

import java.util.List;
import sensorrounds.backtest.Backtest;
import sensorrounds.backtest.CalibrationRow;
import sensorrounds.backtest.Horizon;
import sensorrounds.backtest.ScoreRow;

/** Chances against shares that failed, and the scores of the chances. */
final class BacktestChances {
    private static final double WIDTH = 400;
    private static final double HEIGHT = 330;
    private static final double LEFT = 52;
    private static final double RIGHT = WIDTH - 14;
    private static final double TOP = 12;
    private static final double FLOOR = 280;
    private static final int[] TICKS = {1, 5, 10, 20, 40, 60, 80, 100};

    private BacktestChances() {}

    static void write(Html h, Backtest b) {
        h.element(
                        "p",
                        "Sensors in bands of rising chance: across what they were given on average, upward the share that"
                                + " failed, with 95 % limits. On the line the chances came true; above it they were too low."
                                + " The scales are stretched at the lower end, where most sensors are.",
                        "class",
                        "how")
                .line();
        h.open("div", "class", "charts");
        b.settings().horizons().forEach(horizon -> chart(h, rows(b, horizon), horizon));
        h.close("div").line();
        h.open("details").element("summary", "The figures behind the charts");
        b.settings().horizons().forEach(horizon -> table(h, rows(b, horizon), horizon));
        h.close("details").line();
        scores(h, b);
    }

    private static List<CalibrationRow> rows(Backtest b, Horizon horizon) {
        return b.calibration().stream().filter(r -> r.horizon() == horizon).toList();
    }

    private static void chart(Html h, List<CalibrationRow> rows, Horizon horizon) {
        h.open("figure", "class", "chart");
        h.element("figcaption", "Within " + BacktestVerdict.words(horizon));
        Svg svg = Svg.open(
                h,
                WIDTH,
                HEIGHT,
                "Share that failed within " + BacktestVerdict.words(horizon)
                        + " against the chance given, by bands of chance; the figures are in the table below",
                "plot");
        svg.line(LEFT, FLOOR, RIGHT, FLOOR, "axis").line(LEFT, TOP, LEFT, FLOOR, "axis");
        for (int tick : TICKS) {
            double share = tick / 100.0;
            svg.line(LEFT, y(share), RIGHT, y(share), "grid");
            svg.line(x(share), TOP, x(share), FLOOR, "grid");
            svg.text(LEFT - 6, y(share) + 4, "end", tick + " %", "tick");
            svg.text(x(share), FLOOR + 17, "middle", Integer.toString(tick), "tick");
        }
        svg.text(LEFT, FLOOR + 36, "start", "chance given, per cent", "tick");
        svg.line(x(0), y(0), x(1), y(1), "on-hand");
        for (CalibrationRow r : rows) {
            if (r.band() != null && Double.isFinite(r.observed().value())) {
                double x = x(r.expected());
                svg.line(x, y(r.observed().lower()), x, y(r.observed().upper()), "interval");
                svg.circle(x, y(r.observed().value()), 4, "dot");
                svg.field(x - 9, TOP, 18, FLOOR - TOP, tip(r));
            }
        }
        svg.close();
        h.empty("p", "class", "readout", "aria-hidden", "true");
        h.close("figure").line();
    }

    private static String tip(CalibrationRow r) {
        return band(r) + ": " + Format.share(r.expected()) + " expected, "
                + Format.share(r.observed().value()) + " failed ("
                + Format.share(r.observed().lower()) + " to "
                + Format.share(r.observed().upper()) + ") of "
                + Format.count(r.forecasts(), "forecast");
    }

    private static void table(Html h, List<CalibrationRow> rows, Horizon horizon) {
        new Grid<CalibrationRow>(Grid.Shape.CARDS, "Within " + BacktestVerdict.words(horizon) + ", all days together")
                .column("Chance given", (h1, r) -> h1.text(band(r)))
                .count("Forecasts", CalibrationRow::forecasts)
                .count("Fate known", CalibrationRow::known)
                .count("Replaced working", CalibrationRow::replaced)
                .number("Failed", CalibrationRow::failures, (h1, r) -> h1.text(Format.fixed(r.failures(), 1)))
                .number("Expected", CalibrationRow::expected, (h1, r) -> h1.text(Format.share(r.expected())))
                .number("Observed", r -> r.observed().value(), (h1, r) -> {
                    h1.element("span", Format.share(r.observed().value()), "class", "key");
                    h1.element(
                            "span",
                            Format.share(r.observed().lower()) + " to "
                                    + Format.share(r.observed().upper()),
                            "class",
                            "under");
                })
                .write(h, rows);
    }

    private static String band(CalibrationRow r) {
        return r.band() == null
                ? "any"
                : Format.whole(100 * r.band().from()) + " to "
                        + Format.chance(r.band().to());
    }

    private static void scores(Html h, Backtest b) {
        h.element("h3", "Scores");
        h.element(
                        "p",
                        "Squared error is the mean of the squared distance of chance and outcome (Brier score), nought when"
                                + " perfect. Gain is the share of it that the engine is without against chances by age and law"
                                + " of life alone. Expected counts all forecasts, failed those of known fate; by the fit is how"
                                + " far the failures expected were sure, all hazards higher or lower together. Order is the concordance: one half is chance, 1 perfect.",
                        "class",
                        "how")
                .line();
        h.open("details").element("summary", "Each day for itself");
        grid("Scores by day and horizon")
                .write(h, b.scores().stream().filter(s -> s.cut() != null).toList());
        h.close("details").line();
        grid("Scores, all days together")
                .write(h, b.scores().stream().filter(s -> s.cut() == null).toList());
    }

    private static Grid<ScoreRow> grid(String caption) {
        return new Grid<ScoreRow>(Grid.Shape.CARDS, caption)
                .column("Within", (h, s) -> {
                    h.element("span", BacktestVerdict.words(s.horizon()), "class", "key");
                    if (s.cut() != null) {
                        h.element("span", "as of " + s.cut(), "class", "under");
                    }
                })
                .count("Forecasts", ScoreRow::forecasts)
                .number("Failed, of known fate", ScoreRow::failures, (h, s) -> h.text(Format.fixed(s.failures(), 1)))
                .number("Expected", ScoreRow::expected, (h, s) -> {
                    h.element("span", Format.fixed(s.expected(), 1), "class", "key");
                    h.element(
                            "span",
                            Format.fixed(s.expectedLimits().lower(), 1) + " to "
                                    + Format.fixed(s.expectedLimits().upper(), 1) + " by the fit",
                            "class",
                            "under");
                })
                .number("Observed for one expected", s -> s.ratio().value(), (h, s) -> {
                    h.element("span", Format.fixed(s.ratio().value(), 2), "class", "key");
                    h.element(
                            "span",
                            Format.fixed(s.ratio().lower(), 2) + " to "
                                    + Format.fixed(s.ratio().upper(), 2),
                            "class",
                            "under");
                })
                .number("Squared error", ScoreRow::brier, (h, s) -> h.text(Format.figure(s.brier())))
                .number("By age alone", ScoreRow::brierByAge, (h, s) -> h.text(Format.figure(s.brierByAge())))
                .number("Gain", ScoreRow::skill, (h, s) -> {
                    h.element("span", signed(s.skill()), "class", "key");
                    h.element(
                            "span",
                            signed(s.gain().lower() / s.brierByAge()) + " to "
                                    + signed(s.gain().upper() / s.brierByAge()),
                            "class",
                            "under");
                })
                .number("Order", ScoreRow::concordance, (h, s) -> h.text(Format.fixed(s.concordance(), 2)))
                .number(
                        "Order by age",
                        ScoreRow::concordanceByAge,
                        (h, s) -> h.text(Format.fixed(s.concordanceByAge(), 2)));
    }

    private static String signed(double share) {
        return Double.isFinite(share) ? Format.fixed(100 * share, 1) + "\u202f%" : Format.NONE;
    }

    /** Square roots stretch the lower end without hiding nought. */
    private static double x(double share) {
        return LEFT + Math.sqrt(share) * (RIGHT - LEFT);
    }

    private static double y(double share) {
        return FLOOR - Math.sqrt(Math.min(1, share)) * (FLOOR - TOP);
    }
}
