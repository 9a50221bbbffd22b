package sensorrounds.analyst;

import java.util.Arrays;
import java.util.List;

/** What may make sensors last longer or shorter, the most important first: where failures are few the last go out first. */
public enum Factor {
    VEHICLE_CLASS("vehicle class"),
    PLACE("place"),
    PART("part"),
    /** Expected distance a year; its effect is that of twice the distance. */
    ANNUAL_DISTANCE("distance a year"),
    /** Its climate, roads and people; these cannot be told apart. */
    DEPOT("depot"),
    /** Half of the year in which it was fitted. */
    FITTED("fitted in"),
    /** Cold months against the others: of the calendar, and no property of a life, which goes through both. */
    SEASON("months of the year");

    /** What a life has one of, in the same order. */
    static final List<Factor> OF_LIVES =
            Arrays.stream(values()).filter(f -> f != SEASON).toList();

    private final String words;

    Factor(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    /** Whether it is a number and not a choice of levels. */
    public boolean numeric() {
        return this == ANNUAL_DISTANCE;
    }
}
