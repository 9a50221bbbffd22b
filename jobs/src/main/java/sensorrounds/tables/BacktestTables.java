package sensorrounds.tables;

import static sensorrounds.tables.Column.count;
import static sensorrounds.tables.Column.day;
import static sensorrounds.tables.Column.flag;
import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.text;
import static sensorrounds.tables.Column.whole;
import static sensorrounds.tables.Column.word;

import java.util.List;
import sensorrounds.backtest.CalibrationRow;
import sensorrounds.backtest.Judged;
import sensorrounds.backtest.ListRow;
import sensorrounds.backtest.ScoreRow;
import sensorrounds.backtest.StockRow;

/** Stored tables of a backtest. */
public final class BacktestTables {
    private static final String CUT = "Day the engine was asked on; null for all such days together.";
    private static final String HORIZON = "Days ahead that the chances speak of.";

    public static final Table<CalibrationRow> CALIBRATION = new Table<>(
            "backtest_calibration",
            "Of the sensors that were given a chance within a band, how many failed? All cuts together; limits count the sensors"
                    + " of a vehicle, on whatever cut, as alike.",
            List.of(
                    whole("horizon_days", HORIZON, r -> r.horizon().days()),
                    number(
                            "chance_from",
                            "Lower end of the band; null for all sensors together.",
                            r -> r.band() == null ? null : r.band().from()),
                    number(
                            "chance_to",
                            "Upper end of the band, itself in the next one.",
                            r -> r.band() == null ? null : r.band().to()),
                    count(
                            "forecasts",
                            "Forecasts in the band; one for each sensor and cut.",
                            CalibrationRow::forecasts),
                    count(
                            "known",
                            "Of them, those whose fate by the end of the horizon is known.",
                            CalibrationRow::known),
                    number(
                            "failures",
                            "Of those, that failed; an interval of failure that reaches over the end counts in part.",
                            CalibrationRow::failures),
                    count(
                            "replaced_working",
                            "Forecasts whose sensor was replaced while it answered before the end: it might have failed.",
                            CalibrationRow::replaced),
                    number("expected", "Mean chance given.", CalibrationRow::expected),
                    number(
                            "observed",
                            "Share that failed; those lost from sight are stood for by the others.",
                            r -> r.observed().value()),
                    number(
                            "observed_lower",
                            "Lower 95 % limit.",
                            r -> r.observed().lower()),
                    number(
                            "observed_upper",
                            "Upper 95 % limit.",
                            r -> r.observed().upper())));

    public static final Table<ScoreRow> SCORES = new Table<>(
            "backtest_scores",
            "How good the chances were, and how much better than those by age and law of life alone.",
            List.of(
                    day("cut_on", CUT, ScoreRow::cut),
                    whole("horizon_days", HORIZON, r -> r.horizon().days()),
                    count("forecasts", "Sensors asked about.", ScoreRow::forecasts),
                    count("known", "Of them, those whose fate by the end of the horizon is known.", ScoreRow::known),
                    number("failures", "Of those, that failed.", ScoreRow::failures),
                    number("expected", "Failures expected among all: the sum of the chances.", ScoreRow::expected),
                    number(
                            "expected_lower",
                            "What they may have been by the uncertainty of the fits: lower 95 % limit.",
                            r -> r.expectedLimits().lower()),
                    number(
                            "expected_upper",
                            "Upper 95 % limit.",
                            r -> r.expectedLimits().upper()),
                    number(
                            "observed_for_expected",
                            "Failures observed for one expected; over 1 the chances were too low.",
                            r -> r.ratio().value()),
                    number("ratio_lower", "Lower 95 % limit.", r -> r.ratio().lower()),
                    number("ratio_upper", "Upper 95 % limit.", r -> r.ratio().upper()),
                    number("brier", "Mean squared distance of chance and outcome, 0 is perfect.", ScoreRow::brier),
                    number("brier_by_age", "The same of the chances by age alone.", ScoreRow::brierByAge),
                    number(
                            "gain",
                            "By how much the engine's is lower than that by age alone.",
                            r -> r.gain().value()),
                    number("gain_lower", "Lower 95 % limit.", r -> r.gain().lower()),
                    number("gain_upper", "Upper 95 % limit.", r -> r.gain().upper()),
                    number("skill", "Share of the score by age alone that is gained.", ScoreRow::skill),
                    number(
                            "concordance",
                            "Of two sensors one of which failed first, how often it had the higher chance; equal chances"
                                    + " count one half, two failures on one day are no pair. 0.5 is chance; null without"
                                    + " a pair.",
                            ScoreRow::concordance),
                    number(
                            "concordance_error",
                            "Its standard error; null for all cuts together.",
                            ScoreRow::concordanceError),
                    number("concordance_by_age", "The same by age alone.", ScoreRow::concordanceByAge)));

