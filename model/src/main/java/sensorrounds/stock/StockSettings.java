package sensorrounds.stock;

import java.io.Serializable;

/**
 * What the stock outlook is computed by.
 *
 * @param months months to look ahead, that of the day after the as-of day first, at least 1
 * @param serviceLevel probability with which the pieces must meet demand, between 0 and 1
 * @param reviewDays days from one ordering to the next
 * @param leadTimeDays lead time of a part that is not in the parts list, days
 * @param packSize pack size of such a part
 */
public record StockSettings(int months, double serviceLevel, int reviewDays, int leadTimeDays, int packSize)
        implements Serializable {
    public StockSettings {
        if (months < 1
                || !(serviceLevel > 0 && serviceLevel < 1)
                || reviewDays < 0
                || leadTimeDays < 0
                || packSize < 1) {
            throw new IllegalArgumentException("stock settings: months " + months + ", service level " + serviceLevel
                    + ", review days " + reviewDays + ", lead time " + leadTimeDays + ", pack size " + packSize
                    + "; needs at least 1 month, a level between 0 and 1 such as 0.95, days from 0, packs from 1");
        }
    }

    /** Six months at 95 %, ordering every 30 days, a week's lead time: common practice, no source. */
    public static StockSettings defaults() {
        return new StockSettings(6, 0.95, 30, 7, 1);
    }
}
