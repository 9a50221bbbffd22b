package sensorrounds.run;

import static org.apache.spark.sql.functions.max;

import java.time.LocalDate;
import java.time.LocalDateTime;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import sensorrounds.ingest.LogTable;
import sensorrounds.ingest.RefusedInput;
import sensorrounds.tables.LogRow;
import sensorrounds.tables.LogRows;

/** The day that figures hold for when the user names none. */
final class AsOf {
    private AsOf() {}

    static LocalDate latestVisit(SparkSession spark, String logRows) {
        Row latest = LogTable.read(spark, logRows, LogRow.Outcome.ACCEPTED)
                .agg(max(LogRows.VISITED_AT))
                .first();
        if (latest.isNullAt(0)) {
            throw new RefusedInput(
                    "not one row was accepted",
                    "all logs",
                    null,
                    "at least one visit that can be understood",
                    "sensor-rounds check lists what is wrong with each row");
        }
        return ((LocalDateTime) latest.get(0)).toLocalDate();
    }
}
