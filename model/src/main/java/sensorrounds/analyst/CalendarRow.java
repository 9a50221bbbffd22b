package sensorrounds.analyst;

import sensorrounds.accuracy.ObservedExpected;
import sensorrounds.survival.Estimate;

/**
 * Failures of a stretch of the calendar.
 *
 * @param number the year, or the month of the year from 1
 * @param months calendar months with sensors watched that it rests on
 * @param failures spread over the days each may lie on, so not whole
 * @param sensorYears time watched
 * @param rate failures per 1,000 sensor-years, with exact 95 % limits of a Poisson count (Garwood 1936, Biometrika 28:437),
 *     for a count that is not whole by the gamma distribution they rest on
 * @param failuresOfAge those among sensors of known age with a law of life
 * @param expectedByAge failures those laws expect of the same sensors in the time they were watched
 * @param ratio failuresOfAge for one expected, limits likewise: over 1 the stretch was worse than the age of the sensors
 *     explains
 */
public record CalendarRow(
        Period period,
        int number,
        int months,
        double failures,
        double sensorYears,
        Estimate rate,
        double failuresOfAge,
        double expectedByAge,
        Estimate ratio) {
    private static final double DAYS_A_YEAR = 365.25;

    /** What the row stands for. */
    public enum Period {
        YEAR,
        MONTH_OF_YEAR
    }

    /**
     * The row of a stretch.
     *
     * @param days time watched, days
     * @param ofAge failures among sensors of known age
     * @param expected failures expected of those
     */
    public static CalendarRow of(
            Period period, int number, int months, double failures, double days, double ofAge, double expected) {
        double years = days / DAYS_A_YEAR;
        return new CalendarRow(
                period,
                number,
                months,
                failures,
                years,
                ObservedExpected.of(failures, years / 1000).ratio(),
                ofAge,
                expected,
                ObservedExpected.of(ofAge, expected).ratio());
    }
}
