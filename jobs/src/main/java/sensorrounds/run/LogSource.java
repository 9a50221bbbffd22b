package sensorrounds.run;

import java.util.List;
import java.util.function.Supplier;
import org.apache.hadoop.conf.Configuration;
import org.apache.spark.sql.SparkSession;
import sensorrounds.ingest.IngestJob;
import sensorrounds.ingest.IngestSummary;
import sensorrounds.ingest.KnownLogs;
import sensorrounds.ingest.LogFile;
import sensorrounds.ingest.LogStore;
import sensorrounds.ingest.Pseudonyms;
import sensorrounds.ingest.RefusedInput;
import sensorrounds.ingest.StoreUpdate;
import sensorrounds.ingest.StoreUpdate.Scrutiny;

/** Where a run has the rows of the logs from: the files themselves, or a store that is brought up to date first. */
final class LogSource implements AutoCloseable {
    private final LogStore store;

    private final Pseudonyms pseudonyms;

    private LogSource(LogStore store, Pseudonyms pseudonyms) {
        this.store = store;
        this.pseudonyms = pseudonyms;
    }

    /**
     * @param folder of the store; null for the files themselves
     * @param pseudonyms what replaces personal data; null to keep it
     * @throws RefusedInput when the store was filled otherwise
     */
    static LogSource of(String folder, Pseudonyms pseudonyms, Configuration hadoop) {
        return new LogSource(folder == null ? null : LogStore.open(folder, pseudonyms, hadoop), pseudonyms);
    }

    /** What replaces personal data before it is stored; null where it is kept. */
    Pseudonyms pseudonyms() {
        return pseudonyms;
    }

    /** Logs that need not be looked into to be recognised. */
    KnownLogs knows() {
        return store == null ? KnownLogs.NONE : store.knows();
    }

    /**
     * Brings the store up to date.
     *
     * @param spark asked for a session only when there is much to read
     * @throws IllegalStateException without a store
     */
    StoreUpdate.Outcome update(
            Supplier<SparkSession> spark, List<LogFile> files, Scrutiny scrutiny, Progress progress) {
        if (store == null) {
            throw new IllegalStateException("no store to bring up to date");
        }
        store.unusable().ifPresent(why -> progress.say("the store is filled anew where " + why));
        StoreUpdate.Outcome done = new StoreUpdate(spark, store).run(files, scrutiny);
        progress.say("store: " + done.fresh() + " logs new, " + done.changed() + " changed, " + done.withdrawn()
                + " withdrawn, " + done.unchanged() + " as before");
        return done;
    }

    /** Writes the table of log rows. */
    IngestSummary rows(SparkSession spark, List<LogFile> files, String folder, Progress progress) {
        IngestJob job = new IngestJob(spark, SparkSessions.partitions(spark)).replacing(pseudonyms);
        return store == null
                ? job.run(files, folder)
                : job.run(
                        update(() -> spark, files, Scrutiny.SIZE_AND_TIME, progress)
                                .logs(),
                        folder);
    }

    @Override
    public void close() {
        if (store != null) {
            store.close();
        }
    }
}
