package sensorrounds.season;

import java.io.Serializable;
import java.time.Month;

/**
 * One month of the year at one place.
 *
 * @param depot null for the fleet as a whole
 * @param visits visits of that depot in that month, of any year, with an air temperature written down
 * @param median of their temperatures, °C; NaN without any
 * @param basis what says whether it is cold
 */
public record ClimateMonth(String depot, Month month, long visits, double median, boolean cold, Basis basis)
        implements Serializable {
    /** What says whether a month is cold, the first that can. */
    public enum Basis {
        /** The median of the depot's own temperatures. */
        DEPOT,
        /** That of the whole fleet, for a depot with too few. */
        FLEET,
        /** The winter of the declared hemisphere, where the fleet has too few as well. */
        DECLARED
    }
}
