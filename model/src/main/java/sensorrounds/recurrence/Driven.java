package sensorrounds.recurrence;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VisitSummary;
import sensorrounds.history.WarningEpisode;

/**
 * How far a vehicle was driven between its first and its last odometer reading, and what warned meanwhile.
 *
 * @param km distance, above 0
 * @param events system-warning episodes, and returns in them, that were seen from the first reading to the last
 */
public record Driven(double km, int events) implements Serializable {
    private static final double UNIT_KM = 10_000;

    /** Empty with fewer than two readings, with no distance between them, and where a reading is under an earlier one. */
    static Optional<Driven> of(VehicleHistory history, LocalDate asOf) {
        List<VisitSummary> read = history.visits().stream()
                .filter(v -> v.odometerKm() != null && !v.day().isAfter(asOf))
                .toList();
        for (int i = 1; i < read.size(); i++) {
            if (read.get(i).odometerKm() < read.get(i - 1).odometerKm()) {
                return Optional.empty();
            }
        }
        if (read.size() < 2) {
            return Optional.empty();
        }
        VisitSummary first = read.get(0);
        VisitSummary last = read.get(read.size() - 1);
        double km = last.odometerKm() - first.odometerKm();
        List<WarningEpisode> meanwhile = SystemWarnings.episodes(history, asOf).stream()
                .filter(e -> !e.firstSeen().isAfter(last.day()) && !e.lastSeen().isBefore(first.day()))
                .toList();
        return km > 0 ? Optional.of(new Driven(km, SystemWarnings.events(meanwhile))) : Optional.empty();
    }

    /** Warnings by 10,000 km. */
    public double per10000Km() {
        return events / (km / UNIT_KM);
    }
}
