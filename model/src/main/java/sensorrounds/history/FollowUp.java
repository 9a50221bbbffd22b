package sensorrounds.history;

import java.io.Serializable;
import java.time.LocalDate;

/**
 * A warning that was worked on and must still be proven cured by a drive longer than the detection time.
 *
 * @param repairedOn day of the work
 * @param drivenMinutes minutes driven in proof at that visit, 0 when none was written down
 * @param requiredMinutes minutes that would prove it
 * @param state what became of it
 * @param settledOn day it was proven or the warning returned; null while open
 */
public record FollowUp(
        String vehicleId,
        String visitId,
        String technicianId,
        LocalDate repairedOn,
        Repair repair,
        double drivenMinutes,
        double requiredMinutes,
        State state,
        LocalDate settledOn)
        implements Serializable {
    /** What became of the proof. */
    public enum State {
        OPEN,
        PROVEN,
        RETURNED
    }
}
