package sensorrounds.run;

import static org.apache.spark.sql.functions.col;
import static org.apache.spark.sql.functions.collect_list;
import static org.apache.spark.sql.functions.sort_array;
import static org.apache.spark.sql.functions.struct;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import sensorrounds.assemble.Histories;
import sensorrounds.assemble.Register;
import sensorrounds.fleet.Vehicle;
import sensorrounds.history.VehicleMoves;
import sensorrounds.ingest.IngestJob;
import sensorrounds.ingest.LogFile;
import sensorrounds.ingest.LogStore;
import sensorrounds.ingest.LogTable;
import sensorrounds.ingest.StoreUpdate;
import sensorrounds.tables.LogRow;

/**
 * Reading and storing JSON lines against bare Spark on the same files, and rebuilding sensor lives against a bare grouping by
 * sensor. Arguments: data folder, scratch folder, passes, and what to compare:
 *
 * <ul>
 *   <li>{@code store}: bare Spark, and the store of validated rows;
 *   <li>{@code table}: the same, and the table of log rows, brought together by vehicle with duplicates settled;
 *   <li>{@code lives}: bare groupings by sensor, and sensor lives, from that table;
 *   <li>{@code cores}: the store on one core, and on all.
 * </ul>
 */
public final class IngestBenchmark {
    private static final String WHEEL =
            "position string, sensorId string, `read` string, wakeAttempts int, pressure double,"
                    + " temperature double, gaugePressure double, hot boolean, battery string, part string, work string,"
                    + " workReason string, newSensorId string, newPart string, cloned boolean, tyreDate string";
    private static final String VISIT = "visitId string, visitedAt string, technicianId string, readerId string,"
            + " vehicleId string, vin string, registration string, odometer double, ambientTemperature double,"
            + " placardPressure struct<`1`: double, `2`: double, `3`: double>, reason string, warning string,"
            + " warningSince string, faultCodes array<struct<code: string, state: string, position: string>>,"
            + " pressuresStored boolean, codesCleared boolean, wheelSet string, notes string, wheels array<struct<"
            + WHEEL.replaceAll("(`?[a-zA-Z]+`?) (string|int|double|boolean)", "$1: $2") + ">>";

    private final RunInputs inputs;
    private final List<LogFile> files;
    private final Path scratch;

    private IngestBenchmark(RunInputs inputs, Path scratch) {
        this.inputs = inputs;
        this.files = inputs.logs();
        this.scratch = scratch;
    }

    public static void main(String[] args) throws IOException {
        RunInputs inputs = RunInputs.find(new RunOptions(args[0], null, null, null, null), Pipeline.hadoop());
        IngestBenchmark bench = new IngestBenchmark(inputs, Path.of(args[1]));
        int passes = Integer.parseInt(args[2]);
        if (args[3].equals("cores")) {
            bench.cores(passes);
            return;
        }
        try (SparkSessions.Session session = bench.session()) {
            switch (args[3]) {
                case "store" -> bench.store(session.spark()).run(passes);
                case "table" -> bench.table(session.spark()).run(passes);
                case "lives" -> bench.lives(session.spark()).run(passes);
                default -> throw new IllegalArgumentException("no comparison " + args[3]);
            }
        }
    }

    private SparkSessions.Session session() {
        SparkSessions.Session session = SparkSessions.open("ingest benchmark", inputs.bytes());
        session.spark().sparkContext().setLogLevel("ERROR");
        return session;
    }

    /** A contender that writes a folder, which is gone before it starts. */
    private Contest.Contender into(String name, Contest.Contender work) {
        return new Contest.Contender() {
            @Override
            public void prepare() throws IOException {
                delete(scratch.resolve(name));
            }

            @Override
            public long run() throws IOException {
                return work.run();
            }
        };
    }

    private Contest store(SparkSession spark) {
        return new Contest()
                .add("bare", into("bare", () -> bare(spark)))
                .add("store", into("store", () -> update(spark)));
    }

