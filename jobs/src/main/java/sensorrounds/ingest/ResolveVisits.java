package sensorrounds.ingest;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;
import sensorrounds.intake.FileCount;
import sensorrounds.intake.ResolvedVisits;
import sensorrounds.intake.VisitResolver;
import sensorrounds.tables.LogRow;
import sensorrounds.visit.LoggedWheel;

/**
 * Settles duplicates in a stream of blocks sorted by their key: the accepted rows of a vehicle are held back until its last
 * one, all other rows pass.
 */
final class ResolveVisits implements Iterator<LogRow> {
    private final Iterator<byte[]> blocks;
    private final ArrayDeque<LogRow> ready = new ArrayDeque<>();
    private List<LoggedWheel> vehicle = new ArrayList<>();
    private FileCount file;

    ResolveVisits(Iterator<byte[]> blocks) {
        this.blocks = blocks;
    }

    @Override
    public boolean hasNext() {
        while (ready.isEmpty() && blocks.hasNext()) {
            Block.rows(blocks.next()).forEach(this::take);
        }
        if (ready.isEmpty() && file != null) {
            endFile();
        }
        if (ready.isEmpty() && !vehicle.isEmpty()) {
            resolve();
        }
        return !ready.isEmpty();
    }

    @Override
    public LogRow next() {
        if (!hasNext()) {
            throw new NoSuchElementException("no more rows");
        }
        return ready.poll();
    }

    private void take(LogRow row) {
        if (row.outcome() == LogRow.Outcome.FILE) {
            // A file that was read in parts is counted in parts, which lie together.
            if (file != null && !file.file().equals(row.file().file())) {
                endFile();
            }
            file = file == null ? row.file() : file.plus(row.file());
            return;
        }
        if (file != null) {
            endFile();
        }
        if (row.outcome() != LogRow.Outcome.ACCEPTED) {
            ready.add(row);
            return;
        }
        if (!vehicle.isEmpty()
                && !vehicle.get(0)
                        .visit()
                        .vehicleId()
                        .equals(row.accepted().visit().vehicleId())) {
            resolve();
        }
        VehicleRuns.add(vehicle, row.accepted());
    }

    private void endFile() {
        ready.add(LogRow.of(file));
        file = null;
    }

    private void resolve() {
        ResolvedVisits resolved = VisitResolver.resolve(vehicle);
        resolved.accepted().forEach(r -> ready.add(LogRow.of(r)));
        resolved.duplicates().forEach(d -> ready.add(LogRow.of(d)));
        resolved.rejections().forEach(r -> ready.add(LogRow.of(r)));
        vehicle = new ArrayList<>();
    }
}
