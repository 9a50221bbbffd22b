package sensorrounds.history;

import java.io.Serializable;
import java.util.List;
import sensorrounds.fleet.Vehicle;

/**
 * Everything the logs tell of one vehicle, rebuilt in time order.
 *
 * @param visits in time order
 * @param lives in order of first reading, then position
 * @param episodes in time order
 * @param followUps one for each repair of a system warning, in time order
 * @param findings in time order
 */
public record VehicleHistory(
        Vehicle vehicle,
        List<VisitSummary> visits,
        List<SensorLife> lives,
        List<WarningEpisode> episodes,
        List<FollowUp> followUps,
        List<Finding> findings)
        implements Serializable {
    public VehicleHistory {
        visits = List.copyOf(visits);
        lives = List.copyOf(lives);
        episodes = List.copyOf(episodes);
        followUps = List.copyOf(followUps);
        findings = List.copyOf(findings);
    }

    public String vehicleId() {
        return vehicle.vehicleId();
    }
}
