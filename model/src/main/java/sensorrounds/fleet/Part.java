package sensorrounds.fleet;

import java.io.Serializable;
import java.util.List;

/**
 * A part that is kept in stock.
 *
 * @param price price of one piece, in the currency of the settings
 * @param leadTimeDays days from order to delivery
 * @param packSize pieces in the smallest order
 * @param frequencyMhz radio frequency; null for a part without a radio
 * @param substitutes part numbers that can stand in for it, best first
 */
public record Part(
        String partId,
        String description,
        Kind kind,
        double price,
        int leadTimeDays,
        int packSize,
        Double frequencyMhz,
        List<String> substitutes)
        implements Serializable {
    /** What sort of part it is. */
    public enum Kind {
        SENSOR,
        SERVICE_KIT
    }

    public Part {
        substitutes = List.copyOf(substitutes);
    }
}
