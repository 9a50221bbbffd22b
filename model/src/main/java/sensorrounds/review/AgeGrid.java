package sensorrounds.review;

import sensorrounds.survival.Lifetime;

/**
 * The ages a curve without a shape is reckoned on. Its work grows with the number of distinct ages, and days are finer
 * than visits months apart can tell. Entries and ages last seen alive go to the nearest age of the grid; of a failure's
 * interval the lower end goes down and the upper up, so that it still holds the failure. On average neither time under
 * observation nor the middles of the intervals move.
 */
enum AgeGrid {
    DAYS(1, "days"),
    WEEKS(7, "whole weeks"),
    FOUR_WEEKS(28, "steps of four weeks"),
    QUARTERS(91, "quarters of a year"),
    HALF_YEARS(182, "half-years"),
    YEARS(364, "years");

    /** Distinct lives above which days are given up, then weeks. */
    static final int MANY = 10_000;

    static final int VERY_MANY = 1_000_000;

    private final int days;
    private final String words;

    AgeGrid(int days, String words) {
        this.days = days;
        this.words = words;
    }

    /** The finest grid for that many distinct lives. */
    static AgeGrid of(int cells) {
        return cells > VERY_MANY ? FOUR_WEEKS : cells > MANY ? WEEKS : DAYS;
    }

    String words() {
        return words;
    }

    Lifetime coarse(Lifetime life) {
        int lower = life.failed() ? life.lower() / days * days : nearest(life.lower());
        int upper = life.failed() ? ((life.upper() - 1) / days + 1) * days : Lifetime.NEVER;
        int entry = Math.min(nearest(life.entry()), lower);
        return new Lifetime(entry == upper ? entry - days : entry, lower, upper, life.weight());
    }

    private int nearest(int age) {
        return (age + days / 2) / days * days;
    }
}
