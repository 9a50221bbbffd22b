package sensorrounds.ingest;

import static org.apache.spark.sql.functions.col;
import static org.apache.spark.sql.functions.sum;

import java.util.Iterator;
import java.util.List;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.SaveMode;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructType;
import org.apache.spark.util.SerializableConfiguration;
import sensorrounds.tables.LogRow;

/** Blocks as rows of Spark: read from logs, and kept in Parquet by the outcome of their rows. */
final class BlockTable {
    static final String KEY = "key";
    static final String FILE = "file";
    static final String LINE = "line";
    static final String BYTES = "bytes";
    static final String ROWS = "rows";
    static final String OUTCOME = "outcome";
    static final StructType SCHEMA = new StructType()
            .add(KEY, DataTypes.StringType)
            .add(FILE, DataTypes.StringType)
            .add(LINE, DataTypes.LongType)
            .add(BYTES, DataTypes.BinaryType)
            .add(ROWS, DataTypes.IntegerType)
            .add(OUTCOME, DataTypes.StringType);

    static final long SLICE_BYTES = 64L << 20;

    private final SparkSession spark;
    private final LogSlices slices;
    private final Pseudonyms pseudonyms;

    /** @param sliceBytes about how much of a big file one task reads */
    BlockTable(SparkSession spark, long sliceBytes) {
        this(spark, new LogSlices(sliceBytes), null);
    }

    private BlockTable(SparkSession spark, LogSlices slices, Pseudonyms pseudonyms) {
        this.spark = spark;
        this.slices = slices;
        this.pseudonyms = pseudonyms;
    }

    /** @param with what replaces personal data in the rows read; null to keep it */
    BlockTable replacing(Pseudonyms with) {
        return new BlockTable(spark, slices, with);
    }

    /**
     * The blocks of logs, read when they are asked for.
     *
     * @param bytesPerTask about how much of many small files one task reads
     */
    Dataset<Row> read(List<LogFile> files, long bytesPerTask) {
        JavaSparkContext context = JavaSparkContext.fromSparkContext(spark.sparkContext());
        Broadcast<SerializableConfiguration> hadoop =
                context.broadcast(new SerializableConfiguration(context.hadoopConfiguration()));
        context.setJobDescription("Find the lines of big visit logs");
        List<LogSlice> parts = slices.of(
                files,
                stretches -> context.parallelize(stretches, stretches.size())
                        .map(stretch -> SliceSurvey.of(stretch, hadoop.value().value()))
                        .collect(),
                context.hadoopConfiguration());
        context.setJobDescription("Read " + files.size() + " visit logs");
        Pseudonyms replacing = pseudonyms;
        JavaRDD<Row> blocks = context.parallelize(parts, tasks(parts, context.defaultParallelism(), bytesPerTask))
                .flatMap(slice -> rows(LogReader.open(slice, hadoop.value().value(), replacing)));
        return spark.createDataFrame(blocks, SCHEMA);
    }

    /** Small files share a task: technicians send many, and starting a task takes longer than reading one of them. */
    private static int tasks(List<LogSlice> parts, int parallelism, long bytesPerTask) {
        long bytes = parts.stream().mapToLong(LogSlice::length).sum();
        return (int) Math.min(parts.size(), Math.max(2L * parallelism, bytes / bytesPerTask));
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
                return RowFactory.create(
                        block.key(),
                        block.file(),
                        block.line(),
                        block.bytes(),
                        block.rows(),
                        block.outcome().word());
            }
        };
    }

    /** @param folder must not exist */
    void write(Dataset<Row> blocks, String folder) {
        ConcurrentWriters.each(
                spark,
                LogRow.Outcome.values().length,
                () -> blocks.write()
                        .mode(SaveMode.ErrorIfExists)
                        .partitionBy(OUTCOME)
                        .parquet(folder));
    }

    /** Counts of blocks that were written, before duplicates are known. */
    IngestTally tally(String folder) {
        Dataset<Row> stored = spark.read().schema(SCHEMA).parquet(folder);
        String accepted = LogRow.Outcome.ACCEPTED.word();
        IngestTally tally = IngestTally.of(stored.where(col(OUTCOME).notEqual(accepted))
                .select(BYTES)
                .javaRDD()
                .flatMap(row -> Block.rows(row.<byte[]>getAs(0)).iterator()));
        for (Row file : stored.where(col(OUTCOME).equalTo(accepted))
                .groupBy(FILE)
                .agg(sum(ROWS))
                .collectAsList()) {
            tally.add(file.getString(0), LogRow.Outcome.ACCEPTED, file.getLong(1));
        }
        return tally;
    }
}
