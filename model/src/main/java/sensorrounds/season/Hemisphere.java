package sensorrounds.season;

import java.time.Month;

/**
 * Half of the globe, for the cold months of a place whose temperatures are not known: its meteorological winter, three whole
 * months (World Meteorological Organization, International Meteorological Vocabulary, "season"; from memory).
 */
public enum Hemisphere {
    NORTH(ColdMonths.of(Month.DECEMBER, Month.JANUARY, Month.FEBRUARY)),
    SOUTH(ColdMonths.of(Month.JUNE, Month.JULY, Month.AUGUST));

    private final ColdMonths winter;

    Hemisphere(ColdMonths winter) {
        this.winter = winter;
    }

    public ColdMonths winter() {
        return winter;
    }
}
