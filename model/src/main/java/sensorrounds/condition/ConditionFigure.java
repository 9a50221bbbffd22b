package sensorrounds.condition;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import sensorrounds.numeric.StandardNormal;

/**
 * One figure of the fitted model of the hidden condition, for the tables.
 *
 * @param name its name
 * @param value NaN for a line of words alone
 * @param lower lower 95 % limit, as {@code upper}; NaN with the value
 * @param meaning what it says, in words
 */
public record ConditionFigure(String name, double value, double lower, double upper, String meaning)
        implements Serializable {
    /** Every figure of a fit, after a line that says what came of it. */
    public static List<ConditionFigure> of(HiddenFit fit, SetLikeness likeness) {
        List<ConditionFigure> figures = new ArrayList<>();
        figures.add(new ConditionFigure(
                "fit",
                Double.NaN,
                Double.NaN,
                Double.NaN,
                fit.status() + ": "
                        + (fit.converged()
                                ? String.format(
                                        Locale.ROOT,
                                        "fitted to %d sensors, %d of them failed",
                                        fit.sensors(),
                                        fit.failures())
                                : "no fit: " + fit.cause()
                                        + "; outlooks rest on the law of life and the last report")));
        if (!fit.converged()) {
            return figures;
        }
        figures.add(search("iterations", fit.iterations(), "steps of the search"));
        figures.add(search(
                "gradient_norm",
                powerOfTen(fit.gradientNorm()),
                "largest derivative per sensor where the search stopped, up to the next power of ten"));
        figures.add(search("condition", powerOfTen(fit.condition()), "condition of the information, likewise"));
        if (fit.leftOut() > 0) {
            figures.add(new ConditionFigure(
                    "left_out",
                    fit.leftOut(),
                    Double.NaN,
                    Double.NaN,
                    "sensors left out of the fit because their readings contradict each other; those in service have the "
                            + "simpler outlook, with this reason"));
        }
        HiddenParameters p = fit.parameters();
        Lines lines = new Lines(fit, figures);
        for (int b = 0; b < p.bands(); b++) {
            String band = p.bands() == 1 ? "" : "_band_" + (b + 1);
            lines.log("weakening" + band, b, "rate of weakening, relative to the cohort's law of life");
            lines.log("dying_when_weak" + band, p.bands() + b, "deaths of weak sensors per year");
        }
        lines.log("sudden_death", p.sudden(), "rate of sudden death, relative to the cohort's law of life");
        figures.add(new ConditionFigure(
                "weak_stages",
                fit.model().stages().number(),
                Double.NaN,
                Double.NaN,
                "stages a sensor passes while it is weak; with two it dies the sooner the longer it is weak: "
                        + fit.decision().stages()));
        if (p.knowsSeason()) {
            lines.log(
                    "cold_rate_factor",
                    p.coldRate(),
                    "rates of weakening and dying in cold months, relative to the others: "
                            + fit.decision().season());
        } else {
            figures.add(new ConditionFigure(
                    "cold_rate_factor",
                    Double.NaN,
                    Double.NaN,
                    Double.NaN,
                    fit.decision().season()));
        }
        lines.log("wake_odds_when_weak", p.wake(), "odds that a try wakes a weak sensor, relative to a good one");
        lines.log(
                "wake_odds_when_weak_cold",
                p.wakeCold(),
                "further factor on these odds in the cold, beside what the cold does to good sensors");
        lines.plain(
                "wake_odds_slope",
                p.wakeSlope(),
                "change of their log for each unit of a good sensor's log odds, from those of a chance of 0.85: under 0, poorer"
                        + " readers lose fewer of the weak than these odds say");
        lines.chance("low_report_when_good", p.report(false, false), "chance of a low battery report, sensor good");
        lines.chance("low_report_when_good_cold", p.report(false, true), "the same in the cold");
        lines.chance("low_report_when_weak", p.report(true, false), "chance of a low battery report, sensor weak");
        lines.chance("low_report_when_weak_cold", p.report(true, true), "the same in the cold");
        lines.chance("missed", p.missed(), "chance that a read misses a working sensor however often it is tried");
        lines.chance(
                "warning_on_alive",
                p.warning(false),
                "chance of the system's warning being on at a visit made for another reason, this sensor alive");
        lines.chance("warning_on_dead", p.warning(true), "the same, this sensor dead and on the road");
        lines.chance("death_reported", p.reported(), "share of deaths on the road whose warning brings the driver in");
        lines.log("reports_per_year", p.reporting(), "rate at which it then does; 365.25 over it are the mean days");
        figures.add(new ConditionFigure(
                "set_variance",
                likeness.variance(),
                Double.NaN,
                Double.NaN,
                "variance over vehicles of the factor that the hazards of a vehicle's sensors share: "
                        + likeness.note()));
        return figures;
    }

    private static ConditionFigure search(String name, double value, String meaning) {
        return new ConditionFigure(name, value, Double.NaN, Double.NaN, meaning);
    }

    /** What is left of a derivative at a maximum hangs on the order of sums; its size does not. */
    private static double powerOfTen(double value) {
        return value > 0 ? Math.pow(10, Math.ceil(Math.log10(value))) : 0;
    }

    private record Lines(HiddenFit fit, List<ConditionFigure> figures) {
        void log(String name, int i, String meaning) {
            double half = half(i);
            double at = fit.parameters().at(i);
            figures.add(new ConditionFigure(name, Math.exp(at), Math.exp(at - half), Math.exp(at + half), meaning));
        }

        void plain(String name, int i, String meaning) {
            double half = half(i);
            double at = fit.parameters().at(i);
            figures.add(new ConditionFigure(name, at, at - half, at + half, meaning));
        }

        void chance(String name, int i, String meaning) {
            double half = half(i);
            double at = fit.parameters().at(i);
            figures.add(new ConditionFigure(
                    name, Odds.chance(at), Odds.chance(at - half), Odds.chance(at + half), meaning));
        }

        private double half(int i) {
            return StandardNormal.quantile(0.975) * Math.sqrt(fit.covariance()[i][i]);
        }
    }
}
