package sensorrounds.recurrence;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import sensorrounds.history.FollowUp;
import sensorrounds.history.Repair;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.WarningEpisode;

/**
 * Whether the last work has held so far. Only a replacement counts: after a relearn or a clear an intermittent fault stays off
 * for a drive as well, and its cause is still to be found.
 */
final class Held {
    private Held() {}

    /** Day of that work, proven and the warning not seen after it; empty where it has not been shown to hold. */
    static Optional<LocalDate> since(VehicleHistory history, List<WarningEpisode> episodes, LocalDate asOf) {
        FollowUp last = null;
        for (FollowUp f : history.followUps()) {
            if (!f.repairedOn().isAfter(asOf)) {
                last = f;
            }
        }
        if (last == null || !isReplacement(last.repair()) || !isProven(last, asOf)) {
            return Optional.empty();
        }
        LocalDate on = last.repairedOn();
        return episodes.stream().anyMatch(e -> e.lastSeen().isAfter(on)) ? Optional.empty() : Optional.of(on);
    }

    private static boolean isReplacement(Repair repair) {
        return repair == Repair.SENSOR_REPLACED || repair == Repair.SET_REPLACED;
    }

    private static boolean isProven(FollowUp f, LocalDate asOf) {
        return f.state() == FollowUp.State.PROVEN && !f.settledOn().isAfter(asOf);
    }
}
