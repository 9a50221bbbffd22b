package sensorrounds.story;

import java.util.List;
import java.util.Map;
import sensorrounds.visit.Visit;

/**
 * What a run holds of one vehicle.
 *
 * @param tables its rows of the result tables, by table; a table without one may be missing
 * @param visits in time order, up to the day of the run; without the fields that name people
 */
public record VehicleFacts(String vehicleId, RunContext run, Map<String, List<StoredRow>> tables, List<Visit> visits) {
    public VehicleFacts {
        tables = Map.copyOf(tables);
        visits = List.copyOf(visits);
    }

    List<StoredRow> rows(String table) {
        return tables.getOrDefault(table, List.of());
    }

    /** True when neither logs nor tables know the vehicle. */
    public boolean isEmpty() {
        return visits.isEmpty() && tables.values().stream().allMatch(List::isEmpty);
    }
}
