package sensorrounds.stock;

import java.io.Serializable;
import java.time.LocalDate;
import java.time.YearMonth;

/**
 * Demand for one part at one depot in one stretch of time, and what to have there. The rows of a part and depot do not
 * overlap, and a sensor needs one piece over all of them together at most.
 *
 * @param month the month; null for the first row, of sensors that have failed already and nobody has found out
 * @param from first day; null for that row
 * @param to last day; the as-of day for that row
 * @param planned pieces that are planned: sensors the list says to replace now or at a stop booked in this stretch, and
 *     those known dead
 * @param expected expected pieces, planned ones included
 * @param lower lower limit of the 90 % prediction interval, pieces, planned ones included
 * @param upper upper limit of it
 * @param onHand pieces at the depot now; null after the first row or when not known
 * @param standIns pieces at the depot of parts that can stand in for this one, beyond what their own demand takes, counted
 *     before anything is ordered; 0 after the first row
 * @param serviceLevelPieces pieces that meet the demand with the service level of the settings
 * @param proposedOrder pieces to order now in whole packs, for all rows that lead time and review reach; null after the
 *     first row or when what is on hand is not known
 * @param sensors sensors in service that the figure rests on
 */
public record StockOutlook(
        String partId,
        String depot,
        YearMonth month,
        LocalDate from,
        LocalDate to,
        int planned,
        double expected,
        int lower,
        int upper,
        Integer onHand,
        int standIns,
        int serviceLevelPieces,
        Integer proposedOrder,
        int sensors)
        implements Serializable {
    /** Whether this is the row of what has failed and is not found. */
    public boolean alreadyFailed() {
        return month == null;
    }
}
