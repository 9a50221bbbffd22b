package sensorrounds.ingest;

import static org.apache.spark.sql.functions.coalesce;
import static org.apache.spark.sql.functions.col;

import java.util.Iterator;
import java.util.List;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.api.java.function.MapPartitionsFunction;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SaveMode;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.util.SerializableConfiguration;
import sensorrounds.tables.LogRow;
import sensorrounds.tables.LogRows;

/**
 * Reads visit logs into the table {@link LogRows}: every file by one task, one shuffle that brings the rows of a vehicle
 * together, duplicates settled per vehicle, written once. Equal input gives equal rows in equal order.
 */
public final class IngestJob {
    /** With fewer writers than outcomes Spark would sort by outcome first and lose the order of the vehicles. */
    private static final String CONCURRENT_WRITERS = "spark.sql.maxConcurrentOutputFileWriters";

    private final SparkSession spark;
    private final int partitions;

    /** @param partitions into how many parts vehicles are spread, and so files per outcome in the table */
    public IngestJob(SparkSession spark, int partitions) {
        if (partitions < 1) {
            throw new IllegalArgumentException("partitions " + partitions + ", expected 1 or more");
        }
        this.spark = spark;
        this.partitions = partitions;
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
            return IngestReconciliation.check(IngestSummary.of(LogTable.read(spark, folder)), files);
        });
    }

    /** Reads the logs and counts what would become of each row, without writing anything. */
    public IngestSummary check(List<LogFile> files) {
        return IngestFailures.unwrap(() -> IngestReconciliation.check(IngestSummary.of(resolved(files)), files));
    }

    private Dataset<Row> resolved(List<LogFile> files) {
        JavaSparkContext context = JavaSparkContext.fromSparkContext(spark.sparkContext());
        Broadcast<SerializableConfiguration> hadoop =
                context.broadcast(new SerializableConfiguration(context.hadoopConfiguration()));
        List<LogSlice> slices = files.stream().map(LogSlice::whole).toList();
        context.setJobDescription("Read " + files.size() + " visit logs");
        JavaRDD<LogRow> rows = context.parallelize(slices, slices.size())
                .flatMap(slice -> LogReader.open(slice, hadoop.value().value()));
        // Rows without a vehicle go with their file; the order of the rest of the columns makes a rerun give equal
        // tables.
        return LogRows.TABLE
                .frame(spark, rows)
                .repartition(partitions, coalesce(col(LogRows.VEHICLE_ID), col(LogRows.SOURCE_FILE)))
                .sortWithinPartitions(LogRows.VEHICLE_ID, LogRows.SOURCE_FILE, LogRows.SOURCE_LINE, LogRows.RAW_TEXT)
                .mapPartitions(
                        (MapPartitionsFunction<Row, Row>) (Iterator<Row> in) -> new ResolveVisits(in),
                        Encoders.row(LogRows.TABLE.schema()));
    }

    private void write(Dataset<Row> rows, String folder) {
        String before = spark.conf().get(CONCURRENT_WRITERS, "0");
        spark.conf().set(CONCURRENT_WRITERS, LogRow.Outcome.values().length);
        try {
            rows.write()
                    .mode(SaveMode.ErrorIfExists)
                    .partitionBy(LogRows.OUTCOME)
                    .parquet(folder);
        } finally {
            spark.conf().set(CONCURRENT_WRITERS, before);
        }
    }
}
