package sensorrounds.ingest;

import static org.apache.spark.sql.functions.col;
import static org.apache.spark.sql.functions.not;

import java.util.List;
import java.util.Map;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;

/** The rows of a set of logs as a store holds them. To be used while the store is open. */
public final class StoredLogs {
    private final LogStore store;
    private final StoreState state;
    private final List<LogFile> files;

    StoredLogs(LogStore store, StoreState state, List<LogFile> files) {
        this.store = store;
        this.state = state;
        this.files = List.copyOf(files);
    }

    /** The logs the rows are of. */
    public List<LogFile> files() {
        return files;
    }

    /** Rows in them, whatever became of them. */
    public long rows() {
        return state.logs().values().stream().mapToLong(StoredLog::rows).sum();
    }

    /** Of these the ones that cannot be used. */
    public long quarantined() {
        return state.logs().values().stream().mapToLong(StoredLog::quarantined).sum();
    }

    Dataset<Row> blocks(SparkSession spark) {
        return blocks(spark, store, state.segments());
    }

    /** The blocks in segments that count. */
    static Dataset<Row> blocks(SparkSession spark, LogStore store, List<StoreState.Segment> segments) {
        Dataset<Row> all = spark.createDataFrame(List.of(), BlockTable.SCHEMA);
        for (StoreState.Segment segment : segments) {
            Dataset<Row> rows = spark.read()
                    .options(Map.of("parquet.page.verify-checksum.enabled", "true"))
                    .schema(BlockTable.SCHEMA)
                    .parquet(store.segment(segment.number()).toString());
            all = all.union(
                    segment.gone().isEmpty()
                            ? rows
                            : rows.where(
                                    not(col(BlockTable.FILE).isin(segment.gone().toArray()))));
        }
        return all;
    }
}
