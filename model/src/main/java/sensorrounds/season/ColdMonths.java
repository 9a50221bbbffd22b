package sensorrounds.season;

import java.io.Serializable;
import java.time.LocalDate;
import java.time.Month;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * The months of the year that count as cold at one place. What is cold is said of the calendar, never of a sensor's own
 * readings: the covariate is external to the sensor (Kalbfleisch and Prentice 2002, The Statistical Analysis of Failure Time
 * Data, 6.3). Immutable.
 */
public final class ColdMonths implements Serializable {
    private static final long serialVersionUID = 1;
    /** Years whose days are reckoned with; no sensor is older. */
    private static final int FIRST_YEAR = 1950;

    private static final int YEARS = 150;

    private final EnumSet<Month> months;
    /** Cold days before the first of each month since {@link #FIRST_YEAR}; worked out on first use, whoever does it. */
    private transient int[] before;

    private ColdMonths(Set<Month> months) {
        this.months = months.isEmpty() ? EnumSet.noneOf(Month.class) : EnumSet.copyOf(months);
    }

    public static ColdMonths of(Collection<Month> months) {
        return new ColdMonths(Set.copyOf(months));
    }

    public static ColdMonths of(Month... months) {
        return of(Arrays.asList(months));
    }

    /** In the order of the year. */
    public List<Month> months() {
        return List.copyOf(months);
    }

    public boolean contains(LocalDate day) {
        return months.contains(day.getMonth());
    }

    /** Whether some months are cold and some are not; else the season tells nothing. */
    public boolean divides() {
        return !months.isEmpty() && months.size() < 12;
    }

    /**
     * Cold days after one day up to and with another.
     *
     * @throws IllegalArgumentException if {@code to} lies before {@code after}, or the years outside 1950 to 2099
     */
    public long daysBetween(LocalDate after, LocalDate to) {
        if (to.isBefore(after)) {
            throw new IllegalArgumentException("cold days after " + after + " need a later day, not " + to);
        }
        return upTo(to) - upTo(after);
    }

    /** All days likewise, of which {@link #daysBetween} are cold. */
    static long allDays(LocalDate after, LocalDate to) {
        return ChronoUnit.DAYS.between(after, to);
    }

    private long upTo(LocalDate day) {
        int place = 12 * (day.getYear() - FIRST_YEAR) + day.getMonthValue() - 1;
        if (place < 0 || place >= 12 * YEARS) {
            throw new IllegalArgumentException("days of the season need a year from " + FIRST_YEAR + " to "
                    + (FIRST_YEAR + YEARS - 1) + ", not " + day);
        }
        if (before == null) {
            before = daysBeforeMonths();
        }
        return before[place] + (contains(day) ? day.getDayOfMonth() : 0);
    }

    private int[] daysBeforeMonths() {
        int[] days = new int[12 * YEARS + 1];
        for (int i = 0; i < 12 * YEARS; i++) {
            YearMonth month = YearMonth.of(FIRST_YEAR + i / 12, i % 12 + 1);
            days[i + 1] = days[i] + (months.contains(month.getMonth()) ? month.lengthOfMonth() : 0);
        }
        return days;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ColdMonths o && months.equals(o.months);
    }

    @Override
    public int hashCode() {
        return months.hashCode();
    }

    @Override
    public String toString() {
        return months.toString();
    }
}
