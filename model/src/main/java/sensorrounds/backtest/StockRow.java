package sensorrounds.backtest;

import java.time.LocalDate;
import java.time.YearMonth;

/**
 * Demand that was forecast for a month against the sensors that crews fitted in it.
 *
 * @param from first day
 * @param to last day
 * @param expected pieces expected, those the list planned among them
 * @param lower lower limit of the 90 % prediction interval
 * @param upper upper limit
 * @param fitted sensors fitted on record, for whatever reason
 */
public record StockRow(
        LocalDate cut,
        String partId,
        String depot,
        YearMonth month,
        LocalDate from,
        LocalDate to,
        double expected,
        int lower,
        int upper,
        long fitted) {
    public boolean inside() {
        return lower <= fitted && fitted <= upper;
    }
}
