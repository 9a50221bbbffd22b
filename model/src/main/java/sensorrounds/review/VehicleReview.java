package sensorrounds.review;

import java.io.Serializable;
import java.util.List;
import sensorrounds.condition.ConditionMoment;
import sensorrounds.condition.WatchEntry;
import sensorrounds.outlook.UnmonitoredWheel;
import sensorrounds.recurrence.RecurringVehicle;
import sensorrounds.replacement.RankedReplacement;
import sensorrounds.rounds.RoundCall;
import sensorrounds.stock.DemandUnit;

/**
 * What the engine says of one vehicle.
 *
 * @param lines its sensors in service, not yet ranked over the fleet (rank 0)
 * @param recurring null when it had no system warning
 * @param condition over time, of its sensors that look weak, or of all where its warning recurs
 * @param demand what it adds to the demand for parts
 * @param call what it asks of the rounds; null for nothing
 */
public record VehicleReview(
        String vehicleId,
        List<RankedReplacement> lines,
        List<WatchEntry> watch,
        List<UnmonitoredWheel> unmonitored,
        RecurringVehicle recurring,
        List<ConditionMoment> condition,
        List<DemandUnit> demand,
        RoundCall call)
        implements Serializable {
    public VehicleReview {
        lines = List.copyOf(lines);
        watch = List.copyOf(watch);
        unmonitored = List.copyOf(unmonitored);
        condition = List.copyOf(condition);
        demand = List.copyOf(demand);
    }
}
