package sensorrounds.ingest;

import static org.apache.spark.sql.functions.broadcast;
import static org.apache.spark.sql.functions.col;
import static org.apache.spark.sql.functions.lit;
import static org.apache.spark.sql.functions.max;
import static org.apache.spark.sql.functions.min;
import static org.apache.spark.sql.functions.struct;
import static org.apache.spark.sql.functions.when;
import static org.apache.spark.sql.functions.xxhash64;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import org.apache.spark.sql.Column;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import sensorrounds.history.MovedSensors;
import sensorrounds.plausibility.Doubt;
import sensorrounds.plausibility.SharedIds;
import sensorrounds.tables.LogRows;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.Source;

/**
 * Finds what is on two vehicles at once, which no vehicle's own rows can show: a second, small grouping by sensor ID and by
 * VIN. Only IDs that are on two vehicles are looked at closely, and those are few.
 */
public final class SharedIdentities {
    private static final String LEAST = "least_vehicle";
    private static final String MOST = "most_vehicle";
    private static final String FIRST = "first_seen";
    private static final String LAST = "last_seen";

    private SharedIdentities() {}

    /**
     * @param accepted accepted rows, with the columns of {@link LogRows} for sensor, VIN, vehicle, time and source
     * @param asOf last day that counts; null for all days
     * @return by kind, ID and time
     */
    public static List<Doubt> of(Dataset<Row> accepted, LocalDate asOf) {
        return find(accepted, asOf, lit(false)).doubts();
    }

    /**
     * What is on more than one vehicle.
     *
     * @param doubts by kind, ID and time
     * @param heard from when to when such a sensor answered on each vehicle, in no order
     */
    public record Shared(List<Doubt> doubts, List<MovedSensors.Heard> heard) {}

    /** As {@link #of}, with the answers; the rows have the column of {@link LogRows} for the outcome of a read as well. */
    public static Shared find(Dataset<Row> accepted, LocalDate asOf) {
        return find(accepted, asOf, col(LogRows.READ).equalTo(ReadOutcome.OK.name()));
    }

    private static Shared find(Dataset<Row> accepted, LocalDate asOf, Column answered) {
        Dataset<Row> rows = asOf == null
                ? accepted
                : accepted.where(col(LogRows.VISITED_AT).lt(asOf.plusDays(1).atStartOfDay()));
        List<MovedSensors.Heard> heard = new ArrayList<>();
        List<Doubt> doubts = new ArrayList<>();
        doubts.addAll(SharedIds.of(Doubt.Kind.SENSOR_AT_TWO_VEHICLES, spans(rows, LogRows.SENSOR_ID, answered, heard)));
        doubts.addAll(
                SharedIds.of(Doubt.Kind.VIN_AT_TWO_VEHICLES, spans(rows, LogRows.VIN, lit(false), new ArrayList<>())));
        return new Shared(doubts, heard);
    }

    private static List<SharedIds.Span> spans(
            Dataset<Row> accepted, String id, Column answered, List<MovedSensors.Heard> heard) {
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
        List<SharedIds.Span> spans = new ArrayList<>();
        for (Row span : rows.join(broadcast(few), id)
                .groupBy(id, LogRows.VEHICLE_ID)
                .agg(
                        min(sighting).as(FIRST),
                        max(sighting).as(LAST),
                        min(when(answered, col(LogRows.VISITED_AT))),
                        max(when(answered, col(LogRows.VISITED_AT))))
                .collectAsList()) {
            spans.add(new SharedIds.Span(
                    span.getString(0), span.getString(1), sighting(span.getStruct(2)), sighting(span.getStruct(3))));
            if (!span.isNullAt(4)) {
                heard.add(new MovedSensors.Heard(
                        span.getString(0),
                        span.getString(1),
                        ((LocalDateTime) span.get(4)).toLocalDate(),
                        ((LocalDateTime) span.get(5)).toLocalDate()));
            }
        }
        return spans;
    }

    private static SharedIds.Sighting sighting(Row seen) {
        return new SharedIds.Sighting(
                ((LocalDateTime) seen.get(0)).toLocalDate(), new Source(seen.getString(1), seen.getLong(2)));
    }
}
