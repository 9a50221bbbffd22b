package sensorrounds.review;

import sensorrounds.survival.Lifetime;

/**
 * The ages a curve without a shape is reckoned on. Its work grows with the number of distinct ages; on a large fleet
 * days are finer than the visits can tell, so ages are taken in wider steps. An entry and an age last known good go down
 * to the grid, an age first known failed goes up: each interval still holds its failure, and on average time under
 * observation and the middles of the intervals stay what they were.
 */
enum AgeGrid {
    DAYS(1, 0, "days"),
    WEEKS(7, 10_000, "whole weeks"),
    FOUR_WEEKS(28, 1_000_000, "steps of four weeks");

    private final int days;
    private final int above;
    private final String words;

    AgeGrid(int days, int above, String words) {
        this.days = days;
        this.above = above;
        this.words = words;
    }

    /** The finest grid for that many distinct lives. */
    static AgeGrid of(int cells) {
        AgeGrid grid = DAYS;
        for (AgeGrid wider : values()) {
            grid = cells > wider.above ? wider : grid;
        }
        return grid;
    }

    /** What to know about the grid; empty for days. */
    String note(int cells) {
        return this == DAYS ? "" : "ages in " + words + ", for " + cells + " different lives";
    }

    Lifetime coarse(Lifetime life) {
        int upper = life.failed() ? ((life.upper() - 1) / days + 1) * days : Lifetime.NEVER;
        return new Lifetime(life.entry() / days * days, life.lower() / days * days, upper, life.weight());
    }
}
