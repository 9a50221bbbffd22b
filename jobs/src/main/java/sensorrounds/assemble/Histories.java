package sensorrounds.assemble;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.broadcast.Broadcast;
import sensorrounds.fleet.Vehicle;
import sensorrounds.history.Finding;
import sensorrounds.history.ForeignWheels;
import sensorrounds.history.HistoryBuilder;
import sensorrounds.history.HistorySettings;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VehicleMoves;
import sensorrounds.intake.VisitResolver;
import sensorrounds.plausibility.Doubt;
import sensorrounds.plausibility.VehicleDoubts;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.Visit;

/** Rebuilds the history of each vehicle from its accepted rows, with what is to be doubted among its findings. */
public final class Histories {
    private Histories() {}

    /**
     * @param byVehicle all accepted rows of one vehicle in each list
     * @param register vehicles of the register by ID; one that is not in it counts as unregistered
     * @param moves sensors that came from other vehicles or went to them, by vehicle
     * @param asOf last day whose visits count
     */
    public static JavaRDD<VehicleHistory> of(
            JavaRDD<List<LoggedWheel>> byVehicle,
            Broadcast<Map<String, Vehicle>> register,
            Broadcast<Map<String, VehicleMoves>> moves,
            HistorySettings settings,
            LocalDate asOf) {
        return byVehicle.map(rows -> of(rows, register.value(), moves.value(), settings, asOf));
    }

    /** One vehicle's history, in plain Java. */
    public static VehicleHistory of(
            List<LoggedWheel> rows,
            Map<String, Vehicle> register,
            Map<String, VehicleMoves> moves,
            HistorySettings settings,
            LocalDate asOf) {
        String id = rows.get(0).visit().vehicleId();
        Vehicle vehicle = register.getOrDefault(id, Vehicle.unregistered(id));
        List<Visit> visits = VisitResolver.resolve(rows).visits();
        VehicleMoves moved = moves.getOrDefault(id, VehicleMoves.NONE);
        VehicleHistory history = HistoryBuilder.build(vehicle, visits, moved, settings, asOf);
        List<Visit> seen = ForeignWheels.takenOut(
                vehicle,
                moved,
                visits.stream().filter(v -> !v.day().isAfter(asOf)).toList());
        List<Finding> findings = new ArrayList<>(history.findings());
        for (Doubt doubt : VehicleDoubts.of(seen)) {
            Finding finding = DoubtFindings.of(doubt);
            if (history.findings().stream().noneMatch(f -> DoubtFindings.saysTheSame(finding, f))) {
                findings.add(finding);
            }
        }
        // The sort is stable: findings of one day keep the order in which they were found.
        findings.sort(Comparator.comparing(Finding::day));
        return new VehicleHistory(
                history.vehicle(),
                history.visits(),
                history.lives(),
                history.episodes(),
                history.followUps(),
                findings);
    }
}
