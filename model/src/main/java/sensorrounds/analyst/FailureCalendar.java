package sensorrounds.analyst;

import java.io.Serializable;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import sensorrounds.analyst.CalendarRow.Period;
import sensorrounds.history.FailureDays;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.survival.LifeLaw;

/**
 * Failures and time watched by calendar month: a mergeable state of whole numbers. Not thread safe.
 *
 * <p>A failure counts in each of its {@link FailureDays} in equal parts, and the sensor as watched on each of them by the
 * chance that it still worked. Spread in this way a rate is smoothed over about the length of the intervals: a jump shows
 * as a slope, a season of months is flattened. So months of the year are given only where at least half of the failures are
 * known to {@value #SHORT} days. A sensor counts as watched until its last answer. Warnings bring failures to light sooner than
 * a visit confirms the sensors that live, so the months before the last visit come out too high.
 *
 * <p>A fleet that grows older fails more. Beside the failures stand those expected of the sensors of known age by the laws of
 * life in use, which know no calendar: their ratio tells a worse year from an older fleet. Over all years it is about 1,
 * since the laws were fitted to these failures.
 */
public final class FailureCalendar implements Serializable {
    private static final long serialVersionUID = 1;
    /** Days within which a failure must be known to tell its season. */
    static final int SHORT = 61;

    /** Parts of a failure and of a day are counted in these, so that no order of adding shows. */
    private static final double UNITS = 1e9;

    private final Map<YearMonth, Cell> months = new HashMap<>();
    private long failures;
    private long shortFailures;

    /** Failures, days watched, failures of known age, and those expected of them; all in units. */
    private static final class Cell implements Serializable {
        private static final long serialVersionUID = 1;

        private long failed;
        private long days;
        private long failedOfAge;
        private long expected;

        private Cell plus(Cell o) {
            failed += o.failed;
            days += o.days;
            failedOfAge += o.failedOfAge;
            expected += o.expected;
            return this;
        }
    }

    /**
     * Counts the sensors of one vehicle.
     *
     * @param law law of life in use for a sensor of this vehicle; null when there is none
     */
    public FailureCalendar add(VehicleHistory history, Function<SensorLife, LifeLaw> law) {
        for (SensorLife life : history.lives()) {
            LocalDate from = life.firstAnswered();
            if (life.lifetime() != null && life.lifetime().entry() == 0) {
                from = life.fittedOn();
            }
            FailureDays days = life.end() == LifeEnd.FAILED ? FailureDays.of(history, life) : null;
            LocalDate worked = days == null ? life.lastAnswered() : days.after();
            if (from != null && worked != null) {
                boolean aged = life.fittedOn() != null && life.lifetime() != null;
                add(from, worked, days, life.fittedOn(), aged ? law.apply(life) : null);
            }
        }
        return this;
    }

    /**
     * Counts one sensor.
     *
     * @param from day it came under observation
     * @param worked last day it is known to have worked
     * @param failed days after that, on one of which it failed; null when it did not
     * @param law null when its age or its law is not known
     */
    void add(LocalDate from, LocalDate worked, FailureDays failed, LocalDate fittedOn, LifeLaw law) {
        spread(from, worked, 0, fittedOn, law);
        if (failed != null) {
            failures++;
            shortFailures += failed.length() <= SHORT ? 1 : 0;
            spread(failed.after(), failed.last(), failed.length(), fittedOn, law);
        }
    }

    /** @param length days of the interval of failure; 0 for time under observation alive */
    private void spread(LocalDate after, LocalDate last, long length, LocalDate fittedOn, LifeLaw law) {
        for (LocalDate start = after; start.isBefore(last); ) {
            YearMonth month = YearMonth.from(start.plusDays(1));
            LocalDate end = month.atEndOfMonth().isBefore(last) ? month.atEndOfMonth() : last;
            double before = start.toEpochDay() - after.toEpochDay();
            double by = end.toEpochDay() - after.toEpochDay();
            // Alive on the k-th day of n with chance 1 - (k - 1/2) / n: summed from before to by.
            double alive = length == 0 ? by - before : (by - before) * (1 - (before + by) / (2.0 * length));
            Cell cell = months.computeIfAbsent(month, m -> new Cell());
            cell.days += Math.round(alive * UNITS);
            long part = length == 0 ? 0 : Math.round((by - before) / length * UNITS);
            cell.failed += part;
            if (law != null) {
                double age = start.toEpochDay() - fittedOn.toEpochDay();
                double hazard = law.cumulativeHazard(age + by - before) - law.cumulativeHazard(age);
                cell.failedOfAge += part;
                cell.expected += Math.round(hazard * alive / (by - before) * UNITS);
            }
            start = end;
        }
    }

    /** Takes in the counts of another part of the fleet. */
    public FailureCalendar merge(FailureCalendar o) {
        o.months.forEach(
                (month, cell) -> months.computeIfAbsent(month, m -> new Cell()).plus(cell));
        failures += o.failures;
        shortFailures += o.shortFailures;
        return this;
    }

    /** Whether the failures are known closely enough to tell a season. */
    public boolean tellsSeason() {
        return failures > 0 && 2 * shortFailures >= failures;
    }

    /** A row for each calendar year, then, where a season can be told, one for each month of the year. */
    public List<CalendarRow> rows() {
        TreeMap<Integer, Cell> years = new TreeMap<>();
        TreeMap<Integer, Cell> season = new TreeMap<>();
        Map<Integer, Integer> covered = new HashMap<>();
        Map<Integer, Integer> coveredOfSeason = new HashMap<>();
        for (YearMonth month : new TreeSet<>(months.keySet())) {
            Cell cell = months.get(month);
            years.computeIfAbsent(month.getYear(), y -> new Cell()).plus(cell);
            season.computeIfAbsent(month.getMonthValue(), m -> new Cell()).plus(cell);
            covered.merge(month.getYear(), 1, Integer::sum);
            coveredOfSeason.merge(month.getMonthValue(), 1, Integer::sum);
        }
        List<CalendarRow> rows = new ArrayList<>();
        years.forEach((year, cell) -> rows.add(row(Period.YEAR, year, covered.get(year), cell)));
        if (tellsSeason()) {
            season.forEach((m, cell) -> rows.add(row(Period.MONTH_OF_YEAR, m, coveredOfSeason.get(m), cell)));
        }
        return rows;
    }

    private static CalendarRow row(Period period, int number, int months, Cell cell) {
        return CalendarRow.of(
                period,
                number,
                months,
                cell.failed / UNITS,
                cell.days / UNITS,
                cell.failedOfAge / UNITS,
                cell.expected / UNITS);
    }
}
