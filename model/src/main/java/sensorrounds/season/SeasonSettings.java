package sensorrounds.season;

import java.io.Serializable;

/**
 * What counts as cold.
 *
 * @param coldMonthCelsius a month is cold where the median of its logged air temperatures lies under this, °C
 * @param leastVisits visits with a temperature that a month needs for a median of its own
 * @param hemisphere whose winter is cold where neither the depot nor the fleet has enough temperatures of a month
 */
public record SeasonSettings(double coldMonthCelsius, int leastVisits, Hemisphere hemisphere) implements Serializable {
    public SeasonSettings {
        if (!Double.isFinite(coldMonthCelsius) || leastVisits < 1) {
            throw new IllegalArgumentException("a season needs a finite temperature and at least 1 visit a month, not "
                    + coldMonthCelsius + " and " + leastVisits);
        }
    }

    /** Under 5 °C by 20 visits or more, else the northern winter; common practice, no source. */
    public static SeasonSettings defaults() {
        return new SeasonSettings(5, 20, Hemisphere.NORTH);
    }
}
