package sensorrounds.stock;

import java.io.Serializable;
import java.time.YearMonth;

/**
 * Demand for one part at one depot in one month, and what to have there.
 *
 * @param month the month
 * @param expected expected pieces
 * @param lower lower limit of the 90 % prediction interval, pieces
 * @param upper upper limit of it
 * @param onHand pieces at the depot now; null after the first month or when not known
 * @param serviceLevelPieces pieces that meet the month's demand with the service level of the settings
 * @param proposedOrder pieces to order now in whole packs; null after the months the lead time reaches
 * @param sensors sensors in service that the figure rests on
 */
public record StockOutlook(
        String partId,
        String depot,
        YearMonth month,
        double expected,
        int lower,
        int upper,
        Integer onHand,
        int serviceLevelPieces,
        Integer proposedOrder,
        int sensors)
        implements Serializable {}
