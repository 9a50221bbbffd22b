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
import java.util.stream.IntStream;
import org.apache.hadoop.conf.Configuration;
import sensorrounds.assemble.Histories;
import sensorrounds.assemble.Moves;
import sensorrounds.condition.SetLikeness;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VehicleMoves;
import sensorrounds.ingest.LogFile;
import sensorrounds.ingest.LogReader;
import sensorrounds.ingest.LogSlice;
import sensorrounds.outlook.SensorOutlook;
import sensorrounds.recurrence.SuspectFigures;
import sensorrounds.replacement.RankedReplacement;
import sensorrounds.review.FleetReview;
import sensorrounds.review.VehicleReviewer;
import sensorrounds.run.RunInputs;
import sensorrounds.run.RunOptions;
import sensorrounds.simulate.SimulationSettings.Output;
import sensorrounds.tables.LogRow;
import sensorrounds.visit.LoggedWheel;

/** A simulated fleet reviewed in plain Java, with the day each sensor in service really fails. */
record ReviewedFleet(FleetReview review, List<Forecast> forecasts, LocalDate asOf, List<VehicleHistory> histories) {
    /**
     * @param simpler the outlook by law of life and last report
     * @param alone the outlook by hidden condition without its set-mates' fate
     * @param failsInDays days from the as-of day to the true failure; not over 0 when it has failed already
     * @param weak whether it is weak on the as-of day, or has been
     * @param original whether it is the vehicle's first
     */
    record Forecast(
            RankedReplacement line,
            SensorOutlook simpler,
            SensorOutlook alone,
            long failsInDays,
            boolean weak,
            boolean original) {
        SensorOutlook outlook() {
            return line.outlook();
        }
    }

    /** The last year of the simulation is kept from the engine: it is what the forecasts are held against. */
    static final int HIDDEN_DAYS = 365;

    static ReviewedFleet of(long seed, int vehicles, Path folder) throws IOException {
        return of(SimulationSettings.large(seed, vehicles, Output.LARGE_CSV).withYears(5), folder);
    }

    static ReviewedFleet of(SimulationSettings settings, Path folder) throws IOException {
        LocalDate asOf = settings.endDate().minusDays(HIDDEN_DAYS);
        new SimulateTask().run(settings, folder);
        Configuration hadoop = new Configuration();
        RunInputs inputs = RunInputs.find(new RunOptions(folder.toString(), null, null, "unused", null), hadoop);
        SortedMap<String, List<LoggedWheel>> byVehicle = new TreeMap<>();
        for (LogFile file : inputs.logs()) {
            LogReader reader = LogReader.open(LogSlice.whole(file), hadoop);
            while (reader.hasNext()) {
                LogRow row = reader.next();
                if (row.accepted() != null && !row.accepted().visit().day().isAfter(asOf)) {
                    String vehicle = row.accepted().visit().vehicleId();
                    byVehicle.computeIfAbsent(vehicle, k -> new ArrayList<>()).add(row.accepted());
                }
            }
        }
        Map<String, VehicleMoves> moves =
                Moves.of(byVehicle, inputs.fleet(), inputs.settings().review().history(), asOf);
        List<VehicleHistory> histories = byVehicle.values().stream()
                .map(rows -> Histories.of(
                        rows, inputs.fleet(), moves, inputs.settings().review().history(), asOf))
                .toList();
        FleetReview review =
                FleetReview.of(histories, inputs.settings().review(), inputs.parts(), inputs.stock(), asOf);
        VehicleReviewer reviewer = new VehicleReviewer(
                review.estimates(),
                review.ratios(),
                review.condition(),
                SetLikeness.none("each sensor for itself"),
                SuspectFigures.declared(inputs.settings().review().recurrence()),
                inputs.parts(),
                asOf);
        Map<String, SensorOutlook> alone = new HashMap<>();
        histories.forEach(
                h -> reviewer.outlooks(h).forEach(o -> alone.put(o.sensor().lifeId(), o)));
        Map<String, SensorOutlook> simpler = new HashMap<>();
        histories.forEach(h ->
                reviewer.simplerOutlooks(h).forEach(o -> simpler.put(o.sensor().lifeId(), o)));
        return new ReviewedFleet(review, forecasts(settings, review, simpler, alone, asOf), asOf, histories);
    }

    private static List<Forecast> forecasts(
            SimulationSettings settings,
            FleetReview review,
            Map<String, SensorOutlook> simpler,
            Map<String, SensorOutlook> alone,
            LocalDate asOf) {
        FleetSimulator simulator = new FleetSimulator(settings);
        Map<String, SimulatedSensor> truth = new HashMap<>();
        IntStream.range(0, settings.vehicles())
                .mapToObj(simulator::vehicle)
                .forEach(v -> v.sensors()
                        .forEach(s -> truth.put(v.register().vehicleId() + "/" + s.sensor().id, s.sensor())));
        // A wheel that was silent before anyone knew its ID has a life without one, and no truth to be held against.
        return review.ranked().stream()
                .filter(line -> !line.outlook().sensor().sensorId().startsWith("no-id-"))
                .map(line -> {
                    SensorOutlook o = line.outlook();
                    SimulatedSensor s =
                            truth.get(o.sensor().vehicleId() + "/" + o.sensor().sensorId());
                    return new Forecast(
                            line,
                            simpler.get(o.sensor().lifeId()),
                            alone.get(o.sensor().lifeId()),
                            s.failDay() - asOf.toEpochDay(),
                            s.weakOn((int) asOf.toEpochDay()),
                            s.origin == SimulatedSensor.Origin.ORIGINAL);
                })
                .toList();
    }
}
