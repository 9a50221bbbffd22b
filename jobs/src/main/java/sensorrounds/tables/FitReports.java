package sensorrounds.tables;

import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.text;
import static sensorrounds.tables.Column.whole;
import static sensorrounds.tables.Column.word;

import java.util.List;
import sensorrounds.survival.FitLine;

/** Stored table of what every fit of lives says of itself. */
public final class FitReports {
    private static final double DAYS_A_YEAR = 365.25;

    public static final Table<FitLine> TABLE = new Table<>(
            "fit_reports",
            "What every fit to the lives of sensors says of itself, in the same words and units: whether there is an answer,"
                    + " what it rests on, and how the search ended. Which law is in use stands in survival_fits.",
            List.of(
                    text("fit", "What was fitted.", FitLine::fit),
                    text("cohort", "To whose lives; 'all' is every life together, or a draw of them.", FitLine::cohort),
                    word(
                            "status",
                            "CONVERGED, or the code of what stood in the way.",
                            l -> l.report().status()),
                    text(
                            "cause",
                            "The same in words; empty with an answer.",
                            l -> l.report().cause()),
                    text(
                            "column",
                            "The covariate to blame; empty where none is.",
                            l -> l.report().column()),
                    number("lives", "Lives that took part.", l -> l.report().lives()),
                    number("failures", "Those that failed.", l -> l.report().failures()),
                    number(
                            "exposure_years",
                            "Sensor-years under observation, failures to the middle of their interval.",
                            l -> l.report().exposure() / DAYS_A_YEAR),
                    whole(
                            "iterations",
                            "Steps of the search; 0 when none was needed or none began.",
                            l -> l.report().iterations()),
                    number(
                            "gradient_norm",
                            "Largest derivative in standard units, per failure, where the search stopped, 0 below 1e-9; null when"
                                    + " none began, and for the curve without a shape, which is certified by its gap.",
                            l -> aboveRounding(l.report().gradientNorm())),
                    number(
                            "condition",
                            "Condition of the information in standard units; null as the gradient, and where it has none.",
                            l -> Double.isInfinite(l.report().condition())
                                    ? Double.NaN
                                    : l.report().condition())));

    /** What is left of a gradient at the maximum is rounding, which differs between versions of Java; tables do not. */
    static double aboveRounding(double gradient) {
        return gradient < 1e-9 ? 0 : gradient;
    }

    private FitReports() {}
}
