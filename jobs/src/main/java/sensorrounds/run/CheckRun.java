package sensorrounds.run;

import org.apache.spark.sql.SparkSession;
import sensorrounds.ingest.CheckReport;
import sensorrounds.ingest.Examination;
import sensorrounds.ingest.IngestJob;

/** Reads logs as a run would and says what would become of each row. Writes nothing. */
public final class CheckRun {
    private CheckRun() {}

    /** @param clean true when no row would be quarantined */
    public record Outcome(String text, boolean clean) {}

    /** @param options those of a run; the output folder is not looked at */
    public static Outcome of(RunOptions options) {
        RunInputs inputs = RunInputs.find(options, Pipeline.hadoop());
        try (SparkSessions.Session session = SparkSessions.open("sensor-rounds check", inputs.bytes())) {
            SparkSession spark = session.spark();
            Examination seen = new IngestJob(spark, SparkSessions.partitions(spark)).check(inputs.logs());
            return new Outcome(CheckReport.text(seen), seen.summary().quarantined() == 0);
        }
    }
}
