package sensorrounds.condition;

import java.io.Serializable;
import java.util.Map;
import java.util.TreeMap;
import sensorrounds.condition.HiddenOutlooks.PartOf;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.outlook.LifeLaws;
import sensorrounds.survival.LifeLaw;
import sensorrounds.survival.Lifetime;

/**
 * Vehicles counted by how many sensors failed on them and how many their laws of life expect over the time they were
 * watched: whole numbers, mergeable in any order. Expected failures are put in steps of 1/{@link #STEPS}. Not thread safe.
 */
public final class SetCells implements Serializable {
    private static final long serialVersionUID = 1;
    static final int STEPS = 128;

    /** A vehicle's set: what was seen of it and what was to be expected. */
    record SetCount(int failed, double expected) {}

    private final Map<Long, Long> vehicles = new TreeMap<>();

    /** Counts one vehicle; one without a sensor of known age counts for nothing. */
    public SetCells add(VehicleHistory history, LifeLaws laws, PartOf parts) {
        SetCount set = count(history, laws, parts);
        if (set.expected() > 0) {
            add(set.failed(), set.expected(), 1);
        }
        return this;
    }

    SetCells add(int failed, double expected, long number) {
        long step = Math.round(Math.min(expected, 1 << 20) * STEPS);
        vehicles.merge((long) failed << 32 | step, number, Long::sum);
        return this;
    }

    /** Failures of a vehicle's sensors of known age; a failure in an interval is put in its middle. */
    static SetCount count(VehicleHistory history, LifeLaws laws, PartOf parts) {
        int failed = 0;
        double expected = 0;
        for (SensorLife life : history.lives()) {
            Lifetime watched = life.lifetime();
            LifeLaw law = watched == null
                    ? null
                    : laws.of(history.vehicle().vehicleClass(), parts.of(life))
                            .map(LifeLaws.Law::life)
                            .orElse(null);
            if (law != null) {
                failed += watched.failed() ? 1 : 0;
                double exit = watched.failed() ? (watched.lower() + watched.upper()) / 2.0 : watched.lower();
                expected += law.cumulativeHazard(exit) - law.cumulativeHazard(watched.entry());
            }
        }
        return new SetCount(failed, expected);
    }

    /** Takes the counts of another part of the fleet in. */
    public SetCells merge(SetCells other) {
        other.vehicles.forEach((key, number) -> vehicles.merge(key, number, Long::sum));
        return this;
    }

    /** Something done with each cell. */
    interface Cell {
        void at(int failed, double expected, long number);
    }

    void each(Cell cell) {
        vehicles.forEach((key, number) -> cell.at((int) (key >> 32), (key & 0xFFFFFFFFL) / (double) STEPS, number));
    }
}
