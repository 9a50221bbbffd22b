package sensorrounds.history;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.Map;

/**
 * Sensors that came to one vehicle from another, went from it to another, or were heard on it by mistake, which its own
 * visits cannot tell.
 *
 * @param departures by sensor ID: the day it first answered on another vehicle, and which
 * @param arrivals by sensor ID
 * @param strays sensor ID → the vehicle it sits on, of those heard here while they sat there
 */
public record VehicleMoves(Map<String, Departure> departures, Map<String, Arrival> arrivals, Map<String, String> strays)
        implements Serializable {
    /** A vehicle whose sensors stay. */
    public static final VehicleMoves NONE = new VehicleMoves(Map.of(), Map.of(), Map.of());

    /** The first answer of a sensor on another vehicle. */
    public record Departure(LocalDate day, String toVehicle) implements Serializable {}

    public VehicleMoves {
        departures = Map.copyOf(departures);
        arrivals = Map.copyOf(arrivals);
        strays = Map.copyOf(strays);
    }
}
