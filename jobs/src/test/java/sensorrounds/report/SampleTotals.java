package sensorrounds.report;

import java.util.List;
import java.util.stream.Collectors;
import sensorrounds.fleet.Vehicle;
import sensorrounds.history.FollowUp;
import sensorrounds.history.VehicleHistory;
import sensorrounds.outlook.UnmonitoredWheel;
import sensorrounds.recurrence.RecurringVehicle;
import sensorrounds.replacement.RankedReplacement;
import sensorrounds.review.FleetTotals;
import sensorrounds.review.VehicleReview;

/** Totals of a fleet that is nothing but the lists of a report. */
final class SampleTotals {
    private SampleTotals() {}

    static FleetTotals of(ReportData d) {
        return of(
                d.ranked().rows(),
                d.recurring().rows(),
                d.unmonitored().rows(),
                d.followUps().rows());
    }

    static FleetTotals of(
            List<RankedReplacement> ranked,
            List<RecurringVehicle> recurring,
            List<UnmonitoredWheel> unmonitored,
            List<FollowUp> followUps) {
        FleetTotals totals = new FleetTotals();
        ranked.stream()
                .collect(Collectors.groupingBy(r -> r.outlook().sensor().vehicleId()))
                .forEach((id, lines) -> totals.add(
                        new VehicleReview(id, lines, List.of(), List.of(), null, List.of(), List.of(), null)));
        for (RecurringVehicle v : recurring) {
            totals.add(
                    new VehicleReview(v.vehicleId(), List.of(), List.of(), List.of(), v, List.of(), List.of(), null));
        }
        unmonitored.stream()
                .collect(Collectors.groupingBy(UnmonitoredWheel::vehicleId))
                .forEach((id, wheels) -> totals.add(
                        new VehicleReview(id, List.of(), List.of(), wheels, null, List.of(), List.of(), null)));
        return totals.add(
                new VehicleHistory(Vehicle.unregistered("all"), List.of(), List.of(), List.of(), followUps, List.of()));
    }
}
