package sensorrounds.backtest;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * On which days the engine is asked again.
 *
 * @param cuts most days, at least 1
 * @param stepDays days from one to the next, at least 1
 * @param longest longest horizon judged
 * @param historyDays visits must reach back at least so far before the first day, at least 1
 * @param graceDays visits must go on at least so long after the longest horizon: what failed is found at the next visit, and
 *     what lives is known to live from a later one, at least 0
 */
public record BacktestSettings(int cuts, int stepDays, Horizon longest, int historyDays, int graceDays)
        implements Serializable {
    public BacktestSettings {
        if (cuts < 1 || stepDays < 1 || historyDays < 1 || graceDays < 0) {
            throw new IllegalArgumentException(
                    "a backtest needs one day or more, steps and history of a day or more, and"
                            + " no negative grace, not " + cuts + ", " + stepDays + ", " + historyDays + ", "
                            + graceDays);
        }
    }

    /** Four days, half a year apart, a year ahead, after a year of visits, with half a year to find out. */
    public static BacktestSettings defaults() {
        return new BacktestSettings(4, 180, Horizon.YEAR, 365, 180);
    }

    /** Days the visits must span for a single cut. */
    public int leastSpan() {
        return historyDays + longest.days() + graceDays;
    }

    /** The days, first to last: the latest one that leaves time enough after it, and back from it in steps. */
    public List<LocalDate> cutsBetween(LocalDate firstVisit, LocalDate lastVisit) {
        List<LocalDate> days = new ArrayList<>();
        LocalDate day = lastVisit.minusDays((long) longest.days() + graceDays);
        while (days.size() < cuts && !day.isBefore(firstVisit.plusDays(historyDays))) {
            days.add(day);
            day = day.minusDays(stepDays);
        }
        Collections.reverse(days);
        return days;
    }

    /** The horizons judged, shortest first. */
    public List<Horizon> horizons() {
        List<Horizon> horizons = new ArrayList<>();
        for (Horizon h : Horizon.values()) {
            if (h.days() <= longest.days()) {
                horizons.add(h);
            }
        }
        return horizons;
    }
}
