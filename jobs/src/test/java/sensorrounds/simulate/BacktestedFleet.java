package sensorrounds.simulate;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.hadoop.conf.Configuration;
import sensorrounds.assemble.Histories;
import sensorrounds.assemble.Moves;
import sensorrounds.backtest.Backtest;
import sensorrounds.backtest.BacktestSettings;
import sensorrounds.backtest.Fates;
import sensorrounds.backtest.FittedPieces;
import sensorrounds.backtest.Forecaster;
import sensorrounds.backtest.Judged;
import sensorrounds.backtest.KnownThen;
import sensorrounds.backtest.LifeFate;
import sensorrounds.fleet.Vehicle;
import sensorrounds.history.HistorySettings;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VehicleMoves;
import sensorrounds.ingest.LogFile;
import sensorrounds.ingest.LogReader;
import sensorrounds.ingest.LogSlice;
import sensorrounds.replacement.RankedReplacement;
import sensorrounds.review.FleetReview;
import sensorrounds.review.VehicleReview;
import sensorrounds.run.RunInputs;
import sensorrounds.run.RunOptions;
import sensorrounds.stock.StockOutlook;
import sensorrounds.tables.LogRow;
import sensorrounds.visit.LoggedWheel;

/** A backtest of a simulated fleet in plain Java, each forecast with the true day of failure beside it. */
record BacktestedFleet(Backtest backtest, List<Told> told, Map<LocalDate, FleetReview> reviews) {
    /**
     * One forecast with the truth.
     *
     * @param failsInDays days from the cut to the true failure; not over 0 when it had failed already
     */
    record Told(Judged judged, RankedReplacement line, long failsInDays, boolean weak) {}

    static BacktestedFleet of(SimulationSettings settings, BacktestSettings asked, Path folder) throws IOException {
        new SimulateTask().run(settings, folder);
        Configuration hadoop = new Configuration();
        RunInputs inputs = RunInputs.find(new RunOptions(folder.toString(), null, null, "unused", null), hadoop);
        HistorySettings rules = inputs.settings().review().history();
        SortedMap<String, List<LoggedWheel>> rows = rows(inputs, hadoop);
        LocalDate first = rows.values().stream()
                .flatMap(List::stream)
                .map(r -> r.visit().day())
                .min(LocalDate::compareTo)
                .orElseThrow();
        LocalDate last = rows.values().stream()
                .flatMap(List::stream)
                .map(r -> r.visit().day())
                .max(LocalDate::compareTo)
                .orElseThrow();
        List<VehicleHistory> today = histories(rows, inputs.fleet(), rules, last);
        FittedPieces fitted = new FittedPieces();
        today.forEach(fitted::add);
        Fates fates = new Fates(today.stream()
                .flatMap(h -> h.lives().stream().map(life -> LifeFate.of(h, life)))
                .toList());
        Map<String, List<SimulatedSensor>> truth = truth(settings);
        List<sensorrounds.backtest.Forecast> forecasts = new ArrayList<>();
        Map<LocalDate, List<StockOutlook>> stock = new HashMap<>();
        Map<LocalDate, FleetReview> reviews = new TreeMap<>();
        Map<String, RankedReplacement> lines = new HashMap<>();
        for (LocalDate cut : asked.cutsBetween(first, last)) {
            SortedMap<String, List<LoggedWheel>> known = new TreeMap<>();
            rows.forEach((v, of) -> {
                List<LoggedWheel> then = KnownThen.rows(of, cut);
                if (!then.isEmpty()) {
                    known.put(v, then);
                }
            });
            SortedMap<String, Vehicle> register = new TreeMap<>();
            inputs.fleet().forEach((id, v) -> register.put(id, KnownThen.vehicle(v, cut)));
            List<VehicleHistory> then = histories(known, register, rules, cut);
            FleetReview review = FleetReview.of(then, inputs.settings().review(), inputs.parts(), List.of(), cut);
            Forecaster forecaster = new Forecaster(
                    review.estimates(), inputs.settings().review().outlook().horizonDays(), cut);
            for (int i = 0; i < then.size(); i++) {
                VehicleReview of = review.vehicles().get(i);
                forecasts.addAll(forecaster.of(then.get(i), of.lines()));
                of.lines().forEach(l -> lines.put(cut + l.outlook().sensor().lifeId(), l));
            }
            stock.put(cut, review.stock());
            reviews.put(cut, review);
        }
        Backtest backtest = Backtest.of(asked, forecasts, stock, 1, new Backtest.Outcome(first, last, fates, fitted));
        List<Told> told = new ArrayList<>();
        for (Judged j : backtest.judged()) {
            LocalDate cut = j.forecast().cut();
            RankedReplacement line = lines.get(cut + j.forecast().lifeId());
            int day = (int) cut.toEpochDay();
            // Some new sensors are programmed with the old ID: the one on the vehicle that day is meant.
            List<SimulatedSensor> named = truth.getOrDefault(
                    line.outlook().sensor().vehicleId() + "/"
                            + line.outlook().sensor().sensorId(),
                    List.of());
            named.stream()
                    .filter(s -> s.bornDay <= day && s.removedDay() > day)
                    .findFirst()
                    .ifPresent(s -> told.add(new Told(j, line, s.failDay() - (long) day, s.weakOn(day))));
        }
        return new BacktestedFleet(backtest, told, reviews);
    }

    private static SortedMap<String, List<LoggedWheel>> rows(RunInputs inputs, Configuration hadoop) {
        SortedMap<String, List<LoggedWheel>> rows = new TreeMap<>();
        for (LogFile file : inputs.logs()) {
            LogReader reader = LogReader.open(LogSlice.whole(file), hadoop);
            while (reader.hasNext()) {
                LogRow row = reader.next();
                if (row.accepted() != null) {
                    rows.computeIfAbsent(row.accepted().visit().vehicleId(), v -> new ArrayList<>())
                            .add(row.accepted());
                }
            }
        }
        return rows;
    }

    private static List<VehicleHistory> histories(
            SortedMap<String, List<LoggedWheel>> rows,
            SortedMap<String, Vehicle> register,
            HistorySettings rules,
            LocalDate asOf) {
        Map<String, VehicleMoves> moves = Moves.of(rows, register, rules, asOf);
        return rows.values().stream()
                .map(of -> Histories.of(of, register, moves, rules, asOf))
                .toList();
    }

    private static Map<String, List<SimulatedSensor>> truth(SimulationSettings settings) {
        Map<String, List<SimulatedSensor>> truth = new HashMap<>();
        FleetSimulator simulator = new FleetSimulator(settings);
        for (int i = 0; i < settings.vehicles(); i++) {
            SimulatedVehicle v = simulator.vehicle(i);
            v.sensors()
                    .forEach(s -> truth.computeIfAbsent(
                                    v.register().vehicleId() + "/" + s.sensor().id, k -> new ArrayList<>())
                            .add(s.sensor()));
        }
        return truth;
    }
}
