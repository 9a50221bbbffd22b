package sensorrounds.ingest;

import static org.apache.spark.sql.functions.broadcast;
import static org.apache.spark.sql.functions.col;
import static org.apache.spark.sql.functions.collect_set;
import static org.apache.spark.sql.functions.lit;
import static org.apache.spark.sql.functions.max;
import static org.apache.spark.sql.functions.min;
import static org.apache.spark.sql.functions.struct;
import static org.apache.spark.sql.functions.to_date;
import static org.apache.spark.sql.functions.when;
import static org.apache.spark.sql.functions.xxhash64;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.spark.sql.Column;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.types.DataTypes;
import sensorrounds.fleet.Vehicle;
import sensorrounds.history.ForeignWheels;
import sensorrounds.history.MovedSensors;
import sensorrounds.plausibility.Doubt;
import sensorrounds.plausibility.SharedIds;
import sensorrounds.tables.LogRows;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.Source;
import sensorrounds.visit.WheelPosition;

/**
 * Finds what is on two vehicles at once, which no vehicle's own rows can show: a second, small grouping by sensor ID and by
 * VIN. Only IDs that are on two vehicles are looked at closely, and those are few.
 */
public final class SharedIdentities {
    private static final String LEAST = "least_vehicle";
    private static final String MOST = "most_vehicle";

    private static final Column NO_DAY = lit(null).cast(DataTypes.DateType);

    private SharedIdentities() {}

    /**
     * @param accepted accepted rows, with the columns of {@link LogRows} for sensor, VIN, vehicle, time, position and source
     * @param asOf last day that counts; null for all days
     * @return by kind, ID and time
     */
    public static List<Doubt> of(Dataset<Row> accepted, LocalDate asOf) {
        return find(accepted, NO_DAY, Map.of(), asOf).doubts(MovedSensors.of(List.of()));
    }

    /**
     * What is on more than one vehicle.
     *
     * @param sensors over what time each such sensor was on each vehicle, at places that the vehicle has
     * @param vins the same of VINs
     * @param heard when such a sensor answered on each vehicle, in no order
     */
    public record Shared(List<SharedIds.Span> sensors, List<SharedIds.Span> vins, List<MovedSensors.Heard> heard) {
        /**
         * The doubts by kind, ID and time. A stray is told with its visit among the findings about the vehicle, and what was
         * made of it, so that it is no doubt here.
         */
        public List<Doubt> doubts(MovedSensors moved) {
            List<SharedIds.Span> seated = sensors.stream()
                    .filter(s -> !moved.isStray(s.id(), s.vehicleId()))
                    .toList();
            List<Doubt> doubts = new ArrayList<>(SharedIds.of(Doubt.Kind.SENSOR_AT_TWO_VEHICLES, seated));
            doubts.addAll(SharedIds.of(Doubt.Kind.VIN_AT_TWO_VEHICLES, vins));
            return doubts;
        }
    }

    /**
     * As {@link #of}, with the answers; the rows have the column of {@link LogRows} for the outcome of a read as well.
     *
     * @param register vehicles of the register by ID
     */
    public static Shared find(Dataset<Row> accepted, Map<String, Vehicle> register, LocalDate asOf) {
        Column answered = when(col(LogRows.READ).equalTo(ReadOutcome.OK.name()), to_date(col(LogRows.VISITED_AT)));
        return find(accepted, answered, register, asOf);
    }

    /** @param answered day of an answer; null where a row tells of none */
    private static Shared find(Dataset<Row> accepted, Column answered, Map<String, Vehicle> register, LocalDate asOf) {
        Dataset<Row> rows = asOf == null
                ? accepted
                : accepted.where(col(LogRows.VISITED_AT).lt(asOf.plusDays(1).atStartOfDay()));
        List<MovedSensors.Heard> heard = new ArrayList<>();
        List<SharedIds.Span> sensors = spans(rows, LogRows.SENSOR_ID, answered, register, heard);
        return new Shared(sensors, spans(rows, LogRows.VIN, NO_DAY, register, heard), heard);
    }

    private static List<SharedIds.Span> spans(
            Dataset<Row> accepted,
            String id,
            Column answered,
            Map<String, Vehicle> register,
            List<MovedSensors.Heard> heard) {
        Dataset<Row> rows = accepted.where(col(id).isNotNull());
        // Hashes of the keys, since Spark sorts all rows to take the least text but not to take the least number.
        Column vehicle = xxhash64(col(LogRows.VEHICLE_ID));
        Dataset<Row> shared = rows.groupBy(id)
                .agg(min(vehicle).as(LEAST), max(vehicle).as(MOST))
                .where(col(LEAST).notEqual(col(MOST)))
                .select(id);
        Column sighting = struct(LogRows.VISITED_AT, LogRows.SOURCE_FILE, LogRows.SOURCE_LINE);
        List<Row> found = new ArrayList<>(shared.collectAsList());
        if (found.isEmpty()) {
            return List.of();
        }
        Dataset<Row> few = accepted.sparkSession().createDataFrame(found, shared.schema());
        SortedMap<String, SortedMap<String, Seen>> seen = new TreeMap<>();
        for (Row group : rows.join(broadcast(few), id)
                .groupBy(id, LogRows.VEHICLE_ID, LogRows.POSITION)
                .agg(min(sighting), max(sighting), collect_set(answered))
                .collectAsList()) {
            // A trailer's wheel written down under its tractor is none of the tractor's.
            if (isPlaceOf(register.get(group.getString(1)), group.getString(2))) {
                seen.computeIfAbsent(group.getString(0), key -> new TreeMap<>())
                        .merge(group.getString(1), Seen.of(group), Seen::plus);
            }
        }
        List<SharedIds.Span> spans = new ArrayList<>();
        seen.forEach((sharedId, vehicles) -> vehicles.forEach((vehicleId, s) -> {
            spans.add(new SharedIds.Span(
                    sharedId, vehicleId, s.first().sighting(), s.last().sighting()));
            if (!s.answered().isEmpty()) {
                heard.add(new MovedSensors.Heard(sharedId, vehicleId, s.answered()));
            }
        }));
        return spans;
    }

    private static boolean isPlaceOf(Vehicle vehicle, String position) {
        return position == null
                || WheelPosition.parse(position)
                        .filter(p -> ForeignWheels.isPlaceOf(vehicle, p))
                        .isPresent();
    }

    /** A row that an ID stands in. */
    private record Place(LocalDateTime at, Source source) {
        private static final Comparator<Place> IN_TIME =
                Comparator.comparing(Place::at).thenComparing(Place::source);

        static Place of(Row seen) {
            return new Place((LocalDateTime) seen.get(0), new Source(seen.getString(1), seen.getLong(2)));
        }

        SharedIds.Sighting sighting() {
            return new SharedIds.Sighting(at.toLocalDate(), source);
        }
    }

    /** An ID on one vehicle: the first and the last row it stands in, and the days on which it answered. */
    private record Seen(Place first, Place last, List<LocalDate> answered) {
        static Seen of(Row group) {
            return new Seen(Place.of(group.getStruct(3)), Place.of(group.getStruct(4)), group.getList(5));
        }

        Seen plus(Seen other) {
            List<LocalDate> days = new ArrayList<>(answered);
            days.addAll(other.answered);
            return new Seen(
                    Place.IN_TIME.compare(first, other.first) <= 0 ? first : other.first,
                    Place.IN_TIME.compare(last, other.last) >= 0 ? last : other.last,
                    days);
        }
    }
}
