package sensorrounds.ingest;

import static org.apache.spark.sql.functions.col;

import java.util.Iterator;
import java.util.List;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.SaveMode;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructType;
import org.apache.spark.util.SerializableConfiguration;
import sensorrounds.intake.FileDoubt;
import sensorrounds.tables.LogRow;
import sensorrounds.tables.LogRows;

/**
 * Reads visit logs into the table {@link LogRows}: every file by one task and big ones by several, one shuffle that brings
 * the rows of a vehicle together, duplicates settled per vehicle, written once. Equal input gives equal rows in equal
 * order.
 */
public final class IngestJob {
    /** With fewer writers than outcomes Spark would sort by outcome first and lose the order of the vehicles. */
    private static final String CONCURRENT_WRITERS = "spark.sql.maxConcurrentOutputFileWriters";

    private static final String KEY = "key";
    private static final String FILE = "file";
    private static final String LINE = "line";
    private static final String BYTES = "bytes";
    private static final StructType BLOCKS = new StructType()
            .add(KEY, DataTypes.StringType)
            .add(FILE, DataTypes.StringType)
            .add(LINE, DataTypes.LongType)
            .add(BYTES, DataTypes.BinaryType);

    private static final StructType SIGHTINGS = new StructType()
            .add(LogRows.SENSOR_ID, DataTypes.StringType)
            .add(LogRows.VIN, DataTypes.StringType)
            .add(LogRows.VEHICLE_ID, DataTypes.StringType)
            .add(LogRows.VISITED_AT, DataTypes.TimestampNTZType)
            .add(LogRows.SOURCE_FILE, DataTypes.StringType)
            .add(LogRows.SOURCE_LINE, DataTypes.LongType);

    private static final long BYTES_PER_TASK = 8L << 20;
    private static final long SLICE_BYTES = 64L << 20;

    private final SparkSession spark;
    private final int partitions;
    private final LogSlices slices;

    /** @param partitions into how many parts vehicles are spread, and so files per outcome in the table */
    public IngestJob(SparkSession spark, int partitions) {
        this(spark, partitions, SLICE_BYTES);
    }

    IngestJob(SparkSession spark, int partitions, long sliceBytes) {
        if (partitions < 1) {
            throw new IllegalArgumentException("partitions " + partitions + ", expected 1 or more");
        }
        this.spark = spark;
        this.partitions = partitions;
        this.slices = new LogSlices(sliceBytes);
    }

    /**
     * Reads the logs, writes the table and proves that no row was lost.
     *
     * @param folder folder of the table; must not exist
     * @throws RefusedInput when a file cannot be read to its end
     * @throws IllegalStateException when rows in and rows out do not agree, which is our bug
     */
    public IngestSummary run(List<LogFile> files, String folder) {
        return IngestFailures.unwrap(() -> {
            write(resolved(files), folder);
            return IngestReconciliation.check(IngestTally.ofTable(spark, folder).summary(), files);
        });
    }

    /** Reads the logs and counts what would become of each row, without writing anything. */
    public Examination check(List<LogFile> files) {
        return IngestFailures.unwrap(() -> {
            // Walked through three times; what the readers gave to the shuffle is kept by Spark for as long as this is.
            JavaRDD<LogRow> rows = resolved(files);
            IngestSummary summary =
                    IngestReconciliation.check(IngestTally.of(rows).summary(), files);
            DoubtTally doubts = rows.mapPartitions(DoubtedVehicles::count).fold(new DoubtTally(), DoubtTally::add);
            SharedIdentities.of(sightings(rows), null).forEach(doubts::add);
            List<FileDoubt> aboutFiles = summary.files().stream()
                    .flatMap(f -> FileDoubt.of(f.count()).stream())
                    .toList();
            return new Examination(summary, new Examination.Doubts(doubts, aboutFiles));
        });
    }

    private Dataset<Row> sightings(JavaRDD<LogRow> rows) {
        JavaRDD<Row> seen = rows.filter(r -> r.accepted() != null)
                .map(LogRow::accepted)
                .map(r -> RowFactory.create(
                        r.wheel() == null ? null : r.wheel().sensorId(),
                        r.visit().vin(),
                        r.visit().vehicleId(),
                        r.visit().visitedAt(),
                        r.source().file(),
                        r.source().line()));
        return spark.createDataFrame(seen, SIGHTINGS);
    }

    private JavaRDD<LogRow> resolved(List<LogFile> files) {
        JavaSparkContext context = JavaSparkContext.fromSparkContext(spark.sparkContext());
        Broadcast<SerializableConfiguration> hadoop =
                context.broadcast(new SerializableConfiguration(context.hadoopConfiguration()));
        context.setJobDescription("Find the lines of big visit logs");
        List<LogSlice> parts = slices.of(
                files,
                stretches -> context.parallelize(stretches, stretches.size())
                        .map(stretch -> SliceSurvey.of(stretch, hadoop.value().value()))
                        .collect());
        context.setJobDescription("Read " + files.size() + " visit logs");
        JavaRDD<Row> blocks = context.parallelize(parts, tasks(parts, context.defaultParallelism()))
                .flatMap(slice -> rows(LogReader.open(slice, hadoop.value().value())));
        // File and line take part in the order so that a rerun gives the same rows in the same places.
        return spark.createDataFrame(blocks, BLOCKS)
                .repartition(partitions, col(KEY))
                .sortWithinPartitions(KEY, FILE, LINE)
                .select(BYTES)
                .as(Encoders.BINARY())
                .javaRDD()
                .mapPartitions(ResolveVisits::new);
    }

    /** Small files share a task: technicians send many, and starting a task takes longer than reading one of them. */
    private static int tasks(List<LogSlice> parts, int parallelism) {
        long bytes = parts.stream().mapToLong(LogSlice::length).sum();
        return (int) Math.min(parts.size(), Math.max(2L * parallelism, bytes / BYTES_PER_TASK));
    }

    private static Iterator<Row> rows(LogReader log) {
        Blocks blocks = new Blocks(log);
        return new Iterator<>() {
            @Override
            public boolean hasNext() {
                return blocks.hasNext();
            }

            @Override
            public Row next() {
                Block block = blocks.next();
                return RowFactory.create(block.key(), block.file(), block.line(), block.bytes());
            }
        };
    }

    private void write(JavaRDD<LogRow> rows, String folder) {
        String before = spark.conf().get(CONCURRENT_WRITERS, "0");
        spark.conf().set(CONCURRENT_WRITERS, LogRow.Outcome.values().length);
        try {
            LogRows.TABLE
                    .frame(spark, rows)
                    .write()
                    .mode(SaveMode.ErrorIfExists)
                    .partitionBy(LogRows.OUTCOME)
                    .parquet(folder);
        } finally {
            spark.conf().set(CONCURRENT_WRITERS, before);
        }
    }
}
