package sensorrounds.tables;

import static sensorrounds.tables.Column.count;
import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.text;
import static sensorrounds.tables.Column.whole;
import static sensorrounds.tables.Column.word;

import java.util.List;
import java.util.stream.Stream;
import sensorrounds.analyst.LifeAheadRow;
import sensorrounds.survival.CurvePoint;

/** Stored tables of the life still ahead after a report: one row for each group, and the groups' curves. */
public final class LifeAheads {
    private static final String KNOWN =
            "What was known that day: the last report at an age, or how the first low report came about (ANY_FIRST_LOW: all).";

    public static final Table<LifeAheadRow> TABLE = new Table<>(
            "life_ahead",
            "Life still ahead of sensors at an age by their last report, and after a first low battery report. Groups are formed"
                    + " by what was known on the day, never by anything later; time counts from that day. Weibull by the interval"
                    + " likelihood, lives taken as independent.",
            List.of(
                    whole("age_days", "Age at the day, days; null after a first low report.", LifeAheadRow::ageDays),
                    text("known", KNOWN, LifeAheadRow::known),
                    number("lives", "Sensors in the group.", LifeAheadRow::lives),
                    number("failures", "Those seen to fail.", LifeAheadRow::failures),
                    count("recovered", "Those reported good again later; null at an age.", LifeAheadRow::recovered),
                    whole("watched_days", "Longest time any was watched, days.", LifeAheadRow::lastDay),
                    word("status", "What came of the fit.", LifeAheadRow::status),
                    text("note", "Why there is no fit; empty when there is one.", LifeAheadRow::note),
                    number(
                            "median_days",
                            "Days by which half have failed; past watched_days the law goes beyond what was seen. Null"
                                    + " without a fit, as the columns after it.",
                            r -> r.median().value()),
                    number("median_lower", "Lower 95 % limit.", r -> r.median().lower()),
                    number("median_upper", "Upper 95 % limit.", r -> r.median().upper()),
                    number(
                            "working_after_365",
                            "Share still working after 365 days.",
                            r -> r.yearAhead().value()),
                    number(
                            "working_after_365_lower",
                            "Lower 95 % limit.",
                            r -> r.yearAhead().lower()),
                    number(
                            "working_after_365_upper",
                            "Upper 95 % limit.",
                            r -> r.yearAhead().upper())));

    /** One point of the curve of a group. */
    public record Line(LifeAheadRow row, CurvePoint point) {}

    public static final Table<Line> CURVES = new Table<>(
            "life_ahead_curves",
            "Share of each group of life_ahead still working by days from its day on. KAPLAN_MEIER puts failures in the middle"
                    + " of their interval and is a check; WEIBULL is of record.",
            List.of(
                    whole("age_days", "As in life_ahead.", l -> l.row().ageDays()),
                    text("known", KNOWN, l -> l.row().known()),
                    word("method", "Estimator.", l -> l.point().method()),
                    whole("days_ahead", "Days since the day.", l -> l.point().ageDays()),
                    number("survival", "Share still working.", l -> l.point().survival()),
                    number("lower", "Lower 95 % limit.", l -> l.point().lower()),
                    number("upper", "Upper 95 % limit.", l -> l.point().upper()),
                    number(
                            "at_risk",
                            "Sensors under observation then.",
                            l -> l.point().atRisk()),
                    number("failures", "Failures up to then.", l -> l.point().failures())));

    private LifeAheads() {}

    /** The points of one group. */
    public static Stream<Line> lines(LifeAheadRow row) {
        return row.curve().stream().map(p -> new Line(row, p));
    }
}