    public static final Table<ListRow> LISTS = new Table<>(
            "backtest_lists",
            "What the engine's list would have hit, and what simple rules would have with a list as long.",
            List.of(
                    day("cut_on", CUT, ListRow::cut),
                    word(
                            "list",
                            "List whose length is matched: the engine's to REPLACE now or at the next stop, the one to"
                                    + " SEE_TO_NOW (replace, read or look first), or ONE_IN_TWENTY of all sensors. Parts of"
                                    + " the first, without rules beside them: REPLACE_LEADING, the likeliest to fail of each"
                                    + " stop made for the list; REPLACE_RIDING_ALONG, the others of such stops;"
                                    + " REPLACE_AT_A_STOP, those that wait for a stop that happens anyway;"
                                    + " REPLACE_AFTER_READING, those read first, and replaced at the next stop if they answer.",
                            ListRow::list),
                    word("rule", "Rule that picks the sensors; ENGINE is the list itself.", ListRow::rule),
                    whole("horizon_days", HORIZON, r -> r.horizon().days()),
                    number(
                            "sensors",
                            "Length of the rule's list; shorter where the rule finds no more.",
                            ListRow::sensors),
                    number("failures", "Of them, that failed by the end of the horizon.", ListRow::failures),
                    number(
                            "precision",
                            "Share of them that failed.",
                            r -> r.precision().value()),
                    number(
                            "precision_lower",
                            "Lower 95 % limit.",
                            r -> r.precision().lower()),
                    number(
                            "precision_upper",
                            "Upper 95 % limit.",
                            r -> r.precision().upper()),
                    number(
                            "saving",
                            "What replacing a listed sensor on the day asked would have saved by the end of the horizon, mean:"
                                    + " its breakdown where it failed, less the worth of the days it was still used, at the"
                                    + " prices of the settings; set-ups of stops are not counted.",
                            r -> r.saving().value()),
                    number("saving_lower", "Lower 95 % limit.", r -> r.saving().lower()),
                    number("saving_upper", "Upper 95 % limit.", r -> r.saving().upper()),
                    number("saved", "Saving of the whole list.", ListRow::saved),
                    number(
                            "stops",
                            "Set-ups of the stops and readings made for the engine's list, to be taken off it; 0 for the other rules, which"
                                    + " are spared stops of their own.",
                            ListRow::stops),
                    number("captured", "Share of all failures that were on the list.", ListRow::captured),
                    number("lift", "How many times what lists as long would have hit by chance.", ListRow::lift)));

    public static final Table<StockRow> STOCK = new Table<>(
            "backtest_stock",
            "Demand forecast for each month against the sensors that crews fitted in it, for whatever reason.",
            List.of(
                    day("cut_on", "Day the engine was asked on.", StockRow::cut),
                    text("part", "Part number.", StockRow::partId),
                    text("depot", "Depot; null when not known.", StockRow::depot),
                    text("month", "Month.", r -> r.month().toString()),
                    day("from", "First day of it after the cut.", StockRow::from),
                    day("to", "Last day.", StockRow::to),
                    number("expected", "Pieces expected, those the list planned among them.", StockRow::expected),
                    whole("lower", "Lower limit of the 90 % prediction interval.", StockRow::lower),
                    whole("upper", "Upper limit.", StockRow::upper),
                    count("fitted", "Sensors fitted on record.", StockRow::fitted),
                    flag("inside", "Whether that lies within the interval.", StockRow::inside)));

    public static final Table<Judged> FORECASTS = new Table<>(
            "backtest_forecasts",
            "Every forecast with what became of the sensor. Of a large fleet, those of a part of its vehicles.",
            List.of(
                    day(
                            "cut_on",
                            "Day the engine was asked on.",
                            r -> r.forecast().cut()),
                    text("vehicle_id", "Vehicle.", r -> r.forecast().vehicleId()),
                    text(
                            "life_id",
                            "Key of the sensor's life.",
                            r -> r.forecast().lifeId()),
                    whole(
                            "age_days",
                            "Age then, days; null when not known.",
                            r -> r.forecast().ageDays()),
                    whole(
                            "supposed_age_days",
                            "Age a crew would take it for, days: the known one, else its vehicle's, else the time since its"
                                    + " first answer.",
                            r -> r.forecast().supposedAgeDays()),
                    word(
                            "last_report",
                            "State at its last reading.",
                            r -> r.forecast().lastReport()),
                    word(
                            "advice",
                            "What the list said of it.",
                            r -> r.forecast().advice()),
                    number(
                            "p_failed_already",
                            "Chance of having failed already.",
                            r -> r.forecast().chances().now()),
                    number(
                            "p_fail_30d",
                            "Chance of failing within 30 days, as the next ones.",
                            r -> r.forecast().chances().within30()),
                    number(
                            "p_fail_90d",
                            "Within 90 days.",
                            r -> r.forecast().chances().within90()),
                    number(
                            "p_fail_180d",
                            "Within 180 days.",
                            r -> r.forecast().chances().within180()),
                    number(
                            "p_fail_365d",
                            "Within 365 days.",
                            r -> r.forecast().chances().within365()),
                    number(
                            "age_fail_30d",
                            "The same by age and law of life alone.",
                            r -> r.forecast().byAge().within30()),
                    number(
                            "age_fail_90d",
                            "Within 90 days.",
                            r -> r.forecast().byAge().within90()),
                    number(
                            "age_fail_180d",
                            "Within 180 days.",
                            r -> r.forecast().byAge().within180()),
                    number(
                            "age_fail_365d",
                            "Within 365 days.",
                            r -> r.forecast().byAge().within365()),
                    count(
                            "worked_day",
                            "Last day it is known to have worked, counted from the cut, but no more than 30 days before a"
                                    + " failure that a warning told of; 0 or less when it never answered after.",
                            r -> r.fate().workedOn()),
                    number(
                            "failed_by_day",
                            "First day it is known failed, counted from the cut; null when it is not. 0 or less when it"
                                    + " had failed by the cut and that came out later.",
                            r -> r.fate().failed() ? r.fate().failedBy() : Double.NaN),
                    word(
                            "ending",
                            "How the knowledge of it ends.",
                            r -> r.fate().ending())));

    /** In the order a reader would want them. */
    public static final List<Table<?>> ALL = List.of(LISTS, CALIBRATION, SCORES, STOCK, FORECASTS);

    private BacktestTables() {}
}
