package sensorrounds.outlook;

import java.io.Serializable;
import java.util.Map;
import java.util.TreeMap;
import sensorrounds.history.OriginBasis;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;

/**
 * What crews fit in place of a vehicle's first sensors: the part its register line names, or another. Counted over fittings
 * on record; it tells how far a sensor's part gives away whether it is the first at its place. A mergeable state of whole
 * numbers. Not thread safe.
 */
public final class FittedParts implements Serializable {
    private static final long serialVersionUID = 1;

    /** Chance that the first sensor is of another part than its register line names: a slip there. Our choice, no source. */
    private static final double REGISTER_SLIP = 0.01;

    /** Fittings of one original part that the share over all parts counts as. Our choice, no source. */
    private static final double PRIOR = 2;

    /** By original part: fittings of the same one, and of any. */
    private final Map<String, long[]> fittings = new TreeMap<>();

    /** Counts the fittings on one vehicle. */
    public FittedParts add(VehicleHistory history) {
        String original = history.vehicle().originalPart();
        for (SensorLife life : history.lives()) {
            if (original != null && life.part() != null && life.basis() == OriginBasis.RECORDED_FITTING) {
                count(original, life.part(), 1);
            }
        }
        return this;
    }

    /** Counts so many fittings of a part in place of another. */
    FittedParts count(String original, String part, long times) {
        long[] counts = fittings.computeIfAbsent(original, k -> new long[2]);
        counts[0] += part.equals(original) ? times : 0;
        counts[1] += times;
        return this;
    }

    /** Takes the counts of another part of the fleet in. */
    public FittedParts merge(FittedParts other) {
        other.fittings.forEach((part, counts) -> {
            long[] own = fittings.computeIfAbsent(part, k -> new long[2]);
            own[0] += counts[0];
            own[1] += counts[1];
        });
        return this;
    }

    /**
     * How many times as likely this part is on a first sensor as on a later one (Bayes' factor); 1 where a part is not known.
     *
     * @param originalPart part that the vehicle's register line names; null when not known
     * @param part of the sensor; null when not known
     */
    public double firstSensorFactor(String originalPart, String part) {
        if (originalPart == null || part == null) {
            return 1;
        }
        double same = sameAgain(originalPart);
        return part.equals(originalPart) ? (1 - REGISTER_SLIP) / same : REGISTER_SLIP / (1 - same);
    }

    /** Share of later sensors that are of the original part, drawn towards the share over all parts, and that to a half. */
    private double sameAgain(String originalPart) {
        long[] own = fittings.getOrDefault(originalPart, new long[2]);
        long same = 0;
        long all = 0;
        for (long[] counts : fittings.values()) {
            same += counts[0];
            all += counts[1];
        }
        double over = (same + PRIOR / 2) / (all + PRIOR);
        return (own[0] + PRIOR * over) / (own[1] + PRIOR);
    }
}
