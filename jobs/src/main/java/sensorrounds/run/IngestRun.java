package sensorrounds.run;

import org.apache.hadoop.conf.Configuration;
import sensorrounds.ingest.CheckReport;
import sensorrounds.ingest.StoreUpdate;
import sensorrounds.ingest.StoreUpdate.Scrutiny;
import sensorrounds.ingest.StoredLogs;

/** Brings a store of log rows up to date, and says what came of the logs that were read. */
public final class IngestRun {
    private IngestRun() {}

    /**
     * What came of it.
     *
     * @param overLimit true when of all rows in the store more are quarantined than the settings allow
     */
    public record Outcome(String text, boolean overLimit) {}

    /** @param options those of a run, with a store; the output folder is not looked at */
    public static Outcome of(RunOptions options, Scrutiny scrutiny, Progress progress) {
        Configuration hadoop = Pipeline.hadoop();
        try (LogSource source = LogSource.of(options.store(), Pipeline.pseudonyms(options, hadoop), hadoop)) {
            LogInputs inputs = LogInputs.find(options, hadoop, source.knows());
            try (SparkSessions.Later spark = new SparkSessions.Later("sensor-rounds ingest", inputs.bytes())) {
                StoreUpdate.Outcome done = source.update(spark, inputs.logs(), scrutiny, progress);
                StoredLogs all = done.logs();
                double share = all.rows() == 0 ? 0 : (double) all.quarantined() / all.rows();
                return new Outcome(
                        CheckReport.text(done), share > inputs.settings().quarantineLimit());
            }
        }
    }
}
