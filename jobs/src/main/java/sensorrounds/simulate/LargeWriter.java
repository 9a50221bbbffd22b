package sensorrounds.simulate;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * Writes a fleet of any size in large canonical files, on two threads. A file holds a block of vehicles, its visits in
 * order of time; which vehicles are in which file does not depend on the threads. Memory holds two blocks at a time.
 */
final class LargeWriter {
    /** Gives files of about 64 MB for four years of logs. */
    private static final int VEHICLES_PER_FILE = 6500;
    /** Characters gathered before they are written. */
    private static final int PIECE = 1 << 20;

    private static final int THREADS = 2;

    private record Block(String fleet, long visits, long rows) {}

    private final SimulationSettings settings;
    private final OutputFolder folder;
    private final FleetSimulator simulator;

    LargeWriter(SimulationSettings settings, OutputFolder folder) {
        this.settings = settings;
        this.folder = folder;
        this.simulator = new FleetSimulator(settings);
    }

    SimulationSummary write() throws IOException {
        ExecutorService pool = Executors.newFixedThreadPool(THREADS);
        try {
            List<Future<Block>> blocks = new ArrayList<>();
            for (int from = 0; from < settings.vehicles(); from += VEHICLES_PER_FILE) {
                int first = from;
                blocks.add(pool.submit(() -> block(first)));
            }
            StringBuilder fleet = new StringBuilder(Registers.FLEET_HEAD);
            long visits = 0;
            long rows = 0;
            for (Future<Block> b : blocks) {
                Block done = b.get();
                fleet.append(done.fleet());
                visits += done.visits();
                rows += done.rows();
            }
            folder.write("fleet.csv", fleet);
            folder.write("parts.csv", Registers.parts(InventedOperator.parts()));
            folder.write("stock.csv", Registers.stock(settings, InventedOperator.parts()));
            folder.write("truth/laws.csv", Truth.laws(settings.kinds()));
            folder.write("truth/README.md", Truth.readMe(settings));
            return new SimulationSummary(settings.vehicles(), visits, rows, folder.files(), folder.bytes());
        } catch (ExecutionException e) {
            if (e.getCause() instanceof UncheckedIOException io) {
                throw io.getCause();
            }
            throw new IllegalStateException("simulation failed: " + e.getCause().getMessage(), e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("simulation was interrupted; the folder is incomplete", e);
        } finally {
            pool.shutdownNow();
        }
    }

    private Block block(int first) {
        boolean csv = settings.output() == SimulationSettings.Output.LARGE_CSV;
        VisitFormat format = csv ? Layouts.canonicalCsv() : new JsonLines(Units.KPA_KM_C, "");
        StringBuilder fleet = new StringBuilder();
        List<SimulatedVisit> visits = new ArrayList<>();
        int end = (int) Math.min(settings.vehicles(), (long) first + VEHICLES_PER_FILE);
        for (int i = first; i < end; i++) {
            SimulatedVehicle v = simulator.vehicle(i);
            visits.addAll(v.visits());
            Registers.appendVehicle(fleet, v.register());
        }
        visits.sort(Comparator.comparing((SimulatedVisit v) -> v.header().visitedAt())
                .thenComparing(v -> v.header().visitId()));
        String name = String.format(
                Locale.ROOT, "visit-logs/fleet-%05d.%s", first / VEHICLES_PER_FILE + 1, csv ? "csv" : "jsonl");
        StringBuilder text = new StringBuilder(2 * PIECE).append(format.head());
        long rows = 0;
        try (OutputStream out = folder.stream(name)) {
            for (SimulatedVisit v : visits) {
                format.append(text, v, Slips.NONE);
                rows += v.rows();
                if (text.length() > PIECE) {
                    folder.drain(text, out);
                }
            }
            folder.drain(text, out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new Block(fleet.toString(), visits.size(), rows);
    }
}
