package sensorrounds.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.time.Month;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SeasonClockTest {
    private final ColdMonths winter = ColdMonths.of(Month.DECEMBER, Month.JANUARY, Month.FEBRUARY);

    @Test
    void coldDaysAreThoseOfTheCalendarCountedOneByOne() {
        Random random = new Random(11);
        for (int i = 0; i < 200; i++) {
            LocalDate after = LocalDate.of(1990, 1, 1).plusDays(random.nextInt(15_000));
            LocalDate to = after.plusDays(random.nextInt(1500));
            long counted = 0;
            for (LocalDate day = after.plusDays(1); !day.isAfter(to); day = day.plusDays(1)) {
                counted += winter.contains(day) ? 1 : 0;
            }
            assertThat(winter.daysBetween(after, to)).isEqualTo(counted);
        }
    }

    /** By hand: the winter of 2023/24 has 31 + 31 + 29 days, the year 366; twice as fast in the cold makes 91 days more. */
    @Test
    void aColdDayIsAsLongAsTheFactor() {
        LocalDate summer = LocalDate.of(2023, 6, 30);
        LocalDate next = LocalDate.of(2024, 6, 30);
        assertThat(new SeasonClock(winter, 2).length(summer, next)).isEqualTo(366 + 91);
        assertThat(new SeasonClock(winter, 1).length(summer, next)).isEqualTo(366);
        assertThat(new SeasonClock(winter, 0.5).length(summer, next)).isEqualTo(366 - 45.5);
        assertThat(new SeasonClock(winter, 2).length(summer, summer)).isZero();
    }

    @Test
    void lengthsAddUpAndTheSlopeIsThatOfTheLength() {
        LocalDate a = LocalDate.of(2021, 3, 4);
        LocalDate b = LocalDate.of(2022, 1, 20);
        LocalDate c = LocalDate.of(2024, 2, 10);
        SeasonClock clock = new SeasonClock(winter, 1.7);
        assertThat(clock.length(a, b) + clock.length(b, c)).isCloseTo(clock.length(a, c), within(1e-9));
        double h = 1e-6;
        double up = new SeasonClock(winter, 1.7 * Math.exp(h)).length(a, c);
        double down = new SeasonClock(winter, 1.7 * Math.exp(-h)).length(a, c);
        assertThat(clock.slope(a, c)).isCloseTo((up - down) / (2 * h), within(1e-6 * clock.slope(a, c)));
    }

    @Test
    void whatHasNoMeaningIsRefused() {
        LocalDate day = LocalDate.of(2024, 1, 1);
        assertThatThrownBy(() -> new SeasonClock(winter, 0)).hasMessageContaining("above 0");
        assertThatThrownBy(() -> winter.daysBetween(day, day.minusDays(1))).hasMessageContaining("later day");
        assertThatThrownBy(() -> winter.daysBetween(LocalDate.of(1899, 1, 1), day))
                .hasMessageContaining("1899");
        assertThat(ColdMonths.of().divides()).isFalse();
        assertThat(ColdMonths.of(Month.values()).divides()).isFalse();
        assertThat(winter.divides()).isTrue();
    }
}
