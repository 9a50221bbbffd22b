package sensorrounds.run;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.Path;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.sql.SparkSession;
import sensorrounds.analyse.BacktestJob;
import sensorrounds.assemble.HistoriesThen;
import sensorrounds.backtest.Backtest;
import sensorrounds.backtest.BacktestSettings;
import sensorrounds.backtest.Fates;
import sensorrounds.backtest.Forecast;
import sensorrounds.history.VehicleHistory;
import sensorrounds.ingest.IngestSummary;
import sensorrounds.ingest.LogTable;
import sensorrounds.ingest.RefusedInput;
import sensorrounds.keep.Kept;
import sensorrounds.report.BacktestPage;
import sensorrounds.report.BacktestSummary;
import sensorrounds.stock.StockOutlook;
import sensorrounds.visit.LoggedWheel;

/**
 * Rolls the as-of date back to several days, asks the engine on each from what was known then alone, and holds what it said
 * against what happened since. One session, the logs read once.
 */
public final class BacktestRun {
    private final RunOptions options;
    private final BacktestSettings settings;
    private final Progress progress;

    /** @param options its as-of date, when given, is the last day of which anything is known */
    public BacktestRun(RunOptions options, BacktestSettings settings, Progress progress) {
        this.options = options;
        this.settings = settings;
        this.progress = progress;
    }

    /**
     * What came of it.
     *
     * @param summary text for the person who asked
     */
    public record Outcome(String folder, String summary) {}

    /** Reads, rolls back, judges, writes and publishes. One that fails leaves earlier results as they were. */
    public Outcome run() {
        Configuration hadoop = Pipeline.hadoop();
        try (LogSource logs = LogSource.of(options.store(), Pipeline.pseudonyms(options, hadoop), hadoop)) {
            RunInputs inputs = RunInputs.find(options, hadoop, logs.knows());
            RunStore store = new RunStore(options.out(), RunStore.Kind.BACKTEST, hadoop);
            Path folder = store.begin();
            progress.say("backtest " + folder.getName() + ": " + inputs.logs().size() + " logs, "
                    + Pipeline.size(inputs.bytes()));
            return store.publishing(
                    folder,
                    () -> {
                        try (SparkSessions.Session session = SparkSessions.open("sensor-rounds", inputs.bytes())) {
                            return run(session.spark(), logs, inputs, store, folder);
                        }
                    },
                    outcome -> RunStore.State.DONE);
        }
    }

    private Outcome run(SparkSession spark, LogSource logs, RunInputs inputs, RunStore store, Path folder) {
        JavaSparkContext context = JavaSparkContext.fromSparkContext(spark.sparkContext());
        String rows = new Path(folder, "tables/log_rows").toString();
        progress.say("Spark started; reading the logs");
        IngestSummary ingest = logs.rows(spark, inputs.logs(), rows, progress);
        LocalDate last = AsOf.of(options.asOf(), spark, rows);
        LocalDate first = AsOf.firstVisit(spark, rows);
        List<LocalDate> cuts = settings.cutsBetween(first, last);
        if (cuts.isEmpty()) {
            throw tooShort(first, last);
        }
        progress.say(ingest.accepted() + " rows accepted; asking on "
                + cuts.stream()
                        .map(LocalDate::toString)
                        .reduce((a, b) -> a + ", " + b)
                        .orElse(""));

        JavaRDD<VehicleHistory> today =
                FleetHistories.of(spark, rows, inputs, last).all();
        long sensors = today.map(
                        h -> h.lives().stream().filter(l -> l.inService()).count())
                .fold(0L, Long::sum);
        BacktestJob job = new BacktestJob(context, inputs.settings().review(), sensors);
        BacktestJob.Today known = job.today(today, cuts.get(0));
        List<Forecast> forecasts = new ArrayList<>();
        Map<LocalDate, List<StockOutlook>> stock = new HashMap<>();
        // The rows of a vehicle are brought together once; what Spark keeps of the shuffle serves every cut.
        JavaRDD<List<LoggedWheel>> understood = LogTable.understoodByVehicle(spark, rows);
        for (LocalDate cut : cuts) {
            JavaRDD<VehicleHistory> then = Kept.of(HistoriesThen.of(
                    context,
                    understood,
                    inputs.fleet(),
                    inputs.settings().review().history(),
                    cut));
            BacktestJob.Cut asked = job.cut(then, inputs.parts(), cut);
            forecasts.addAll(asked.forecasts());
            stock.put(cut, asked.stock());
            progress.say("asked as of " + cut + ": " + asked.forecasts().size() + " sensors");
        }
        Backtest backtest = Backtest.of(
                settings,
                forecasts,
                stock,
                job.sampled(),
                new Backtest.Outcome(first, last, new Fates(known.lives()), known.fitted()));

        progress.say("writing tables and report");
        Map<String, Long> written = BacktestOutputs.tables(spark, store, folder, backtest);
        String currency = inputs.settings().review().costs().currency();
        String page = BacktestPage.html(backtest, folder.getName(), currency);
        store.write(new Path(folder, "report.html"), page.getBytes(StandardCharsets.UTF_8));
        store.write(
                new Path(folder, "backtest.json"),
                BacktestOutputs.manifest(backtest, inputs, logs.pseudonyms(), ingest, written)
                        .getBytes(StandardCharsets.UTF_8));
        return new Outcome(
                folder.toString(), BacktestSummary.text(backtest, folder.getName(), currency, folder + "/report.html"));
    }

    private RefusedInput tooShort(LocalDate first, LocalDate last) {
        return new RefusedInput(
                "the logs are too short for a backtest",
                "all logs",
                first + " to " + last,
                "visits over " + settings.leastSpan() + " days or more: " + settings.historyDays()
                        + " to learn from, " + settings.longest().days() + " to forecast, " + settings.graceDays()
                        + " more in which failures come out",
                "try again with a shorter --horizon, e.g. --horizon 90, or when more visits are logged");
    }
}
