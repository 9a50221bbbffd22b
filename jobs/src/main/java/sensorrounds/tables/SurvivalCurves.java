package sensorrounds.tables;

import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.text;
import static sensorrounds.tables.Column.whole;
import static sensorrounds.tables.Column.word;

import java.util.List;
import sensorrounds.survival.CurvePoint;

/** Stored table of survival curves. */
public final class SurvivalCurves {
    public static final Table<CurvePoint> TABLE = new Table<>(
            "survival_curves",
            "Share of sensors still working by age, per cohort and estimator, with bands and the number under observation."
                    + " PESSIMISTIC counts preventive replacements as failures and stands where there are any; TURNBULL is the"
                    + " estimate from the failure intervals without a shape, which falls somewhere between two points of unequal"
                    + " share.",
            List.of(
                    text("cohort", "Cohort.", CurvePoint::cohort),
                    word("method", "Estimator.", CurvePoint::method),
                    whole("age_days", "Age, days.", CurvePoint::ageDays),
                    number("survival", "Share still working.", CurvePoint::survival),
                    number("lower", "Lower 95 % limit; null where none is known.", CurvePoint::lower),
                    number("upper", "Upper 95 % limit; null where none is known.", CurvePoint::upper),
                    number(
                            "at_risk",
                            "Sensors under observation at that age; may rise, as they enter at their own age.",
                            CurvePoint::atRisk),
                    number("failures", "Failures up to that age.", CurvePoint::failures)));

    private SurvivalCurves() {}
}
