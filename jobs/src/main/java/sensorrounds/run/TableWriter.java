package sensorrounds.run;

import java.io.IOException;
import java.io.Serializable;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import org.apache.hadoop.fs.Path;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SaveMode;
import org.apache.spark.sql.SparkSession;
import scala.Tuple2;
import sensorrounds.tables.Table;

/** Writes a result table twice: as Parquet for programs, and as one CSV file for people. Rows stand in a stated order. */
final class TableWriter {
    /** Tables up to this length are sorted in the driver: a small run should not pay for a distributed sort. */
    static final int SMALL = 100_000;

    private final SparkSession spark;
    private final RunStore store;
    private final Path run;
    private final int small;

    /** @param small longest table that is sorted in the driver */
    TableWriter(SparkSession spark, RunStore store, Path run, int small) {
        this.small = small;
        this.spark = spark;
        this.store = store;
        this.run = run;
    }

    /** An order that can travel to the executors. */
    interface Order<T> extends Comparator<T>, Serializable {}

    /** Length and first rows of a written table. */
    record Written<T>(long rows, List<T> first) {}

    /** True for a table that is sorted in the driver. */
    boolean fits(long rows) {
        return rows <= small;
    }

    <T> Written<T> write(Table<T> table, List<T> rows, int keep) {
        List<Row> encoded = rows.stream().map(table::encode).toList();
        spark.sparkContext().setJobDescription("Write " + table.name());
        parquet(table, spark.createDataFrame(encoded, table.schema()).coalesce(1));
        csv(table, encoded.iterator());
        return new Written<>(rows.size(), rows.subList(0, Math.min(keep, rows.size())));
    }

    <T> Written<T> write(Table<T> table, JavaRDD<T> rows, Order<T> order, int keep) {
        long n = rows.count();
        if (fits(n)) {
            List<T> sorted = new ArrayList<>(rows.collect());
            sorted.sort(order);
            return write(table, sorted, keep);
        }
        JavaRDD<T> sorted = sorted(rows, order);
        spark.sparkContext().setJobDescription("Write " + table.name());
        parquet(table, table.frame(spark, sorted));
        // From the sorted rows, one partition after the other: files read back come in no order.
        csv(table, sorted.map(table::encode).toLocalIterator());
        return new Written<>(n, sorted.take(keep));
    }

    static <T> JavaRDD<T> sorted(JavaRDD<T> rows, Order<T> order) {
        return rows.mapToPair(r -> new Tuple2<>(r, 0))
                .sortByKey(order, true, rows.getNumPartitions())
                .keys();
    }

    private String folder(Table<?> table) {
        return new Path(run, "tables/" + table.name()).toString();
    }

    private void parquet(Table<?> table, Dataset<Row> frame) {
        frame.write().mode(SaveMode.ErrorIfExists).parquet(folder(table));
    }

    private void csv(Table<?> table, Iterator<Row> rows) {
        String name = table.name().replace('_', '-') + ".csv";
        try {
            CsvSheet.write(table.schema(), rows, store.create(new Path(run, "csv/" + name)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
