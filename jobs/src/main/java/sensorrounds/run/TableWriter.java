package sensorrounds.run;

import java.io.IOException;
import java.io.Serializable;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import org.apache.hadoop.fs.Path;
import org.apache.spark.api.java.JavaPairRDD;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SaveMode;
import org.apache.spark.sql.SparkSession;
import scala.Tuple2;
import sensorrounds.keep.Kept;
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

    /** What a row is sorted by, where that is little of it: only this travels beside the row's columns. */
    interface Key<T, K extends Comparable<K>> extends Serializable {
        K of(T row);
    }

    <T> Written<T> write(Table<T> table, List<T> rows, int keep) {
        write(table, rows.stream().map(table::encode).toList());
        return new Written<>(rows.size(), rows.subList(0, Math.min(keep, rows.size())));
    }

    private void write(Table<?> table, List<Row> encoded) {
        spark.sparkContext().setJobDescription("Write " + table.name());
        parquet(table, spark.createDataFrame(encoded, table.schema()).coalesce(1));
        csv(table, encoded.iterator());
    }

    <T> Written<T> write(Table<T> table, JavaRDD<T> rows, Order<T> order, int keep) {
        long n = rows.count();
        if (fits(n)) {
            List<T> sorted = new ArrayList<>(rows.collect());
            sorted.sort(order);
            return write(table, sorted, keep);
        }
        JavaRDD<T> sorted = sorted(rows, order);
        write(table, sorted.map(table::encode));
        return new Written<>(n, sorted.take(keep));
    }

    /** Writes a table of which no row is wanted afterwards. @return its length */
    <T, K extends Comparable<K>> long write(Table<T> table, JavaRDD<T> rows, Key<T, K> key) {
        JavaPairRDD<K, Row> keyed = rows.mapToPair(r -> new Tuple2<>(key.of(r), table.encode(r)));
        long n = rows.count();
        if (fits(n)) {
            List<Tuple2<K, Row>> sorted = new ArrayList<>(keyed.collect());
            sorted.sort(Comparator.comparing(Tuple2::_1));
            write(table, sorted.stream().map(Tuple2::_2).toList());
        } else {
            write(
                    table,
                    keyed.sortByKey(Comparator.naturalOrder(), true, rows.getNumPartitions())
                            .values());
        }
        return n;
    }

    private void write(Table<?> table, JavaRDD<Row> sorted) {
        spark.sparkContext().setJobDescription("Write " + table.name());
        // Kept, since each pass would bring the sorted rows in from the shuffle anew.
        Kept.during(sorted, encoded -> {
            parquet(table, spark.createDataFrame(encoded, table.schema()));
            // From the sorted rows, one partition after the other: files read back come in no order.
            csv(table, encoded.toLocalIterator());
        });
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
