package sensorrounds.ingest;

import java.util.List;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.util.SerializableConfiguration;

/** Updates of any size, on all cores or on a cluster. */
final class StoreWorkOnSpark implements StoreWork {
    private static final long BYTES_PER_TASK = 64L << 20;

    private final SparkSession spark;
    private final LogStore store;
    private final BlockTable blocks;

    StoreWorkOnSpark(SparkSession spark, LogStore store) {
        this.spark = spark;
        this.store = store;
        this.blocks = new BlockTable(spark, BlockTable.SLICE_BYTES).replacing(store.pseudonyms());
    }

    @Override
    public List<String> checksums(List<LogFile> files) {
        JavaSparkContext context = JavaSparkContext.fromSparkContext(spark.sparkContext());
        Broadcast<SerializableConfiguration> hadoop =
                context.broadcast(new SerializableConfiguration(context.hadoopConfiguration()));
        context.setJobDescription("Sum up the content of " + files.size() + " visit logs");
        return context.parallelize(files, Math.min(files.size(), 8 * context.defaultParallelism()))
                .map(file -> Checksums.of(file, hadoop.value().value()))
                .collect();
    }

    @Override
    public IngestTally read(List<LogFile> files, String folder) {
        blocks.write(blocks.read(files, BYTES_PER_TASK), folder);
        return blocks.tally(folder);
    }

    @Override
    public void copy(List<StoreState.Segment> segments, String folder) {
        Dataset<Row> rows = StoredLogs.blocks(spark, store, segments);
        long bytes = segments.stream().mapToLong(StoreState.Segment::bytes).sum();
        blocks.write(rows.coalesce((int) (bytes / BYTES_PER_TASK) + 1), folder);
    }
}
