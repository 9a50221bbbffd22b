package sensorrounds.ingest;

import static org.apache.spark.sql.functions.col;

import java.util.List;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.SaveMode;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructType;
import sensorrounds.tables.LogRow;
import sensorrounds.tables.LogRows;

/**
 * Reads visit logs into the table {@link LogRows}: every file by one task and big ones by several, one shuffle that brings
 * the rows of a vehicle together, duplicates settled per vehicle, written once. Equal input gives equal rows in equal
 * order.
 */
public final class IngestJob {
    private static final StructType SIGHTINGS = new StructType()
            .add(LogRows.SENSOR_ID, DataTypes.StringType)
            .add(LogRows.VIN, DataTypes.StringType)
            .add(LogRows.VEHICLE_ID, DataTypes.StringType)
            .add(LogRows.POSITION, DataTypes.StringType)
            .add(LogRows.VISITED_AT, DataTypes.TimestampNTZType)
            .add(LogRows.SOURCE_FILE, DataTypes.StringType)
            .add(LogRows.SOURCE_LINE, DataTypes.LongType);

    private static final long BYTES_PER_TASK = 8L << 20;

    private final SparkSession spark;
    private final int partitions;
    private final BlockTable blocks;

    /** @param partitions into how many parts vehicles are spread, and so files per outcome in the table */
    public IngestJob(SparkSession spark, int partitions) {
        this(spark, partitions, BlockTable.SLICE_BYTES);
    }

    IngestJob(SparkSession spark, int partitions, long sliceBytes) {
        if (partitions < 1) {
            throw new IllegalArgumentException("partitions " + partitions + ", expected 1 or more");
        }
        this.spark = spark;
        this.partitions = partitions;
        this.blocks = new BlockTable(spark, sliceBytes);
    }

    private IngestJob(SparkSession spark, int partitions, BlockTable blocks) {
        this.spark = spark;
        this.partitions = partitions;
        this.blocks = blocks;
    }

    /** @param with what replaces personal data before it is stored; null to keep it */
    public IngestJob replacing(Pseudonyms with) {
        return new IngestJob(spark, partitions, blocks.replacing(with));
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
            write(resolved(blocks.read(files, BYTES_PER_TASK)), folder);
            return IngestReconciliation.check(IngestTally.ofTable(spark, folder).summary(), files);
        });
    }

    /** As {@link #run(List, String)}, from logs that a store has read before. The table is the same to the byte. */
    public IngestSummary run(StoredLogs logs, String folder) {
        return IngestFailures.unwrap(() -> {
            write(resolved(logs.blocks(spark)), folder);
            return IngestReconciliation.check(IngestTally.ofTable(spark, folder).summary(), logs.files());
        });
    }

    /** Reads the logs and counts what would become of each row, without writing anything. */
    public Examination check(List<LogFile> files) {
        return IngestFailures.unwrap(() -> {
            // Walked through three times; what the readers gave to the shuffle is kept by Spark for as long as this is.
            JavaRDD<LogRow> rows = resolved(blocks.read(files, BYTES_PER_TASK));
            IngestSummary summary =
                    IngestReconciliation.check(IngestTally.of(rows).summary(), files);
            DoubtTally doubts = rows.mapPartitions(DoubtedVehicles::count).fold(new DoubtTally(), DoubtTally::add);
            SharedIdentities.of(sightings(rows), null).forEach(doubts::add);
            return new Examination(summary, new Examination.Doubts(doubts, summary.fileDoubts()));
        });
    }

    private Dataset<Row> sightings(JavaRDD<LogRow> rows) {
        JavaRDD<Row> seen = rows.filter(r -> r.accepted() != null)
                .map(LogRow::accepted)
                .map(r -> RowFactory.create(
                        r.wheel() == null ? null : r.wheel().sensorId(),
                        r.visit().vin(),
                        r.visit().vehicleId(),
                        r.wheel() == null ? null : r.wheel().position().code(),
                        r.visit().visitedAt(),
                        r.source().file(),
                        r.source().line()));
        return spark.createDataFrame(seen, SIGHTINGS);
    }

    private JavaRDD<LogRow> resolved(Dataset<Row> read) {
        // File and line take part in the order so that a rerun gives the same rows in the same places.
        return read.repartition(partitions, col(BlockTable.KEY))
                .sortWithinPartitions(BlockTable.KEY, BlockTable.FILE, BlockTable.LINE, BlockTable.BYTES)
                .select(BlockTable.BYTES)
                .as(Encoders.BINARY())
                .javaRDD()
                .mapPartitions(ResolveVisits::new);
    }

    private void write(JavaRDD<LogRow> rows, String folder) {
        ConcurrentWriters.each(
                spark,
                LogRow.Outcome.values().length,
                () -> LogRows.TABLE
                        .frame(spark, rows)
                        .write()
                        .mode(SaveMode.ErrorIfExists)
                        .partitionBy(LogRows.OUTCOME)
                        .parquet(folder));
    }
}
