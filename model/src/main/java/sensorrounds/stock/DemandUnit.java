package sensorrounds.stock;

import java.io.Serializable;

/**
 * One sensor's share in a demand.
 *
 * @param probability probability that it needs replacing in the key's stretch of time; 1 when planned
 * @param sdLogHazard standard deviation of the log of its hazard, the uncertainty it shares with the others
 * @param kind whether it is planned or left to chance
 */
public record DemandUnit(DemandKey key, double probability, double sdLogHazard, Kind kind) implements Serializable {
    /** What brings it about. */
    public enum Kind {
        /** The replacement list, or a sensor known dead, asks for the piece in this stretch. */
        PLANNED,
        FAILURE
    }
}
