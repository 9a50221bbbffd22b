package sensorrounds.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Month;
import java.util.List;
import org.junit.jupiter.api.Test;
import sensorrounds.season.ClimateMonth.Basis;

class ClimatesTest {
    private final SeasonSettings settings = new SeasonSettings(5, 3, Hemisphere.NORTH);
    private final MonthTemperatures logged = new MonthTemperatures();

    private void log(String depot, Month month, double... celsius) {
        for (double c : celsius) {
            logged.add(depot, month, c);
        }
    }

    private static ClimateMonth of(List<ClimateMonth> months, String depot, Month month) {
        return months.stream()
                .filter(m -> m.month() == month && java.util.Objects.equals(m.depot(), depot))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void eachMonthTakesTheFirstRungThatHasEnough() {
        log("Nordhafen", Month.JANUARY, -4, 2, 9);
        log("Nordhafen", Month.FEBRUARY, 12);
        log("Suedtor", Month.FEBRUARY, 1, 2, 3);
        log("Suedtor", Month.DECEMBER, 20, 20);
        Climates climates = Climates.of(logged, settings);

        ClimateMonth january = of(climates.months(), "Nordhafen", Month.JANUARY);
        assertThat(january).isEqualTo(new ClimateMonth("Nordhafen", Month.JANUARY, 3, 2, true, Basis.DEPOT));
        // One visit of its own, 12 degrees, does not do; the fleet's four have their middle at 2.5.
        ClimateMonth february = of(climates.months(), "Nordhafen", Month.FEBRUARY);
        assertThat(february).isEqualTo(new ClimateMonth("Nordhafen", Month.FEBRUARY, 1, 12, true, Basis.FLEET));
        assertThat(of(climates.months(), null, Month.FEBRUARY).median()).isEqualTo(2.5);
        // Two visits in the whole fleet do not do either: the declared months speak.
        ClimateMonth december = of(climates.months(), "Suedtor", Month.DECEMBER);
        assertThat(december).isEqualTo(new ClimateMonth("Suedtor", Month.DECEMBER, 2, 20, true, Basis.DECLARED));
        assertThat(of(climates.months(), "Suedtor", Month.JULY).cold()).isFalse();
        assertThat(climates.of("Nordhafen").months()).containsExactly(Month.JANUARY, Month.FEBRUARY, Month.DECEMBER);
    }

    @Test
    void aDepotWithoutTemperaturesHasTheClimateOfTheFleet() {
        log(null, Month.MARCH, 0, 0, 0);
        Climates climates = Climates.of(logged, new SeasonSettings(5, 3, Hemisphere.SOUTH));
        assertThat(climates.of("Elsewhere")).isEqualTo(climates.of(null));
        assertThat(climates.of(null).months()).containsExactly(Month.MARCH, Month.JUNE, Month.JULY, Month.AUGUST);
    }

    @Test
    void partsOfTheFleetAddUpInAnyOrder() {
        log("Nordhafen", Month.JANUARY, -4, 2);
        MonthTemperatures other = new MonthTemperatures();
        other.add("Nordhafen", Month.JANUARY, 9);
        other.add("Suedtor", Month.MAY, 15);
        MonthTemperatures one = new MonthTemperatures().merge(logged).merge(other);
        MonthTemperatures two = new MonthTemperatures().merge(other).merge(logged);
        assertThat(Climates.of(one, settings).months())
                .isEqualTo(Climates.of(two, settings).months());
        assertThat(of(Climates.of(one, settings).months(), "Nordhafen", Month.JANUARY)
                        .visits())
                .isEqualTo(3);
    }
}
