package sensorrounds.ingest;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;
import sensorrounds.visit.LoggedWheel;

/**
 * Walks accepted rows in which those of one vehicle lie together, and gives the rows of one vehicle at a time, by time,
 * visit and place. Only one vehicle is in memory.
 */
public final class VehicleRuns implements Iterator<List<LoggedWheel>> {
    /** More rows than any vehicle has in its life: a key such as "unknown", shared by many. */
    static final int MOST_ROWS = 1_000_000;

    private static final Comparator<LoggedWheel> BY_VISIT = Comparator.comparing(
                    (LoggedWheel r) -> r.visit().visitedAt())
            .thenComparing(r -> r.visit().visitId())
            .thenComparing(
                    r -> r.wheel() == null ? null : r.wheel().position(),
                    Comparator.nullsFirst(Comparator.naturalOrder()))
            .thenComparing(LoggedWheel::source);

    private final Iterator<LoggedWheel> rows;
    private LoggedWheel ahead;

    /** @param rows accepted rows, those of one vehicle together */
    public VehicleRuns(Iterator<LoggedWheel> rows) {
        this.rows = rows;
        advance();
    }

    @Override
    public boolean hasNext() {
        return ahead != null;
    }

    @Override
    public List<LoggedWheel> next() {
        if (ahead == null) {
            throw new NoSuchElementException("no more vehicles");
        }
        String vehicle = ahead.visit().vehicleId();
        List<LoggedWheel> run = new ArrayList<>();
        while (ahead != null && ahead.visit().vehicleId().equals(vehicle)) {
            add(run, ahead);
            advance();
        }
        run.sort(BY_VISIT);
        return run;
    }

    private void advance() {
        ahead = rows.hasNext() ? rows.next() : null;
    }

    /** @throws RefusedInput when the rows are too many to be those of one vehicle */
    static void add(List<LoggedWheel> run, LoggedWheel row) {
        if (run.size() >= MOST_ROWS) {
            throw new RefusedInput(
                    "too many rows for one vehicle",
                    row.source().toString(),
                    "vehicleId \"" + row.visit().vehicleId() + "\" with more than " + MOST_ROWS + " rows",
                    "a key of its own for every vehicle",
                    "write each vehicle's own key, or leave rows of unknown vehicles out");
        }
        run.add(row);
    }
}
