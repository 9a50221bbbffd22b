package sensorrounds.run;

import static org.apache.spark.sql.functions.col;

import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.hadoop.fs.Path;
import org.apache.spark.sql.Column;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import sensorrounds.ingest.LogTable;
import sensorrounds.tables.LogRow;
import sensorrounds.tables.LogRows;

/**
 * The refused rows as one CSV file for the people who can mend them. The rows' whole text stays in the table of log
 * rows: it may hold names.
 */
final class QuarantineSheet {
    private static final Column[] COLUMNS = {
        col(LogRows.SOURCE_FILE),
        col(LogRows.SOURCE_LINE),
        col(LogRows.VISIT_ID),
        col(LogRows.POSITION),
        col(LogRows.FIELD),
        col(LogRows.RAW_VALUE),
        col(LogRows.RULE),
        col(LogRows.EXPECTED),
        col(LogRows.REMEDY)
    };

    private QuarantineSheet() {}

    static void write(SparkSession spark, String logRows, RunStore store, Path folder) {
        Dataset<Row> rows = LogTable.read(spark, logRows, LogRow.Outcome.QUARANTINED)
                .select(COLUMNS)
                .sort(
                        col(LogRows.SOURCE_FILE),
                        col(LogRows.SOURCE_LINE),
                        col(LogRows.POSITION),
                        col(LogRows.FIELD),
                        col(LogRows.RAW_VALUE));
        try {
            CsvSheet.write(rows.schema(), rows.toLocalIterator(), store.create(new Path(folder, "csv/quarantine.csv")));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
