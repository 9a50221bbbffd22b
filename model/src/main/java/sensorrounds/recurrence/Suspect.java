package sensorrounds.recurrence;

import java.io.Serializable;
import java.util.List;
import sensorrounds.visit.WheelPosition;

/**
 * One candidate for the cause of a recurring warning. The probabilities of a vehicle's suspects add up to one.
 *
 * @param position null for "not a sensor" (receiver, wiring, blind spot, not learned) unless one place is meant
 * @param sensorId null for "not a sensor"
 * @param probability posterior probability
 * @param reasons what speaks for or against it, strongest first, each with its weight
 * @param nextStep what would settle it at the next stop
 */
public record Suspect(
        int order, WheelPosition position, String sensorId, double probability, List<String> reasons, String nextStep)
        implements Serializable {
    public Suspect {
        reasons = List.copyOf(reasons);
    }

    /** The same with a condition before its next step. */
    Suspect when(String condition) {
        return condition.isEmpty()
                ? this
                : new Suspect(order, position, sensorId, probability, reasons, condition + nextStep);
    }

    public boolean isSensor() {
        return sensorId != null;
    }
}
