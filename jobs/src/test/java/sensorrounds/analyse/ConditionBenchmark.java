package sensorrounds.analyse;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.spark.SparkConf;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.broadcast.Broadcast;
import sensorrounds.condition.HiddenFit;
import sensorrounds.condition.SetLikeness;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.fleet.Vehicle;
import sensorrounds.history.FailureCause;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.LifeReading;
import sensorrounds.history.OriginBasis;
import sensorrounds.history.Repair;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VisitSummary;
import sensorrounds.outlook.ReportCells;
import sensorrounds.outlook.ReportRatios;
import sensorrounds.recurrence.SuspectFigures;
import sensorrounds.review.Conditions;
import sensorrounds.review.Estimates;
import sensorrounds.review.FleetCounts;
import sensorrounds.review.ReviewSettings;
import sensorrounds.review.VehicleReviewer;
import sensorrounds.run.RunSettings;
import sensorrounds.survival.Lifetime;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.Source;
import sensorrounds.visit.VisitReason;
import sensorrounds.visit.Warning;
import sensorrounds.visit.WheelPosition;

/**
 * Time of fitting the hidden condition of a fleet and filtering each sensor, through Spark. The histories are drawn on the
 * way, vehicle by vehicle, and not kept: four sensors of ten visits each. After {@code mvn -pl model,jobs test-compile},
 * with the class path of the tests (docs/benchmarks-condition.md):
 *
 * <pre>java -Xmx6g @jobs/bin/jvm-options -cp ... sensorrounds.analyse.ConditionBenchmark 2000000 2</pre>
 *
 * <p>First argument: sensors; second: cores.
 */
final class ConditionBenchmark {
    private static final int VISITS = 10;
    private static final LocalDate START = LocalDate.of(2021, 10, 1);
    private static final LocalDate AS_OF = LocalDate.of(2026, 9, 30);
    private static final List<WheelPosition> PLACES = List.of("1L", "1R", "2L", "2R").stream()
            .map(c -> WheelPosition.parse(c).orElseThrow())
            .toList();

    private ConditionBenchmark() {}

    public static void main(String[] args) {
        int vehicles = Integer.parseInt(args[0]) / PLACES.size();
        SparkConf conf = new SparkConf()
                .setMaster("local[" + args[1] + "]")
                .setAppName("condition benchmark")
                .set("spark.ui.enabled", "false")
                .set("spark.driver.host", "localhost")
                .set("spark.driver.bindAddress", "127.0.0.1");
        try (JavaSparkContext spark = new JavaSparkContext(conf)) {
            measure(spark, vehicles, Math.max(8, vehicles / 15_000));
        }
    }

    private static void measure(JavaSparkContext spark, int vehicles, int partitions) {
        ReviewSettings settings = RunSettings.defaults().review();
        JavaRDD<VehicleHistory> histories = spark.parallelize(
                        IntStream.range(0, partitions).boxed().toList(), partitions)
                .mapPartitions(parts -> {
                    int part = parts.next();
                    int from = (int) ((long) vehicles * part / partitions);
                    int to = (int) ((long) vehicles * (part + 1) / partitions);
                    return IntStream.range(from, to)
                            .mapToObj(ConditionBenchmark::vehicle)
                            .iterator();
                });
        Clock clock = new Clock();
        long readings = histories
                .mapToDouble(h ->
                        h.lives().stream().mapToInt(l -> l.readings().size()).sum())
                .sum()
                .longValue();
        clock.say("histories drawn once, " + readings + " readings");
        FleetCounts counts =
                histories.treeAggregate(new FleetCounts(settings, AS_OF), FleetCounts::add, FleetCounts::merge);
        Estimates estimates =
                Estimates.of(counts, settings, new VehiclesOverPartitions(histories.map(FleetCounts::sampled)));
        clock.say("counts and laws of life (drawn again)");
        List<ReadingsOverPartitions> held = new ArrayList<>();
        HiddenFit fit = Conditions.fit(counts, estimates, AS_OF, conditions -> {
            held.add(new ReadingsOverPartitions(spark, histories, conditions));
            return held.get(0);
        });
        clock.say("hidden condition fitted (drawn twice more: sample, and once to keep the readings); " + fit.status()
                + " " + fit.cause() + ", " + fit.iterations() + " steps on all");
        held.forEach(ReadingsOverPartitions::release);
        VehicleReviewer reviewer = new VehicleReviewer(
                estimates,
                ReportRatios.fit(new ReportCells(), settings.outlook()),
                fit,
                SetLikeness.none("not looked at"),
                SuspectFigures.declared(settings.recurrence()),
                Map.of(),
                AS_OF);
        Broadcast<VehicleReviewer> shared = spark.broadcast(reviewer);
        double simpler = histories
                .mapToDouble(h -> shared.value().simplerOutlooks(h).stream()
                        .mapToDouble(o -> o.chances().p365())
                        .sum())
                .sum();
        clock.say(String.format(Locale.ROOT, "simpler outlooks (drawn again): %.0f failures in a year", simpler));
        double expected = histories
                .mapToDouble(h -> shared.value().outlooks(h).stream()
                        .mapToDouble(o -> o.chances().p365())
                        .sum())
                .sum();
        clock.say(String.format(
                Locale.ROOT,
                "simpler and hidden outlooks with limits (drawn again): %.0f failures in a year",
                expected));
    }