    private Contest table(SparkSession spark) {
        return store(spark).add("table", into("table", () -> makeTable(spark)));
    }

    private Contest lives(SparkSession spark) {
        if (!Files.exists(scratch.resolve("table"))) {
            makeTable(spark);
        }
        LocalDate asOf = AsOf.of(null, spark, table());
        return new Contest()
                .add("sorted lists", () -> sortedLists(spark))
                .add("four figures", () -> fourFigures(spark))
                .add("lives", () -> lives(spark, asOf));
    }

    /** Each pass has a session of its own, which is opened before the clock runs. */
    private void cores(int passes) throws IOException {
        new Contest()
                .add("one core", onCores("local[1]"))
                .add("all cores", onCores("local[*]"))
                .run(passes);
    }

    private Contest.Contender onCores(String master) {
        return new Contest.Contender() {
            @Override
            public void prepare() throws IOException {
                SparkSession.getDefaultSession().foreach(spark -> {
                    spark.stop();
                    return null;
                });
                System.setProperty("spark.master", master);
                session();
                delete(scratch.resolve("store"));
            }

            @Override
            public long run() {
                return update(SparkSession.active());
            }
        };
    }

    private long bare(SparkSession spark) {
        spark.read()
                .schema(VISIT)
                .json(files.stream().map(LogFile::uri).toArray(String[]::new))
                .write()
                .parquet(scratch.resolve("bare").toString());
        return files.size();
    }

    /** Fills a store. @return rows in it */
    private long update(SparkSession spark) {
        try (LogStore store = LogStore.open(scratch.resolve("store").toString(), Pipeline.hadoop())) {
            return new StoreUpdate(() -> spark, store)
                    .run(files, StoreUpdate.Scrutiny.SIZE_AND_TIME)
                    .logs()
                    .rows();
        }
    }

    private long makeTable(SparkSession spark) {
        return new IngestJob(spark, SparkSessions.partitions(spark))
                .run(files, table())
                .accepted();
    }

    private String table() {
        return scratch.resolve("table").toString();
    }

    private Dataset<Row> ofSensors(SparkSession spark) {
        return LogTable.read(spark, table(), LogRow.Outcome.ACCEPTED)
                .where(col("sensor_id").isNotNull());
    }

    private long fourFigures(SparkSession spark) {
        return ofSensors(spark)
                .groupBy("sensor_id")
                .agg(Map.of("visited_at", "min", "pressure_kpa", "avg", "wake_attempts", "max", "*", "count"))
                .count();
    }

    private long sortedLists(SparkSession spark) {
        ofSensors(spark)
                .groupBy("sensor_id")
                .agg(sort_array(collect_list(struct(
                                col("visited_at"),
                                col("vehicle_id"),
                                col("position"),
                                col("read"),
                                col("wake_attempts"),
                                col("pressure_kpa"),
                                col("battery_kind"),
                                col("work"),
                                col("work_reason"),
                                col("new_sensor_id"))))
                        .as("readings"))
                .write()
                .format("noop")
                .mode("overwrite")
                .save();
        return 0;
    }

    /** Lives vehicle by vehicle; sensors that move to another vehicle are looked for before that in a run. */
    private long lives(SparkSession spark, LocalDate asOf) {
        JavaSparkContext context = JavaSparkContext.fromSparkContext(spark.sparkContext());
        Broadcast<Map<String, Vehicle>> register = context.broadcast(Register.of(inputs.fleet()));
        Broadcast<Map<String, VehicleMoves>> none = context.broadcast(new HashMap<>());
        return Histories.of(
                        LogTable.byVehicle(spark, table()),
                        register,
                        none,
                        inputs.settings().review().history(),
                        asOf)
                .mapToDouble(h -> h.lives().size())
                .sum()
                .longValue();
    }

    private static void delete(Path folder) throws IOException {
        if (Files.exists(folder)) {
            try (Stream<Path> all = Files.walk(folder)) {
                all.sorted(Comparator.reverseOrder()).forEach(p -> p.toFile().delete());
            }
        }
    }
}
