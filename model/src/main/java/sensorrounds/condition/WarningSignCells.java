package sensorrounds.condition;

import java.io.Serializable;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import java.util.TreeMap;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.LifeReading;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;

/**
 * What visits tell of the system's own warning, counted: whether it showed while a sensor was known dead, by vehicle class,
 * and how often it brought a technician to a wheel whose sensor answered. Whole numbers, mergeable in any order. Not
 * thread safe.
 */
public final class WarningSignCells implements Serializable {
    private static final long serialVersionUID = 1;

    /** By class, empty when not known: visits with a dead sensor on the road that showed the warning, and that did not. */
    private final Map<String, long[]> dead = new TreeMap<>();

    private long calls;
    private long days;

    /** Counts one vehicle. */
    public WarningSignCells add(VehicleHistory history) {
        RoadVisits visits = RoadVisits.of(history, true);
        for (SensorLife life : history.lives()) {
            if (life.position() != null && life.position().isSpare()) {
                continue;
            }
            if (life.firstAnswered() != null) {
                days += ChronoUnit.DAYS.between(life.firstAnswered(), life.lastAnswered());
            }
            for (LifeReading r : life.readings()) {
                RoadVisits.Sign sign = visits.sign(r.day());
                if (r.answered() && sign == RoadVisits.Sign.CALLED) {
                    calls++;
                }
                boolean knownDead = life.end() == LifeEnd.FAILED
                        && !r.answered()
                        && SlowWaking.tried(r)
                        && (life.lastAnswered() == null || r.day().isAfter(life.lastAnswered()));
                if (knownDead && sign != RoadVisits.Sign.NONE) {
                    boolean dark = sign == RoadVisits.Sign.DARK;
                    dead(history.vehicle().vehicleClass(), dark ? 0 : 1, dark ? 1 : 0);
                }
            }
        }
        return this;
    }

    /** Counts so many visits with a dead sensor, which showed the warning and which did not. */
    WarningSignCells dead(String vehicleClass, long lit, long unlit) {
        long[] counts = dead.computeIfAbsent(key(vehicleClass), k -> new long[2]);
        counts[0] += lit;
        counts[1] += unlit;
        return this;
    }

    /** Takes the counts of another part of the fleet in. */
    public WarningSignCells merge(WarningSignCells other) {
        other.dead.forEach((vehicleClass, counts) -> {
            long[] own = dead.computeIfAbsent(vehicleClass, k -> new long[2]);
            own[0] += counts[0];
            own[1] += counts[1];
        });
        calls += other.calls;
        days += other.days;
        return this;
    }

    static String key(String vehicleClass) {
        return vehicleClass == null ? "" : vehicleClass;
    }

    Map<String, long[]> dead() {
        return dead;
    }

    /** Answers at visits that the warning called for. */
    long calls() {
        return calls;
    }

    /** Days from first to last answer, over all sensors on the road. */
    long days() {
        return days;
    }
}
