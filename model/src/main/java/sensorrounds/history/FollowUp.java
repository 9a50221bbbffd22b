package sensorrounds.history;

import java.io.Serializable;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Locale;

/**
 * Work on a system warning, and whether the warning then stayed off on a drive longer than the detection time. Staying
 * off is no cure for good: {@code backOn} tells whether the warning was seen again later.
 *
 * @param repairedOn day of the work
 * @param drivenMinutes minutes driven in proof at that visit, 0 when none was written down; no more than their distance makes at
 *     {@link HistorySettings#drivingKmh}
 * @param requiredMinutes minutes that would prove it
 * @param state what became of it
 * @param settledOn day it was proven, the warning returned or the vehicle left; null while open
 * @param backOn first later day on which a system warning was seen again after staying off; null when it was not, and
 *     in every state but PROVEN
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
        LocalDate settledOn,
        LocalDate backOn)
        implements Serializable {
    /** What became of the proof. */
    public enum State {
        OPEN,
        /** Stayed off when it was put to the proof; see {@link FollowUp#backOn()}. */
        PROVEN,
        RETURNED,
        /** The vehicle left the fleet before it was proven. */
        LEFT
    }

    /** Driven long enough, and nobody wrote down whether the warning came back. */
    public boolean outcomeMissing() {
        return state == State.OPEN && drivenMinutes >= requiredMinutes;
    }

    /** Where the proof stands, in words. */
    public String standing() {
        return switch (state) {
            case OPEN ->
                outcomeMissing()
                        ? "drive long enough, outcome not written down: ask the driver"
                        : String.format(Locale.ROOT, "still to be proven by a drive of %.0f minutes", requiredMinutes);
            case PROVEN ->
                (settledOn.equals(repairedOn) ? "stayed off on the drive" : "off when seen on " + settledOn)
                        + (backOn == null ? "" : "; came back after " + days(settledOn, backOn));
            case RETURNED ->
                settledOn.equals(repairedOn)
                        ? "came back on the drive"
                        : "came back, seen after " + days(repairedOn, settledOn);
            case LEFT -> "vehicle left on " + settledOn + ", not proven";
        };
    }

    private static String days(LocalDate from, LocalDate to) {
        long n = ChronoUnit.DAYS.between(from, to);
        return n == 1 ? "1 day" : n + " days";
    }
}
