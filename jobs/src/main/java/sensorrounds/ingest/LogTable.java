package sensorrounds.ingest;

import static org.apache.spark.sql.functions.col;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;
import org.apache.parquet.hadoop.ParquetFileReader;
import org.apache.parquet.hadoop.util.HadoopInputFile;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.sql.Column;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.types.StructType;
import sensorrounds.tables.LogRow;
import sensorrounds.tables.LogRows;
import sensorrounds.tables.UnderstoodRows;
import sensorrounds.visit.LoggedWheel;

/** Reads the stored table of log rows. */
public final class LogTable {
    private LogTable() {}

    /** All rows, with the columns in their order. */
    public static Dataset<Row> read(SparkSession spark, String folder) {
        return select(stored(spark, folder), List.of(LogRows.TABLE.schema().fieldNames()));
    }

    /** The rows of one outcome. */
    public static Dataset<Row> read(SparkSession spark, String folder, LogRow.Outcome outcome) {
        return read(spark, folder).where(col(LogRows.OUTCOME).equalTo(outcome.word()));
    }

    /** The rows that were understood and count. */
    public static JavaRDD<LoggedWheel> accepted(SparkSession spark, String folder) {
        return InnerRows.of(acceptedRows(spark, folder)).mapPartitions(UnderstoodRows::new);
    }

    /** The accepted rows, one list per vehicle, in the order of the visits. No shuffle where the files allow it. */
    public static JavaRDD<List<LoggedWheel>> byVehicle(SparkSession spark, String folder) {
        return byVehicle(spark, folder, acceptedRows(spark, folder));
    }

    /** The same of these vehicles only. */
    public static JavaRDD<List<LoggedWheel>> byVehicle(SparkSession spark, String folder, Collection<String> vehicles) {
        return byVehicle(
                spark,
                folder,
                acceptedRows(spark, folder).where(col(LogRows.VEHICLE_ID).isInCollection(vehicles)));
    }

    /** Every row that was understood, duplicates and superseded ones among them, one list per vehicle. One shuffle. */
    public static JavaRDD<List<LoggedWheel>> understoodByVehicle(SparkSession spark, String folder) {
        Dataset<Row> understood = stored(spark, folder)
                .where(col(LogRows.OUTCOME).isin(LogRow.Outcome.ACCEPTED.word(), LogRow.Outcome.DUPLICATE.word()));
        Dataset<Row> together = select(understood, LogRows.ofUnderstood())
                .repartition(col(LogRows.VEHICLE_ID))
                .sortWithinPartitions(LogRows.VEHICLE_ID);
        return InnerRows.of(together).mapPartitions(inner -> new VehicleRuns(new UnderstoodRows(inner)));
    }

    private static JavaRDD<List<LoggedWheel>> byVehicle(SparkSession spark, String folder, Dataset<Row> accepted) {
        Dataset<Row> rows = accepted;
        if (!vehiclesAreWhole(spark.sparkContext().hadoopConfiguration(), folder)) {
            rows = rows.repartition(col(LogRows.VEHICLE_ID)).sortWithinPartitions(LogRows.VEHICLE_ID);
        }
        return InnerRows.of(rows).mapPartitions(inner -> new VehicleRuns(new UnderstoodRows(inner)));
    }

    private static Dataset<Row> acceptedRows(SparkSession spark, String folder) {
        StructType schema = new StructType(LogRows.understoodSchema());
        Path accepted = accepted(folder);
        try {
            // The folder itself, without the column of outcomes: so the plan is a scan and nothing else.
            return accepted.getFileSystem(spark.sparkContext().hadoopConfiguration())
                            .exists(accepted)
                    ? spark.read().schema(schema).parquet(accepted.toString())
                    : spark.createDataFrame(List.of(), schema);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read the table of log rows in " + folder, e);
        }
    }

    private static Path accepted(String folder) {
        return new Path(folder, LogRows.OUTCOME + "=" + LogRow.Outcome.ACCEPTED.word());
    }

    private static Dataset<Row> stored(SparkSession spark, String folder) {
        return spark.read().schema(LogRows.TABLE.schema()).parquet(folder);
    }

    private static Dataset<Row> select(Dataset<Row> rows, List<String> names) {
        return rows.select(
                names.stream().map(org.apache.spark.sql.functions::col).toArray(Column[]::new));
    }

    /** A vehicle lies in one file; Spark reads a file as a whole when it has a single row group, which cannot be split. */
    private static boolean vehiclesAreWhole(Configuration hadoop, String folder) {
        Path accepted = accepted(folder);
        try {
            FileSystem files = accepted.getFileSystem(hadoop);
            if (!files.exists(accepted)) {
                return true;
            }
            return Arrays.stream(files.listStatus(accepted, p -> p.getName().endsWith(".parquet")))
                    .parallel()
                    .allMatch(file -> rowGroups(file, hadoop) <= 1);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read the table of log rows in " + folder, e);
        }
    }

    private static int rowGroups(FileStatus file, Configuration hadoop) {
        try (ParquetFileReader reader = ParquetFileReader.open(HadoopInputFile.fromStatus(file, hadoop))) {
            return reader.getRowGroups().size();
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + file.getPath(), e);
        }
    }
}
