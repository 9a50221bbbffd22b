package sensorrounds.tables;

import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.whole;
import static sensorrounds.tables.Column.word;

import java.util.List;
import sensorrounds.analyst.CalendarRow;

/** Stored table of failures by calendar. */
public final class FailureCalendars {
    public static final Table<CalendarRow> TABLE = new Table<>(
            "failure_calendar",
            "Failures per 1,000 sensor-years by calendar year, and by month of the year where at least half of the failures are"
                    + " known to within 61 days. A failure counts in each day it may lie on in equal parts, which smooths the"
                    + " rates. Failures come out sooner than survival is confirmed: the months before the last visit come"
                    + " out too high.",
            List.of(
                    word("period", "YEAR or MONTH_OF_YEAR.", CalendarRow::period),
                    whole("number", "The year, or the month from 1.", CalendarRow::number),
                    whole("months", "Calendar months with sensors watched that it rests on.", CalendarRow::months),
                    number("failures", "Failures, in parts where an interval reaches over.", CalendarRow::failures),
                    number("sensor_years", "Time watched.", CalendarRow::sensorYears),
                    number(
                            "per_1000_years",
                            "Failures per 1,000 sensor-years.",
                            r -> r.rate().value()),
                    number("per_1000_lower", "Lower 95 % limit.", r -> r.rate().lower()),
                    number("per_1000_upper", "Upper 95 % limit.", r -> r.rate().upper()),
                    number("failures_of_age", "Those of sensors of known age.", CalendarRow::failuresOfAge),
                    number(
                            "expected_by_age",
                            "Failures the laws of life expect of these in the time they were watched.",
                            CalendarRow::expectedByAge),
                    number(
                            "ratio",
                            "Failures for one expected; over 1 it was worse than the sensors' age explains.",
                            r -> r.ratio().value()),
                    number("ratio_lower", "Lower 95 % limit.", r -> r.ratio().lower()),
                    number("ratio_upper", "Upper 95 % limit.", r -> r.ratio().upper())));

    private FailureCalendars() {}
}
