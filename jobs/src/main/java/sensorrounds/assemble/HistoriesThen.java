package sensorrounds.assemble;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.spark.api.java.JavaPairRDD;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.api.java.function.Function;
import org.apache.spark.broadcast.Broadcast;
import scala.Tuple2;
import sensorrounds.backtest.KnownThen;
import sensorrounds.fleet.Vehicle;
import sensorrounds.history.HistorySettings;
import sensorrounds.history.MovedSensors;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VehicleMoves;
import sensorrounds.visit.LoggedWheel;

/** Rebuilds the history of each vehicle as it could have been told on a day gone by, from what was known then alone. */
public final class HistoriesThen {
    private HistoriesThen() {}

    /**
     * @param rows every understood row of one vehicle in each list, duplicates and superseded ones among them
     * @param register as it is today
     * @param day last day that counts
     */
    public static JavaRDD<VehicleHistory> of(
            JavaSparkContext context,
            JavaRDD<List<LoggedWheel>> rows,
            Map<String, Vehicle> register,
            HistorySettings settings,
            LocalDate day) {
        SortedMap<String, Vehicle> then = new TreeMap<>();
        register.forEach((id, vehicle) -> then.put(id, KnownThen.vehicle(vehicle, day)));
        Broadcast<Map<String, Vehicle>> known = context.broadcast(Register.of(then));
        JavaRDD<List<LoggedWheel>> knownRows =
                rows.map(r -> KnownThen.rows(r, day)).filter(r -> !r.isEmpty());
        MovedSensors moved = MovedSensors.of(onTwoVehicles(knownRows, known, day));
        JavaRDD<List<LoggedWheel>> sources = knownRows.filter(new OfVehicles(moved));
        Map<String, VehicleMoves> moves = Moves.of(moved, sources, known, settings, day);
        return Histories.of(knownRows, known, context.broadcast(moves), settings, day);
    }

    /** Sensors that answered on more than one vehicle; what is collected are these alone. */
    private static List<MovedSensors.Heard> onTwoVehicles(
            JavaRDD<List<LoggedWheel>> rows, Broadcast<Map<String, Vehicle>> known, LocalDate day) {
        JavaPairRDD<String, MovedSensors.Heard> heard = rows.flatMap(r -> {
                    String vehicle = r.get(0).visit().vehicleId();
                    return Moves.heard(r, known.value().get(vehicle), day).iterator();
                })
                .mapToPair(h -> new Tuple2<>(h.sensorId(), h));
        List<MovedSensors.Heard> several = new ArrayList<>();
        heard.groupByKey()
                .values()
                .filter(vehicles -> {
                    var each = vehicles.iterator();
                    each.next();
                    return each.hasNext();
                })
                .collect()
                .forEach(vehicles -> vehicles.forEach(several::add));
        return several;
    }

    /** Vehicles that a sensor went from. */
    private record OfVehicles(Set<String> ids) implements Function<List<LoggedWheel>, Boolean> {
        OfVehicles(MovedSensors moved) {
            this(new TreeSet<>(moved.sources()));
        }

        @Override
        public Boolean call(List<LoggedWheel> rows) {
            return ids.contains(rows.get(0).visit().vehicleId());
        }
    }
}
