package sensorrounds.ingest;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.stream.Stream;
import sensorrounds.intake.VisitResolver;
import sensorrounds.plausibility.VehicleDoubts;
import sensorrounds.tables.LogRow;
import sensorrounds.visit.LoggedWheel;

/** Walks rows in which those of one vehicle lie together, and counts the doubts about each vehicle. */
final class DoubtedVehicles {
    private final DoubtTally tally = new DoubtTally();
    private List<LoggedWheel> vehicle = new ArrayList<>();

    private DoubtedVehicles() {}

    static Iterator<DoubtTally> count(Iterator<LogRow> rows) {
        DoubtedVehicles vehicles = new DoubtedVehicles();
        rows.forEachRemaining(vehicles::take);
        vehicles.close();
        return Stream.of(vehicles.tally).iterator();
    }

    private void take(LogRow row) {
        LoggedWheel accepted = row.accepted();
        if (accepted == null) {
            return;
        }
        boolean another = !vehicle.isEmpty()
                && !vehicle.get(0).visit().vehicleId().equals(accepted.visit().vehicleId());
        if (another) {
            close();
        }
        vehicle.add(accepted);
    }

    private void close() {
        VehicleDoubts.of(VisitResolver.resolve(vehicle).visits()).forEach(tally::add);
        vehicle = new ArrayList<>();
    }
}
