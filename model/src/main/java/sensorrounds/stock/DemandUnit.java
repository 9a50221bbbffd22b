package sensorrounds.stock;

import java.io.Serializable;

/**
 * One sensor's share in a demand.
 *
 * @param probability probability that it needs replacing in the key's stretch of time
 * @param sdLogHazard standard deviation of the log of its hazard, the uncertainty it shares with the others
 */
public record DemandUnit(DemandKey key, double probability, double sdLogHazard) implements Serializable {}
