package sensorrounds.visit;

import java.io.Serializable;

/**
 * A drive after the work.
 *
 * @param minutes driving time, minutes; null when not written down
 * @param distanceKm kilometres; null when not written down
 * @param warningReturned null when not written down
 */
public record TestDrive(Double minutes, Double distanceKm, Boolean warningReturned) implements Serializable {}
