package sensorrounds.run;

import static org.apache.spark.sql.functions.col;
import static org.apache.spark.sql.functions.collect_list;
import static org.apache.spark.sql.functions.sort_array;
import static org.apache.spark.sql.functions.struct;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import sensorrounds.assemble.Histories;
import sensorrounds.history.VehicleMoves;
import sensorrounds.ingest.IngestJob;
import sensorrounds.ingest.LogFile;
import sensorrounds.ingest.LogStore;
import sensorrounds.ingest.LogTable;
import sensorrounds.ingest.StoreUpdate;
import sensorrounds.tables.LogRow;

/**
 * Reading and storing JSON lines against bare Spark on the same files, and rebuilding sensor lives against a bare grouping by
 * sensor, in turn in one session. Arguments: data folder, scratch folder, passes, contenders (all but the last two when none
 * is named). {@code five-years} and {@code day} fill a store without and then with the logs named {@code day*}.
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

    private final SparkSession spark;
    private final Path scratch;
    private final List<LogFile> files;
    private final RunInputs inputs;

    private IngestBenchmark(SparkSession spark, RunInputs inputs, Path scratch) {
        this.spark = spark;
        this.scratch = scratch;
        this.inputs = inputs;
        this.files = inputs.logs();
    }

    public static void main(String[] args) throws IOException {
        RunInputs inputs = RunInputs.find(new RunOptions(args[0], null, null, null, null), Pipeline.hadoop());
        List<String> wanted = args.length > 3
                ? List.of(args).subList(3, args.length)
                : List.of("bare", "store", "table", "from-store", "bare-grouping", "bare-lists", "lives");
        try (SparkSessions.Session session = SparkSessions.open("ingest benchmark", inputs.bytes())) {
            session.spark().sparkContext().setLogLevel("ERROR");
            IngestBenchmark bench = new IngestBenchmark(session.spark(), inputs, Path.of(args[1]));
            for (int pass = 1; pass <= Integer.parseInt(args[2]); pass++) {
                for (String contender : wanted) {
                    bench.measure(pass, contender);
                }
            }
        }
    }

    private void measure(int pass, String contender) throws IOException {
        OperatingSystemMXBean system = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
        if (!contender.equals("from-store")) {
            delete(scratch.resolve(contender));
        }
        long start = System.nanoTime();
        long processor = system.getProcessCpuTime();
        long result = run(contender);
        double elapsed = (System.nanoTime() - start) / 1e9;
        double used = (system.getProcessCpuTime() - processor) / 1e9;
        System.out.printf(
                Locale.ROOT,
                "pass %d  %-14s %7.1f s elapsed %7.1f s processor  (%d)%n",
                pass,
                contender,
                elapsed,
                used,
                result);
    }

    private long run(String contender) throws IOException {
        Path out = scratch.resolve(contender);
        return switch (contender) {
            case "bare" -> {
                spark.read()
                        .schema(VISIT)
                        .json(files.stream().map(LogFile::uri).toArray(String[]::new))
                        .write()
                        .parquet(out.toString());
                yield 0;
            }
            case "store" -> update(out, files);
            case "five-years" ->
                update(out, files.stream().filter(f -> !isOfTheDay(f)).toList());
            case "day" -> update(scratch.resolve("five-years"), files);
            case "table" -> job().run(files, out.toString()).accepted();
            case "from-store" -> {
                delete(out);
                try (LogStore store = LogStore.open(scratch.resolve("store").toString(), Pipeline.hadoop())) {
                    yield job().run(
                                    new StoreUpdate(() -> spark, store)
                                            .run(files, StoreUpdate.Scrutiny.SIZE_AND_TIME)
                                            .logs(),
                                    out.toString())
                            .accepted();
                }
            }
            case "bare-grouping" ->
                accepted()
                        .groupBy("sensor_id")
                        .agg(Map.of("visited_at", "min", "pressure_kpa", "avg", "wake_attempts", "max", "*", "count"))
                        .count();
            case "bare-lists" -> {
                accepted()
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
                yield 0;
            }
            case "lives" -> {
                LocalDate asOf = AsOf.of(null, spark, table());
                JavaSparkContext context = JavaSparkContext.fromSparkContext(spark.sparkContext());
                // Lives vehicle by vehicle; sensors that move to another vehicle are looked for before that in a run.
                Map<String, VehicleMoves> none = new HashMap<>();
                yield Histories.of(
                                LogTable.byVehicle(spark, table()),
                                context.broadcast(inputs.fleet()),
                                context.broadcast(none),
                                inputs.settings().review().history(),
                                asOf)
                        .mapToDouble(h -> h.lives().size())
                        .sum()
                        .longValue();
            }
            default -> throw new IllegalArgumentException("no contender " + contender);
        };
    }

    /** Brings a store up to date. @return rows in it */
    private long update(Path folder, List<LogFile> logs) {
        try (LogStore store = LogStore.open(folder.toString(), Pipeline.hadoop())) {
            return new StoreUpdate(() -> spark, store)
                    .run(logs, StoreUpdate.Scrutiny.SIZE_AND_TIME)
                    .logs()
                    .rows();
        }
    }

    private static boolean isOfTheDay(LogFile file) {
        return file.name().startsWith("visit-logs/day");
    }

    private IngestJob job() {
        return new IngestJob(spark, SparkSessions.partitions(spark));
    }

    private String table() {
        Path whole = scratch.resolve("table");
        return (Files.exists(whole) ? whole : scratch.resolve("from-store")).toString();
    }

    private Dataset<Row> accepted() {
        return LogTable.read(spark, table(), LogRow.Outcome.ACCEPTED)
                .where(col("sensor_id").isNotNull());
    }

    private static void delete(Path folder) throws IOException {
        if (Files.exists(folder)) {
            try (Stream<Path> all = Files.walk(folder)) {
                all.sorted(Comparator.reverseOrder()).forEach(p -> p.toFile().delete());
            }
        }
    }
}
