package sensorrounds.tables;

import static sensorrounds.tables.Column.count;
import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.text;
import static sensorrounds.tables.Column.whole;
import static sensorrounds.tables.Column.word;

import java.util.List;
import sensorrounds.recurrence.WarningCurvePoint;

/** Stored table of how system warnings add up on a vehicle. */
public final class WarningCurves {
    public static final Table<WarningCurvePoint> TABLE = new Table<>(
            "warning_curves",
            "Mean number of system warnings of a vehicle by a time, per class: mean cumulative function with limits from how"
                    + " vehicles differ. The warning that led to the first visit is not counted.",
            List.of(
                    word(
                            "clock",
                            "SINCE_FIRST_VISIT, or IN_SERVICE for time since first use.",
                            WarningCurvePoint::clock),
                    text("cohort", "Vehicle class, or 'all vehicles'.", WarningCurvePoint::cohort),
                    whole("days", "Time on that clock, days, in whole weeks.", WarningCurvePoint::days),
                    count(
                            "at_risk",
                            "Vehicles under observation then; may rise in service, as they join at their own age.",
                            WarningCurvePoint::atRisk),
                    count("warnings", "Warnings in that week.", WarningCurvePoint::events),
                    number("mean", "Warnings of a vehicle so far.", WarningCurvePoint::mean),
                    number(
                            "standard_error",
                            "Of the mean, from how vehicles differ.",
                            WarningCurvePoint::standardError),
                    number(
                            "lower",
                            "Lower 95 % limit; null before the first warning and where fewer than two degrees of freedom stand behind it.",
                            WarningCurvePoint::lower),
                    number(
                            "upper",
                            "Upper 95 % limit; null before the first warning and where fewer than two degrees of freedom stand behind it.",
                            WarningCurvePoint::upper)));

    private WarningCurves() {}
}
