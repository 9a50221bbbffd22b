package sensorrounds.run;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.Path;
import org.apache.spark.SparkConf;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.deploy.SparkHadoopUtil;
import org.apache.spark.sql.SparkSession;
import sensorrounds.analyse.FleetReviewJob;
import sensorrounds.assemble.DoubtFindings;
import sensorrounds.history.Finding;
import sensorrounds.ingest.IngestSummary;
import sensorrounds.ingest.Pseudonyms;
import sensorrounds.report.HtmlReport;
import sensorrounds.report.ListsWorkbook;
import sensorrounds.report.ReportData;
import sensorrounds.report.RunSummary;

/** The way of the data, from visit logs to published tables and report. */
public final class Pipeline {
    /** Lines of each list that a workbook still opens quickly with. */
    private static final int WORKBOOK_ROWS = 10_000;

    private final RunOptions options;
    private final Progress progress;
    private final int smallTable;

    public Pipeline(RunOptions options, Progress progress) {
        this(options, progress, TableWriter.SMALL);
    }

    /** @param smallTable longest table that is sorted in the driver */
    Pipeline(RunOptions options, Progress progress, int smallTable) {
        this.options = options;
        this.progress = progress;
        this.smallTable = smallTable;
    }

    /**
     * What came of a run.
     *
     * @param summary text for the person who started it
     * @param overLimit true when more rows were quarantined than the settings allow
     */
    public record Outcome(String folder, String summary, boolean overLimit) {}

    /** Hadoop's configuration before there is a session: the user's files, and quick local ones on one machine. */
    public static Configuration hadoop() {
        SparkConf conf = SparkSessions.conf("inputs", 0);
        return SparkHadoopUtil.get().newConfiguration(conf);
    }

    /** Reads, reviews, writes and publishes. A run that fails leaves earlier results as they were. */
    public Outcome run() {
        Configuration hadoop = hadoop();
        try (LogSource logs = LogSource.of(options.store(), pseudonyms(options, hadoop), hadoop)) {
            return run(logs, RunInputs.find(options, hadoop, logs.knows()), hadoop);
        }
    }

    /** What the user wants personal data to be replaced with; null to keep it. */
    static Pseudonyms pseudonyms(RunOptions options, Configuration hadoop) {
        RunOptions.PseudonymOptions asked = options.pseudonyms();
        return asked == null ? null : Pseudonyms.ofKeyFile(asked.keyFile(), asked.technicians(), hadoop);
    }

    private Outcome run(LogSource logs, RunInputs inputs, Configuration hadoop) {
        RunStore store = new RunStore(options.out(), hadoop);
        Path folder = store.begin();
        progress.say("run " + folder.getName() + ": " + inputs.logs().size() + " logs, " + size(inputs.bytes()));
        return store.publishing(
                folder,
                () -> {
                    try (SparkSessions.Session session = SparkSessions.open("sensor-rounds", inputs.bytes())) {
                        return run(session.spark(), logs, inputs, store, folder);
                    }
                },
                outcome -> outcome.overLimit() ? RunStore.State.DONE_OVER_QUARANTINE_LIMIT : RunStore.State.DONE);
    }

    private Outcome run(SparkSession spark, LogSource logs, RunInputs inputs, RunStore store, Path folder) {
        JavaSparkContext context = JavaSparkContext.fromSparkContext(spark.sparkContext());
        String rows = new Path(folder, "tables/log_rows").toString();
        progress.say("Spark started; reading the logs");
        IngestSummary ingest = logs.rows(spark, inputs.logs(), rows, progress);

        if (ingest.leftOut() > 0) {
            progress.say(
                    ingest.leftOut() + " rows of sheets that are no visit log left out (run.json names the sheets)");
        }
        LocalDate asOf = AsOf.of(options.asOf(), spark, rows);
        progress.say(ingest.accepted() + " rows accepted; rebuilding sensor lives as of " + asOf);
        FleetHistories histories = FleetHistories.of(spark, rows, inputs, asOf);
        FleetReviewJob.Result review = new FleetReviewJob(
                        context, inputs.settings().review(), asOf)
                .run(histories.all(), inputs.parts(), inputs.stock());

        progress.say("review done; writing the tables");
        ResultTables tables = new ResultTables(
                new TableWriter(spark, store, folder, smallTable),
                Math.max(WORKBOOK_ROWS, inputs.settings().reportRows()));
        List<Finding> acrossVehicles =
                histories.acrossVehicles().stream().map(DoubtFindings::of).toList();
        ResultTables.Heads heads = tables.write(histories.all(), acrossVehicles, review);
        QuarantineSheet.write(spark, rows, store, folder);
        RegisterSheet.write(inputs.fleet().values(), store, folder);

        progress.say("writing the report");
        ReportData report = ReportAssembly.of(folder.getName(), asOf, inputs, logs.pseudonyms(), ingest, review, heads);
        StringBuilder html = new StringBuilder();
        try {
            HtmlReport.write(report, inputs.settings().reportRows(), html);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        store.write(new Path(folder, "report.html"), html.toString().getBytes(StandardCharsets.UTF_8));
        store.write(
                new Path(folder, "run.json"),
                RunManifest.of(asOf, inputs, logs.pseudonyms(), ingest, review, heads)
                        .getBytes(StandardCharsets.UTF_8));
        workbook(store, folder, report, heads);
        VehiclePages.write(
                folder, report.vehiclePages(), store, spark.sparkContext().hadoopConfiguration());
        String summary = RunSummary.text(report, folder.toString());
        double quarantined = ingest.rowsIn() == 0 ? 0 : (double) ingest.quarantined() / ingest.rowsIn();
        return new Outcome(
                folder.toString(), summary, quarantined > inputs.settings().quarantineLimit());
    }

    private static void workbook(RunStore store, Path folder, ReportData report, ResultTables.Heads heads) {
        try (OutputStream out = store.create(new Path(folder, "lists.xlsx"))) {
            ListsWorkbook.write(report, ReportAssembly.listed(heads.stops()), out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static String size(long bytes) {
        return bytes < 10_000_000 ? bytes / 1000 + " kB" : bytes / 1_000_000 + " MB";
    }
}
