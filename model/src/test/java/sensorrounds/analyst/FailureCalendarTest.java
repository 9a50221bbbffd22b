package sensorrounds.analyst;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sensorrounds.analyst.CalendarRow.Period;
import sensorrounds.history.FailureDays;
import sensorrounds.survival.Estimate;

class FailureCalendarTest {
    private static LocalDate day(String text) {
        return LocalDate.parse(text);
    }

    /**
     * By hand: watched alive from 2023-12-11 to 2023-12-21 (10 days), failed on one of the 20 days after: ten of them in 2023.
     * There it was alive on the k-th with 1 - (k - 1/2)/20, 7.5 days in all, in January 2.5.
     */
    @Test
    void oneFailureOverTheNewYearOnPaper() {
        FailureCalendar calendar = new FailureCalendar();
        calendar.add(
                day("2023-12-11"),
                day("2023-12-21"),
                new FailureDays(day("2023-12-21"), day("2024-01-10")),
                null,
                null);
        List<CalendarRow> rows = calendar.rows();
        assertThat(rows).extracting(CalendarRow::number).containsExactly(2023, 2024, 1, 12);
        CalendarRow old = rows.get(0);
        assertThat(old.failures()).isCloseTo(0.5, within(1e-9));
        assertThat(old.sensorYears()).isCloseTo(17.5 / 365.25, within(1e-9));
        assertThat(old.rate().value()).isCloseTo(500 / (17.5 / 365.25), within(1e-3));
        assertThat(old.months()).isEqualTo(1);
        assertThat(rows.get(1).failures()).isCloseTo(0.5, within(1e-9));
        assertThat(rows.get(1).sensorYears()).isCloseTo(2.5 / 365.25, within(1e-9));
        assertThat(old.ratio().value()).isNaN();
    }

    /**
     * Exact Poisson 95 % limits of a count, Ulm (1990), Am. J. Epidemiol. 131:373, and Garwood (1936), table of confidence
     * limits; values from memory, to the digits printed.
     */
    @ParameterizedTest
    @CsvSource({
        "0, 0, 3.69",
        "1, 0.03, 5.57",
        "5, 1.62, 11.67",
        "10, 4.80, 18.39",
        "20, 12.22, 30.89",
        "50, 37.11, 65.92"
    })
    void limitsOfACountAreThoseOfTheTables(int failures, double lower, double upper) {
        Estimate rate =
                CalendarRow.of(Period.YEAR, 2024, 12, failures, 365_250, 0, 0).rate();
        assertThat(rate.value()).isEqualTo(failures);
        assertThat(rate.lower()).isCloseTo(lower, within(0.005));
        assertThat(rate.upper()).isCloseTo(upper, within(0.005));
    }

    @Test
    void merelyLooseIntervalsTellNoSeason() {
        FailureCalendar calendar = new FailureCalendar();
        calendar.add(
                day("2023-01-01"),
                day("2023-06-01"),
                new FailureDays(day("2023-06-01"), day("2023-08-01")),
                null,
                null);
        assertThat(calendar.tellsSeason()).isTrue();
        calendar.add(
                day("2023-01-01"),
                day("2023-06-01"),
                new FailureDays(day("2023-06-01"), day("2023-08-02")),
                null,
                null);
        assertThat(calendar.tellsSeason()).isTrue();
        calendar.add(
                day("2023-01-01"),
                day("2023-06-01"),
                new FailureDays(day("2023-06-01"), day("2023-08-02")),
                null,
                null);
        assertThat(calendar.tellsSeason()).isFalse();
        assertThat(calendar.rows()).extracting(CalendarRow::period).containsOnly(Period.YEAR);
        assertThat(new FailureCalendar().rows()).isEmpty();
    }

    /** Constant hazard 0.1 a year but 0.3 in 2023, visits every 20 days: each year gets its own rate back. Seed 4. */
    @Test
    void aBadYearStandsOutWithItsRate() {
        Random dice = new Random(4);
        FailureCalendar whole = new FailureCalendar();
        FailureCalendar[] parts = {new FailureCalendar(), new FailureCalendar()};
        LocalDate start = day("2022-01-01");
        LocalDate end = day("2025-01-01");
        for (int i = 0; i < 6000; i++) {
            LocalDate worked = start;
            FailureDays failed = null;
            while (failed == null && worked.isBefore(end)) {
                LocalDate next = worked.plusDays(20);
                double yearly = worked.getYear() == 2023 ? 0.3 : 0.1;
                if (dice.nextDouble() < -Math.expm1(-yearly * 20 / 365.25)) {
                    failed = new FailureDays(worked, next);
                } else {
                    worked = next;
                }
            }
            whole.add(start, worked, failed, null, null);
            parts[i % 2].add(start, worked, failed, null, null);
        }
        List<CalendarRow> rows = whole.rows();
        assertThat(rows.get(0).rate().value()).isCloseTo(100, within(9.0));
        assertThat(rows.get(1).rate().value()).isCloseTo(300, within(18.0));
        assertThat(rows.get(2).rate().value()).isCloseTo(100, within(12.0));
        assertThat(rows.get(1).rate().lower()).isGreaterThan(rows.get(0).rate().upper());
        assertThat(parts[1].merge(parts[0]).rows()).isEqualTo(rows);
    }
}
