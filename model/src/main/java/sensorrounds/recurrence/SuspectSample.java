package sensorrounds.recurrence;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import sensorrounds.condition.HiddenFit;
import sensorrounds.condition.WakeModel;
import sensorrounds.history.VehicleHistory;

/**
 * Vehicles to learn the weights of signs from, up to a number of them, drawn by a hash of their IDs: a mergeable state whose
 * outcome depends neither on the order nor on the partitioning. Not thread safe.
 */
public final class SuspectSample implements Serializable {
    private static final long serialVersionUID = 1;
    /** Vehicles held; more would sharpen figures that move few suspects by then, and the learning takes a second. */
    private static final int MOST = 500;

    private final RecurrenceSettings settings;
    private final LocalDate asOf;
    private final TreeMap<Long, SuspectCase> cases = new TreeMap<>();

    public SuspectSample(RecurrenceSettings settings, LocalDate asOf) {
        this.settings = settings;
        this.asOf = asOf;
    }

    /** Takes in one vehicle, if its warning recurs and no lasting cause was found. */
    public SuspectSample add(VehicleHistory history, WakeModel wake) {
        Recurrence.toLearnFrom(history, wake, settings, asOf).ifPresent(this::hold);
        return this;
    }

    /** Takes in the vehicles of another part of the fleet. */
    public SuspectSample merge(SuspectSample other) {
        other.cases.values().forEach(this::hold);
        return this;
    }

    private void hold(SuspectCase vehicle) {
        cases.put(spread(vehicle.vehicleId()), vehicle);
        // Whoever is last among some is last among all, so letting go early never changes who is drawn.
        if (cases.size() > MOST) {
            cases.pollLastEntry();
        }
    }

    /** Horner's rule with a large odd number, then Fibonacci hashing: neighbours in the register fall far apart. */
    private static long spread(String id) {
        long hash = 0;
        for (int i = 0; i < id.length(); i++) {
            hash = (hash ^ id.charAt(i)) * 0x100000001B3L;
        }
        return (hash ^ (hash >>> 31)) * 0x9E3779B97F4A7C15L;
    }

    /** Vehicles held. */
    public int size() {
        return cases.size();
    }

    /** The figures that suspects are weighed by: learned where there are vehicles enough, else as the ladder has them. */
    public SuspectFigures learn(HiddenFit condition) {
        return SuspectLearner.learn(
                List.copyOf(cases.values()), SuspectFigures.of(settings, Optional.of(condition)), settings);
    }
}
