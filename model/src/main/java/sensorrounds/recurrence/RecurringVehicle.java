package sensorrounds.recurrence;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;

/**
 * A vehicle with system warnings, and whether they keep coming back.
 *
 * @param depot null when not known, as {@code vehicleClass}
 * @param episodes system-warning episodes
 * @param returnsAfterRepair times the warning was there again after work
 * @param exposureYears years under observation
 * @param driven distance, and warnings on the way; null where the odometer does not tell
 * @param ratePerYear episodes and returns per year, as counted
 * @param shrunkRatePerYear the rate shrunk to its peers (gamma–Poisson)
 * @param probabilityAbovePeers posterior probability that its rate is above the peers' mean
 * @param pattern what sort of recurrence it is
 * @param lastSeen last day with the warning
 * @param followUpOpen true when the last work is not yet proven by a drive
 * @param heldSince day of the last work, when it replaced a sensor, was proven, and the warning was not seen again; null else
 * @param suspects most probable first; empty unless the warning recurs
 * @param story two or three sentences for the technician
 */
public record RecurringVehicle(
        String vehicleId,
        String depot,
        String vehicleClass,
        int episodes,
        int returnsAfterRepair,
        double exposureYears,
        Driven driven,
        double ratePerYear,
        double shrunkRatePerYear,
        double probabilityAbovePeers,
        Pattern pattern,
        LocalDate lastSeen,
        boolean followUpOpen,
        LocalDate heldSince,
        List<Suspect> suspects,
        String story)
        implements Serializable {
    /** Sort of recurrence. */
    public enum Pattern {
        /** Comes back though every sensor answered and no lasting cause was found. */
        RECURRING_INTERMITTENT,
        /** Comes back with sensors failing one after the other at one place. */
        RECURRING_AT_ONE_PLACE,
        /** Comes back with different sensors failing, as a set of one age does. */
        RECURRING_WITH_FAILURES,
        /** Seen, but not recurring. */
        NOT_RECURRING
    }

    /** The newest replacement may have been the cure: look on only if the warning comes back. */
    public boolean maybeCured() {
        return heldSince != null && pattern == Pattern.RECURRING_INTERMITTENT;
    }

    public RecurringVehicle {
        suspects = List.copyOf(suspects);
    }
}
