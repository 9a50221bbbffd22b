package sensorrounds.rounds;

import java.io.Serializable;
import java.time.LocalDate;

/**
 * The round of one depot in one week.
 *
 * @param depot null for vehicles without one
 * @param week from 1
 * @param vehicles on the round, booked ones included
 * @param booked of them, those that stand anyway
 * @param wheels to be worked on
 * @param minutes of work; over the capacity only when booked stops alone are
 * @param saving what the round is expected to save
 * @param savingSoFar the same with all weeks before
 * @param savingInAll of all weeks of the depot
 * @param bound what no choice of rounds of the depot over all weeks can exceed
 * @param left vehicles that have to come in or that the list asks for, on no round up to and with this week
 */
public record RoundWeek(
        String depot,
        int week,
        LocalDate from,
        LocalDate to,
        int vehicles,
        int booked,
        int wheels,
        double minutes,
        double capacity,
        double saving,
        double savingSoFar,
        double savingInAll,
        double bound,
        int left)
        implements Serializable {
    /** Share of the bound that the rounds of the depot, all weeks together, miss: at most so far from the best there is. */
    public double gap() {
        return bound > 0 ? Math.max(0, 1 - savingInAll / bound) : 0;
    }
}
