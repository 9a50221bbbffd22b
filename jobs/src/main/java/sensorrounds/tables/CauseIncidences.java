package sensorrounds.tables;

import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.text;
import static sensorrounds.tables.Column.whole;
import static sensorrounds.tables.Column.word;

import java.util.List;
import sensorrounds.review.CauseIncidence;

/** Stored table of the shares of sensors ended by each cause. */
public final class CauseIncidences {
    public static final Table<CauseIncidence> TABLE = new Table<>(
            "cause_incidence",
            "Share of sensors ended by each cause up to an age, per cohort, every 91 days and at the last age under"
                    + " observation. The causes compete: at any age their shares and the share still working add to 1.",
            List.of(
                    text("cohort", "Cohort; 'all' is every life together.", CauseIncidence::cohort),
                    word(
                            "cause",
                            "Cause of failure, or PREVENTIVE for a replacement before it.",
                            CauseIncidence::cause),
                    whole("age_days", "Age, days.", CauseIncidence::ageDays),
                    number("incidence", "Share ended by the cause.", CauseIncidence::incidence),
                    number("lower", "Lower 95 % limit; null where the share is 0 or 1.", CauseIncidence::lower),
                    number("upper", "Upper 95 % limit; null where the share is 0 or 1.", CauseIncidence::upper),
                    number(
                            "at_risk",
                            "Sensors under observation at that age; may rise, as they enter at their own age.",
                            CauseIncidence::atRisk),
                    number("ends", "Ends by the cause up to that age.", CauseIncidence::ends)));

    private CauseIncidences() {}
}
