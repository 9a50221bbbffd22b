package sensorrounds.recurrence;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import sensorrounds.history.OriginBasis;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VisitSummary;
import sensorrounds.history.WarningEpisode;
import sensorrounds.visit.Warning;

/**
 * A new sensor with an ID of its own that the vehicle was never taught: the vehicle listens for the old one, and warns though
 * every sensor is sound (common practice, no source). A sensor that was given the old ID needs no teaching.
 */
final class NotLearned {
    private NotLearned() {}

    /** The newest sensor now on the vehicle fitted with a new ID, without a relearn since, and with the warning seen since. */
    static Optional<SensorLife> of(
            VehicleHistory history, List<SensorLife> onWheels, List<WarningEpisode> episodes, LocalDate asOf) {
        return onWheels.stream()
                .filter(l -> l.basis() == OriginBasis.RECORDED_FITTING && l.fittedOn() != null && l.generation() == 1)
                .filter(l -> episodes.stream().anyMatch(e -> e.lastSeen().isAfter(l.fittedOn())))
                .filter(l -> history.visits().stream().noneMatch(v -> taught(v, l.fittedOn(), asOf)))
                .max((a, b) -> a.fittedOn().compareTo(b.fittedOn()));
    }

    /** A relearn at the fitting or later; or the warning seen off on arrival since, which the vehicle's own learning explains. */
    private static boolean taught(VisitSummary v, LocalDate fittedOn, LocalDate asOf) {
        if (v.day().isBefore(fittedOn) || v.day().isAfter(asOf)) {
            return false;
        }
        return v.relearned() || v.warning() == Warning.NONE && v.day().isAfter(fittedOn);
    }
}
