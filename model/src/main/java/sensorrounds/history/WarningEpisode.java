package sensorrounds.history;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;
import sensorrounds.visit.Warning;

/**
 * A warning from when it was first seen until it was proven off. A lamp seen at two visits is one episode unless in
 * between it was seen off on arrival, or a drive longer than the detection time went without it.
 *
 * @param firstSeen first visit with the warning, or the day since when the driver saw it, if written down
 * @param lastSeen last visit with the warning
 * @param provenOff day it was proven off; null while open
 * @param returnsAfterRepair how often it was there again after work that was meant to end it
 * @param everySensorAnswered true when at each visit of the episode every sensor was tried and answered
 * @param lastingCause true when a cause was found and put right: a failed sensor replaced, a leak repaired
 * @param explainedByCold true for a low-pressure warning that the cold explains at each of its visits
 */
public record WarningEpisode(
        String vehicleId,
        Warning kind,
        LocalDate firstSeen,
        LocalDate lastSeen,
        LocalDate provenOff,
        List<String> visitIds,
        int returnsAfterRepair,
        boolean everySensorAnswered,
        boolean lastingCause,
        boolean explainedByCold)
        implements Serializable {
    public WarningEpisode {
        visitIds = List.copyOf(visitIds);
    }
}
