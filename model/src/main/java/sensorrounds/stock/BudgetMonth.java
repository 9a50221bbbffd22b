package sensorrounds.stock;

import java.io.Serializable;
import java.time.LocalDate;
import java.time.YearMonth;

/**
 * Expected cost of one depot in one month, in the currency of the costs. What has failed already and is not found counts in
 * the first month.
 *
 * @param depot null when not known
 * @param from first day that counts
 * @param to last day
 * @param plannedPieces pieces planned: by the list now, at stops booked in the month, and for sensors known dead
 * @param plannedCost of these pieces with their work
 * @param comingIn set-up of stops made for them, and reading; in the first month
 * @param failures expected failures that nothing planned forestalls
 * @param failureCost of these: piece, work, and the breakdown where a call-out comes before the next stop
 * @param lower lower limit of the 90 % prediction interval of the whole cost
 * @param upper upper limit of it
 */
public record BudgetMonth(
        String depot,
        YearMonth month,
        LocalDate from,
        LocalDate to,
        int plannedPieces,
        double plannedCost,
        double comingIn,
        double failures,
        double failureCost,
        double lower,
        double upper)
        implements Serializable {
    /** Expected cost in all. */
    public double expected() {
        return plannedCost + comingIn + failureCost;
    }
}
