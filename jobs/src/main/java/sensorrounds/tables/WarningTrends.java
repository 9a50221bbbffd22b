package sensorrounds.tables;

import static sensorrounds.tables.Column.count;
import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.text;
import static sensorrounds.tables.Column.word;

import java.util.List;
import sensorrounds.recurrence.WarningTrend;

/** Stored table of rates and trends of system warnings. */
public final class WarningTrends {
    public static final Table<WarningTrend> TABLE = new Table<>(
            "warning_trends",
            "How often system warnings come to the vehicles of each class, and whether more often as time goes on.",
            List.of(
                    text("cohort", "Vehicle class, or 'all vehicles'.", WarningTrend::cohort),
                    count("vehicles", "Vehicles under observation.", WarningTrend::vehicles),
                    count("warned", "Vehicles with a warning after their first visit.", WarningTrend::warned),
                    count("warnings", "Warnings after the first visit.", WarningTrend::events),
                    number("exposure_years", "Vehicle-years under observation.", WarningTrend::exposureYears),
                    number("per_year", "Warnings of a vehicle a year.", WarningTrend::perYear),
                    word("direction", "What the test of trend says at 5 %.", WarningTrend::direction),
                    number(
                            "trend_statistic",
                            "Robust Laplace statistic, standard normal without a trend, above 0 for more often; null with"
                                    + " too few vehicles warned.",
                            WarningTrend::statistic),
                    number("p_value", "Two-sided; null with too few vehicles warned.", WarningTrend::pValue)));

    private WarningTrends() {}
}
