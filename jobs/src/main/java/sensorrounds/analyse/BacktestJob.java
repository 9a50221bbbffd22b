package sensorrounds.analyse;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.broadcast.Broadcast;
import sensorrounds.backtest.FittedPieces;
import sensorrounds.backtest.Forecast;
import sensorrounds.backtest.Forecaster;
import sensorrounds.backtest.LifeFate;
import sensorrounds.fleet.Part;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.review.ReviewSettings;
import sensorrounds.stock.StockOutlook;

/**
 * What a backtest takes from histories over partitions. Every fit is made on the whole fleet; the forecasts that come to the
 * driver are those of a part of its vehicles where it is large.
 */
public final class BacktestJob {
    /** Sensors in service, about, whose forecasts are judged at each cut. */
    private static final double MOST_SENSORS = 50_000;

    private final JavaSparkContext spark;
    private final ReviewSettings settings;
    private final Draw draw;

    /** @param sensorsInService size of the fleet today */
    public BacktestJob(JavaSparkContext spark, ReviewSettings settings, long sensorsInService) {
        this.spark = spark;
        this.settings = settings;
        this.draw = new Draw(Math.min(1, MOST_SENSORS / Math.max(1, sensorsInService)));
    }

    /** Draws whole vehicles by their names alone, so that every cut has the same and no order shows in it. */
    private record Draw(double share) implements Serializable {
        boolean has(VehicleHistory history) {
            // Fibonacci hashing spreads names that differ in the last letter only; Knuth (1998), vol. 3, 6.4.
            int spread = history.vehicleId().hashCode() * 0x9E3779B9;
            return share >= 1 || (spread >>> 1) < share * Integer.MAX_VALUE;
        }
    }

    /**
     * What the engine said on one day.
     *
     * @param forecasts in no order
     * @param stock of the whole fleet
     */
    public record Cut(List<Forecast> forecasts, List<StockOutlook> stock) {}

    /** What the logs tell today of the sensors that were forecast, and of those that came from another vehicle. */
    public record Today(List<LifeFate> lives, FittedPieces fitted) {}

    /** Share of the vehicles whose sensors are judged. */
    public double sampled() {
        return draw.share();
    }

    /** @param histories as known on the day; walked through several times, so best persisted by the caller */
    public Cut cut(JavaRDD<VehicleHistory> histories, Map<String, Part> parts, LocalDate day) {
        FleetReviewJob.Result review = new FleetReviewJob(spark, settings, day).run(histories, parts, List.of());
        Broadcast<Forecaster> forecaster = spark.broadcast(
                new Forecaster(review.estimates(), settings.outlook().horizonDays(), day));
        Draw drawn = draw;
        spark.setJobDescription("Take down the forecasts of " + day);
        List<Forecast> forecasts = histories
                .zip(review.reviews())
                .filter(pair -> drawn.has(pair._1()))
                .flatMap(pair ->
                        forecaster.value().of(pair._1(), pair._2().lines()).iterator())
                .collect();
        return new Cut(forecasts, review.stock());
    }

    /**
     * @param histories as they are told today
     * @param since lives that ended before it are left out
     */
    public Today today(JavaRDD<VehicleHistory> histories, LocalDate since) {
        Draw drawn = draw;
        spark.setJobDescription("See what became of the sensors");
        List<LifeFate> lives = histories
                .flatMap(h -> h.lives().stream()
                        .filter(life -> drawn.has(h) || life.continues() != null)
                        .filter(life -> !endedBefore(life, since))
                        .map(life -> LifeFate.of(h, life))
                        .iterator())
                .collect();
        FittedPieces fitted = histories.treeAggregate(new FittedPieces(), FittedPieces::add, FittedPieces::merge);
        return new Today(lives, fitted);
    }

    private static boolean endedBefore(SensorLife life, LocalDate day) {
        return life.endedOn() != null && life.endedOn().isBefore(day);
    }
}
