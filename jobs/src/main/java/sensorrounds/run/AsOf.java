package sensorrounds.run;

import static org.apache.spark.sql.functions.col;
import static org.apache.spark.sql.functions.min;
import static org.apache.spark.sql.functions.to_date;
import static org.apache.spark.sql.functions.unix_date;

import java.time.LocalDate;
import java.util.List;
import org.apache.spark.sql.Column;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import sensorrounds.ingest.LogTable;
import sensorrounds.ingest.RefusedInput;
import sensorrounds.tables.LogRow;
import sensorrounds.tables.LogRows;

/** The day that figures hold for: the one asked for, or the day of the latest visit. */
final class AsOf {
    /** Fewer rows than this share, further off than this from all others, are a slip of the pen that would age the fleet. */
    private static final double STRAY_SHARE = 0.01;

    private static final long STRAY_DAYS = 400;

    private static final String DAY = "day";
    private static final Column VISIT_DAY = unix_date(to_date(col(LogRows.VISITED_AT)));

    private AsOf() {}

    /**
     * @param asked null to take the latest visit
     * @throws RefusedInput when no row was accepted, the day asked for lies before every visit, or the latest visit is so
     *     far off that its date cannot be right
     */
    static LocalDate of(LocalDate asked, SparkSession spark, String logRows) {
        Dataset<Row> rows = LogTable.read(spark, logRows, LogRow.Outcome.ACCEPTED);
        // One line for each calendar day, however many rows there are.
        List<Row> days = rows.groupBy(VISIT_DAY.as(DAY)).count().sort(DAY).collectAsList();
        if (days.isEmpty()) {
            throw new RefusedInput(
                    "not one row was accepted",
                    "all logs",
                    null,
                    "at least one visit that can be understood",
                    "sensor-rounds check lists what is wrong with each row");
        }
        LocalDate first = LocalDate.ofEpochDay(days.get(0).getInt(0));
        LocalDate last = LocalDate.ofEpochDay(days.get(days.size() - 1).getInt(0));
        if (asked != null) {
            if (asked.isBefore(first)) {
                throw new RefusedInput(
                        "no visit by that day",
                        "--as-of",
                        asked.toString(),
                        "a day from " + first + ", the first visit, on",
                        "give a later day, or leave the option out to take the latest visit, " + last);
            }
            return asked;
        }
        refuseStrays(rows, days, last);
        return last;
    }

    /** Day of the first visit. */
    static LocalDate firstVisit(SparkSession spark, String logRows) {
        Dataset<Row> rows = LogTable.read(spark, logRows, LogRow.Outcome.ACCEPTED);
        return LocalDate.ofEpochDay(rows.agg(min(VISIT_DAY)).first().getInt(0));
    }

    private static void refuseStrays(Dataset<Row> rows, List<Row> days, LocalDate last) {
        long all = days.stream().mapToLong(d -> d.getLong(1)).sum();
        long later = 0;
        for (int i = days.size() - 1; i > 0; i--) {
            later += days.get(i).getLong(1);
            if (later > STRAY_SHARE * all) {
                return;
            }
            if (days.get(i).getInt(0) - days.get(i - 1).getInt(0) > STRAY_DAYS) {
                LocalDate before = LocalDate.ofEpochDay(days.get(i - 1).getInt(0));
                Row row = rows.where(VISIT_DAY.geq(days.get(i).getInt(0)))
                        .select(col(LogRows.SOURCE_FILE), col(LogRows.SOURCE_LINE))
                        .sort(col(LogRows.SOURCE_FILE), col(LogRows.SOURCE_LINE))
                        .first();
                throw new RefusedInput(
                        "the latest visits lie far beyond all others",
                        row.getString(0) + ":" + row.getLong(1)
                                + (later == 1 ? "" : " and " + (later - 1) + " more rows"),
                        last.toString(),
                        "days up to about " + before + ", by when all other rows were written",
                        "correct the date, or give --as-of " + before + " to leave later visits out");
            }
        }
    }
}
