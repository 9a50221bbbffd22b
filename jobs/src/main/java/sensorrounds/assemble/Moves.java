package sensorrounds.assemble;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.broadcast.Broadcast;
import sensorrounds.fleet.Vehicle;
import sensorrounds.history.ForeignWheels;
import sensorrounds.history.HistorySettings;
import sensorrounds.history.MovedSensors;
import sensorrounds.history.VehicleMoves;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.ReadOutcome;

/**
 * The sensors that went from vehicle to vehicle. Only vehicles that one went from are looked at beforehand, to learn its
 * age; they are few, and so is what is kept of them.
 */
public final class Moves {
    private Moves() {}

    /** @param sources all accepted rows of each of the vehicles {@link MovedSensors#sources} names */
    public static Map<String, VehicleMoves> of(
            MovedSensors moved,
            JavaRDD<List<LoggedWheel>> sources,
            Broadcast<Map<String, Vehicle>> register,
            HistorySettings settings,
            LocalDate asOf) {
        Map<String, VehicleMoves> departures = moved.departures();
        if (moved.count() == 0) {
            return departures;
        }
        return moved.moves(sources.flatMap(
                        rows -> moved.known(Histories.of(rows, register.value(), departures, settings, asOf))
                                .iterator())
                .collect());
    }

    /** The same in plain Java, from all accepted rows of each vehicle. */
    public static Map<String, VehicleMoves> of(
            Map<String, List<LoggedWheel>> byVehicle,
            Map<String, Vehicle> register,
            HistorySettings settings,
            LocalDate asOf) {
        MovedSensors moved = MovedSensors.of(heard(byVehicle, register, asOf));
        Map<String, VehicleMoves> departures = moved.departures();
        Set<String> sources = moved.sources();
        List<MovedSensors.Known> known = new ArrayList<>();
        sources.forEach(
                v -> known.addAll(moved.known(Histories.of(byVehicle.get(v), register, departures, settings, asOf))));
        return moved.moves(known);
    }

    private static List<MovedSensors.Heard> heard(
            Map<String, List<LoggedWheel>> byVehicle, Map<String, Vehicle> register, LocalDate asOf) {
        List<MovedSensors.Heard> heard = new ArrayList<>();
        byVehicle.forEach((vehicle, rows) -> heard.addAll(heard(rows, register.get(vehicle), asOf)));
        return heard;
    }

    /**
     * When each sensor answered on one vehicle, at places that it has.
     *
     * @param rows of the vehicle; those after {@code asOf} do not count
     * @param vehicle its register line; null when it has none
     */
    static List<MovedSensors.Heard> heard(List<LoggedWheel> rows, Vehicle vehicle, LocalDate asOf) {
        Map<String, List<LocalDate>> byId = new HashMap<>();
        for (LoggedWheel row : rows) {
            LocalDate day = row.visit().day();
            if (row.wheel() != null
                    && row.wheel().read() == ReadOutcome.OK
                    && row.wheel().sensorId() != null
                    && ForeignWheels.isPlaceOf(vehicle, row.wheel().position())
                    && !day.isAfter(asOf)) {
                byId.computeIfAbsent(row.wheel().sensorId(), id -> new ArrayList<>())
                        .add(day);
            }
        }
        List<MovedSensors.Heard> heard = new ArrayList<>();
        String vehicleId = rows.get(0).visit().vehicleId();
        byId.forEach((id, days) -> heard.add(new MovedSensors.Heard(id, vehicleId, days)));
        return heard;
    }
}
