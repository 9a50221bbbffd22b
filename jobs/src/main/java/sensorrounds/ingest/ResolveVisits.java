package sensorrounds.ingest;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;
import org.apache.spark.sql.Row;
import sensorrounds.intake.ResolvedVisits;
import sensorrounds.intake.VisitResolver;
import sensorrounds.tables.LogRow;
import sensorrounds.tables.LogRows;
import sensorrounds.visit.LoggedWheel;

/**
 * Settles duplicates in a stream of rows sorted by vehicle: the accepted rows of a vehicle are held back until its last
 * one, all other rows pass.
 */
final class ResolveVisits implements Iterator<Row> {
    private final Iterator<Row> rows;
    private final ArrayDeque<Row> ready = new ArrayDeque<>();
    private List<LoggedWheel> vehicle = new ArrayList<>();

    ResolveVisits(Iterator<Row> rows) {
        this.rows = rows;
    }

    @Override
    public boolean hasNext() {
        while (ready.isEmpty() && rows.hasNext()) {
            take(rows.next());
        }
        if (ready.isEmpty() && !vehicle.isEmpty()) {
            resolve();
        }
        return !ready.isEmpty();
    }

    @Override
    public Row next() {
        if (!hasNext()) {
            throw new NoSuchElementException("no more rows");
        }
        return ready.poll();
    }

    private void take(Row row) {
        if (LogRows.outcome(row) != LogRow.Outcome.ACCEPTED) {
            ready.add(row);
            return;
        }
        LoggedWheel next = LogRows.understood(row);
        if (!vehicle.isEmpty()
                && !vehicle.get(0).visit().vehicleId().equals(next.visit().vehicleId())) {
            resolve();
        }
        VehicleRuns.add(vehicle, next);
    }

    private void resolve() {
        ResolvedVisits resolved = VisitResolver.resolve(vehicle);
        resolved.accepted().forEach(r -> ready.add(LogRows.TABLE.encode(LogRow.of(r))));
        resolved.duplicates().forEach(d -> ready.add(LogRows.TABLE.encode(LogRow.of(d))));
        resolved.rejections().forEach(r -> ready.add(LogRows.TABLE.encode(LogRow.of(r))));
        vehicle = new ArrayList<>();
    }
}
