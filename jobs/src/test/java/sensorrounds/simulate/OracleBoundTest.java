package sensorrounds.simulate;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.outlook.LastReport;
import sensorrounds.outlook.SensorOutlook.Chances;
import sensorrounds.simulate.ReviewedFleet.Forecast;
import sensorrounds.simulate.SimulationSettings.Output;

/**
 * How well failures can be forecast at all from what was read: the filter that knows the simulation's laws, held against
 * what then happened. {@link #main} sets the engine beside it, by last report and horizon.
 */
class OracleBoundTest {
    private static final int[] HORIZONS = {30, 90, 180, 365};

    @TempDir
    Path temp;

    private record Judged(Forecast forecast, double[] oracle) {
        boolean failsWithin(int days) {
            return forecast.failsInDays() <= days;
        }
    }

    /** Within four standard deviations of chance at every horizon: a filter that knows the laws has no other error. */
    @Test
    void theFilterThatKnowsTheLawsIsRightWithinChance() throws IOException {
        List<Judged> all = judged(20_261_128, 400, temp.resolve("fleet"));
        for (int h = 0; h < HORIZONS.length; h++) {
            int at = h;
            double expected = all.stream().mapToDouble(j -> j.oracle()[at]).sum();
            double spread = Math.sqrt(all.stream()
                    .mapToDouble(j -> j.oracle()[at] * (1 - j.oracle()[at]))
                    .sum());
            long observed =
                    all.stream().filter(j -> j.failsWithin(HORIZONS[at])).count();
            assertThat(observed - expected)
                    .as("%d days, %.1f expected", HORIZONS[at], expected)
                    .isBetween(-4 * spread, 4 * spread);
        }
    }

    /** Engine and oracle side by side, on the screen: seed, then vehicles. */
    public static void main(String[] args) throws IOException {
        Path folder = Files.createTempDirectory("oracle").resolve("fleet");
        List<Judged> all = judged(Long.parseLong(args[0]), Integer.parseInt(args[1]), folder);
        List<ToDoubleFunction<Chances>> engine = List.of(Chances::p30, Chances::p90, Chances::p180, Chances::p365);
        for (LastReport report : LastReport.values()) {
            List<Judged> group = all.stream()
                    .filter(j -> j.forecast().outlook().sensor().lastReport() == report)
                    .toList();
            System.out.println(report + ", " + group.size() + " sensors: engine, oracle, observed; Brier scores");
            for (int h = 0; h < HORIZONS.length; h++) {
                int at = h;
                ToDoubleFunction<Judged> ours =
                        j -> engine.get(at).applyAsDouble(j.forecast().outlook().chances());
                ToDoubleFunction<Judged> best = j -> j.oracle()[at];
                System.out.printf(
                        Locale.ROOT,
                        "%4d days: %.1f %.1f %d; %.4f %.4f%n",
                        HORIZONS[h],
                        group.stream().mapToDouble(ours).sum(),
                        group.stream().mapToDouble(best).sum(),
                        group.stream().filter(j -> j.failsWithin(HORIZONS[at])).count(),
                        brier(group, ours, HORIZONS[h]),
                        brier(group, best, HORIZONS[h]));
            }
        }
    }

    private static double brier(List<Judged> group, ToDoubleFunction<Judged> chance, int days) {
        return group.stream()
                .mapToDouble(j -> Math.pow(chance.applyAsDouble(j) - (j.failsWithin(days) ? 1 : 0), 2))
                .average()
                .orElse(Double.NaN);
    }

    private static List<Judged> judged(long seed, int vehicles, Path folder) throws IOException {
        SimulationSettings settings =
                SimulationSettings.large(seed, vehicles, Output.LARGE_CSV).withYears(5);
        ReviewedFleet fleet = ReviewedFleet.of(settings, folder);
        Map<String, SensorLife> lives = new HashMap<>();
        Map<String, LocalDate> lastVisits = new HashMap<>();
        for (VehicleHistory h : fleet.histories()) {
            h.lives().forEach(l -> lives.put(l.lifeId(), l));
            h.visits().forEach(v -> lastVisits.merge(h.vehicleId(), v.day(), (a, b) -> a.isAfter(b) ? a : b));
        }
        TrueLawFilter filter = new TrueLawFilter(settings, fleet.asOf());
        FleetSimulator simulator = new FleetSimulator(settings);
        Map<String, SimulatedVehicle> trueVehicles = new HashMap<>();
        for (int i = 0; i < vehicles; i++) {
            SimulatedVehicle v = simulator.vehicle(i);
            trueVehicles.put(v.register().vehicleId(), v);
        }
        List<Judged> all = new ArrayList<>();
        for (Forecast f : fleet.forecasts()) {
            SensorLife life = lives.get(f.outlook().sensor().lifeId());
            SimulatedVehicle v = trueVehicles.get(life.vehicleId());
            VehicleKind kind = settings.kinds().stream()
                    .filter(k -> k.modelGroup().equals(v.register().modelGroup()))
                    .findFirst()
                    .orElseThrow();
            // The last sensor with an ID that was cloned is the one in service.
            SimulatedSensor truth = v.sensors().stream()
                    .map(SimulatedVehicle.FittedSensor::sensor)
                    .filter(s -> s.id.equals(life.sensorId()))
                    .reduce((a, b) -> b)
                    .orElseThrow();
            boolean heard = !kind.isTrailer()
                    && !life.position().isSpare()
                    && life.lastReading()
                            .map(r -> r.day().equals(lastVisits.get(life.vehicleId())))
                            .orElse(false);
            all.add(new Judged(
                    f,
                    filter.of(life, truth, kind, v.lifeFactor(), heard, HORIZONS)
                            .failed()));
        }
        return all;
    }
}
