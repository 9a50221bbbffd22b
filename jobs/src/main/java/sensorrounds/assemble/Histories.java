package sensorrounds.assemble;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.broadcast.Broadcast;
import sensorrounds.fleet.Vehicle;
import sensorrounds.history.HistoryBuilder;
import sensorrounds.history.HistorySettings;
import sensorrounds.history.VehicleHistory;
import sensorrounds.intake.VisitResolver;
import sensorrounds.visit.LoggedWheel;

/** Rebuilds the history of each vehicle from its accepted rows. */
public final class Histories {
    private Histories() {}

    /**
     * @param byVehicle all accepted rows of one vehicle in each list
     * @param register vehicles of the register by ID; one that is not in it counts as unregistered
     * @param asOf last day whose visits count
     */
    public static JavaRDD<VehicleHistory> of(
            JavaRDD<List<LoggedWheel>> byVehicle,
            Broadcast<Map<String, Vehicle>> register,
            HistorySettings settings,
            LocalDate asOf) {
        return byVehicle.map(rows -> of(rows, register.value(), settings, asOf));
    }

    /** One vehicle's history, in plain Java. */
    public static VehicleHistory of(
            List<LoggedWheel> rows, Map<String, Vehicle> register, HistorySettings settings, LocalDate asOf) {
        String id = rows.get(0).visit().vehicleId();
        Vehicle vehicle = register.getOrDefault(id, Vehicle.unregistered(id));
        return HistoryBuilder.build(vehicle, VisitResolver.resolve(rows).visits(), settings, asOf);
    }
}
