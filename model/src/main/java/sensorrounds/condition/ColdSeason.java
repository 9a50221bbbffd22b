package sensorrounds.condition;

import java.io.Serializable;
import java.time.LocalDate;
import java.time.Month;
import java.time.YearMonth;
import java.util.Arrays;
import java.util.Set;

/**
 * The days on which the cold part of the year begins and ends, for a model whose rates know the season. Days are counted
 * from 1970-01-01. Immutable.
 */
public final class ColdSeason implements Serializable {
    private static final long serialVersionUID = 1;
    private static final YearMonth FIRST = YearMonth.of(1900, 1);
    private static final YearMonth LAST = YearMonth.of(2200, 12);

    /** Leaves room for differences of days. */
    private static final int NEVER = Integer.MAX_VALUE / 2;

    /** Last days before the season changes, rising; the season before the first of them is warm. */
    private final int[] turns;

    /** Share of the year that is cold. */
    private final double share;

    private ColdSeason(int[] turns, double share) {
        this.turns = turns;
        this.share = share;
    }

    /** The rates know no season. */
    public static ColdSeason none() {
        return new ColdSeason(new int[0], 0);
    }

    /** Share of the year's months that are cold. */
    double share() {
        return share;
    }

    /** @param cold cold months; none or all of them are no season */
    public static ColdSeason of(Set<Month> cold) {
        int[] turns = new int[1 + 12 * (LAST.getYear() - FIRST.getYear() + 1)];
        int n = 0;
        boolean now = false;
        for (YearMonth m = FIRST; !m.isAfter(LAST); m = m.plusMonths(1)) {
            if (cold.contains(m.getMonth()) != now) {
                turns[n++] = Math.toIntExact(m.atDay(1).toEpochDay()) - 1;
                now = !now;
            }
        }
        return cold.size() == Month.values().length
                ? none()
                : new ColdSeason(Arrays.copyOf(turns, n), (double) cold.size() / Month.values().length);
    }

    /** Whether there is one. */
    public boolean turns() {
        return turns.length > 0;
    }

    /** Number of turns up to a day; the days after it are cold when the number is odd. */
    int turnsUpTo(int day) {
        int at = Arrays.binarySearch(turns, day);
        return at >= 0 ? at + 1 : -at - 1;
    }

    /** The day of the turn after so many; a day nobody lives to see when there is none. */
    int turn(int number) {
        return number < turns.length ? turns[number] : NEVER;
    }

    /** 1 for the cold, 0 for the rest. */
    static int season(int turnsUpTo) {
        return turnsUpTo & 1;
    }

    /** Cold days after one day up to and with another. */
    int coldDays(int after, int to) {
        int cold = 0;
        int day = after;
        for (int i = turnsUpTo(after); day < to; i++) {
            int end = Math.min(to, turn(i));
            cold += season(i) * (end - day);
            day = end;
        }
        return cold;
    }

    static int day(LocalDate date) {
        return Math.toIntExact(date.toEpochDay());
    }
}