    private static final class Clock {
        private long last = System.nanoTime();

        void say(String what) {
            long now = System.nanoTime();
            System.out.printf(Locale.ROOT, "%7.1f s  %s%n", (now - last) / 1e9, what);
            last = now;
        }
    }

    private static VehicleHistory vehicle(int number) {
        SplittableRandom random = new SplittableRandom(20_261_125L + number);
        String id = "B" + number;
        // Days in steps of a month keep the cells of the laws few, as a fleet's visits do not; this bench is not about
        // them.
        int ageAtStart = 30 * random.nextInt(73);
        LocalDate used = START.minusDays(ageAtStart);
        LocalDate[] days = new LocalDate[VISITS];
        LocalDate day = START.plusDays(30 * random.nextInt(2));
        for (int v = 0; v < VISITS; v++) {
            days[v] = day;
            day = day.plusDays(30 * (4 + random.nextInt(3)));
        }
        List<SensorLife> lives = new ArrayList<>();
        boolean[] anyDead = new boolean[VISITS];
        for (WheelPosition place : PLACES) {
            double dead;
            do {
                dead = 3300 * Math.pow(-Math.log(1 - random.nextDouble()), 1 / 3.0);
            } while (dead <= ageAtStart + 60);
            lives.add(life(id, place, used, (int) dead, days, anyDead, random));
        }
        List<VisitSummary> visits = new ArrayList<>();
        for (int v = 0; v < VISITS; v++) {
            boolean on = random.nextDouble() < (anyDead[v] ? 0.9 : 0.03);
            visits.add(visit(days[v], v, on, anyDead[v] && random.nextBoolean()));
        }
        Vehicle vehicle =
                new Vehicle(id, "van", null, used, null, null, MonitoringSystem.DIRECT, null, null, null, null, null);
        return new VehicleHistory(vehicle, visits, lives, List.of(), List.of(), List.of());
    }

    private static SensorLife life(
            String vehicle,
            WheelPosition place,
            LocalDate used,
            int deadAt,
            LocalDate[] days,
            boolean[] anyDead,
            SplittableRandom random) {
        LocalDate dead = used.plusDays(deadAt);
        LocalDate weak = dead.minusDays(30 + random.nextInt(200));
        List<LifeReading> readings = new ArrayList<>();
        LocalDate silent = null;
        LocalDate answered = null;
        for (int v = 0; v < VISITS && silent == null; v++) {
            boolean gone = !days[v].isBefore(dead);
            boolean isWeak = !days[v].isBefore(weak);
            double chance = isWeak ? 0.4 : 0.9;
            int tries = 1;
            while (tries < 5 && (gone || random.nextDouble() > chance)) {
                tries++;
            }
            boolean low = random.nextDouble() < (isWeak ? 0.5 : 0.01);
            readings.add(new LifeReading(
                    days[v],
                    null,
                    place,
                    "RB-" + (vehicle.hashCode() + v) % 9,
                    null,
                    gone ? ReadOutcome.NO_ANSWER : ReadOutcome.OK,
                    tries,
                    gone ? null : low ? BatteryReport.LOW : BatteryReport.OK,
                    null,
                    null,
                    10.0,
                    new Source("drawn", 1)));
            anyDead[v] |= gone;
            silent = gone ? days[v] : null;
            answered = gone ? answered : days[v];
        }
        LocalDate first = answered == null ? null : days[0];
        return new SensorLife(
                vehicle,
                place.code(),
                1,
                null,
                place,
                null,
                used,
                OriginBasis.VEHICLE_FIRST_USE,
                first,
                answered,
                silent,
                silent,
                silent == null ? LifeEnd.IN_SERVICE : LifeEnd.FAILED,
                silent == null ? null : FailureCause.UNKNOWN,
                null,
                lifetime(used, first, answered, silent),
                answered == null ? "never answered" : null,
                readings);
    }

    private static Lifetime lifetime(LocalDate used, LocalDate first, LocalDate answered, LocalDate silent) {
        if (answered == null) {
            return null;
        }
        int entry = (int) (first.toEpochDay() - used.toEpochDay());
        int lower = (int) (answered.toEpochDay() - used.toEpochDay());
        return silent == null
                ? Lifetime.censored(entry, lower)
                : Lifetime.interval(entry, lower, (int) (silent.toEpochDay() - used.toEpochDay()));
    }

    private static VisitSummary visit(LocalDate day, int number, boolean on, boolean called) {
        return new VisitSummary(
                day,
                "v" + number,
                null,
                null,
                on && called ? VisitReason.WARNING : VisitReason.SERVICE,
                on ? Warning.SYSTEM_FAULT : Warning.NONE,
                null,
                List.of(),
                true,
                null,
                null,
                List.of(),
                List.of(),
                List.of(),
                null,
                Repair.NONE,
                false,
                false,
                null,
                null,
                null,
                null);
    }
}
