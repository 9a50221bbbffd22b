package sensorrounds.tables;

import static sensorrounds.tables.Column.count;
import static sensorrounds.tables.Column.flag;
import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.text;
import static sensorrounds.tables.Column.whole;
import static sensorrounds.tables.Column.word;

import java.util.List;
import sensorrounds.season.ClimateMonth;
import sensorrounds.season.SeasonFit;

/** Stored tables of what the cold does to sensors, and of which months are cold where. */
public final class Seasons {
    public static final Table<SeasonFit> EFFECT = new Table<>(
            "season_effect",
            "What cold months do to the hazard of sensors of the same age, each vehicle class compared within its depot, by"
                    + " the likelihood of failure intervals given alive at entry. One row.",
            List.of(
                    word("status", "What came of the fit.", f -> f.report().status()),
                    text(
                            "note",
                            "Why there is no figure; empty when there is one.",
                            f -> f.report().cause()),
                    number(
                            "factor",
                            "Hazard in cold months for one in others; null without a fit.",
                            f -> f.factor().value()),
                    number(
                            "factor_lower",
                            "Lower 95 % likelihood-ratio limit.",
                            f -> f.factor().lower()),
                    number(
                            "factor_upper",
                            "Upper 95 % likelihood-ratio limit.",
                            f -> f.factor().upper()),
                    number("p_value", "Chance of as much of a difference if there were none.", SeasonFit::pValue),
                    number(
                            "failures_cold",
                            "Failures that most likely fell in cold months: each interval shared out over its days.",
                            SeasonFit::failuresCold),
                    number("years_cold", "Sensor-years watched in cold months.", SeasonFit::yearsCold),
                    number("failures_other", "Failures of the other months.", SeasonFit::failuresOther),
                    number("years_other", "Sensor-years watched in the other months.", SeasonFit::yearsOther),
                    whole("bands", "Bands of age with a hazard of their own; 0 without a fit.", SeasonFit::bands),
                    whole("groups", "Classes at a depot compared within themselves.", SeasonFit::strata),
                    number(
                            "left_out",
                            "Lives of classes at a depot without a failure, which tell nothing of it.",
                            SeasonFit::leftOut)));

    public static final Table<ClimateMonth> CLIMATE = new Table<>(
            "climate",
            "Which months of the year count as cold, by the air temperatures written down at visits: never by what sensors"
                    + " report of themselves.",
            List.of(
                    text("depot", "Null for the fleet as a whole.", ClimateMonth::depot),
                    whole("month", "From 1.", m -> m.month().getValue()),
                    count(
                            "visits",
                            "Visits in that month, of any year, with an air temperature.",
                            ClimateMonth::visits),
                    number("median_celsius", "Median of these; null without any.", ClimateMonth::median),
                    flag("cold", "Whether the month counts as cold.", ClimateMonth::cold),
                    word(
                            "basis",
                            "What says so: DEPOT or FLEET by the median there, DECLARED by the winter of the hemisphere set.",
                            ClimateMonth::basis)));

    private Seasons() {}
}
