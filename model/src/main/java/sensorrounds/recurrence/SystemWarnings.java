package sensorrounds.recurrence;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.WarningEpisode;
import sensorrounds.visit.Warning;

/**
 * The warnings of a vehicle that speak of its monitoring system. A low-pressure warning never counts: the system did
 * what it is there for, on a cold morning as with a nail in the tyre.
 */
final class SystemWarnings {
    /** Shorter than this a vehicle is not under observation for any rate worth the name. */
    static final int LEAST_EXPOSURE_DAYS = 30;

    static final double DAYS_PER_YEAR = 365.25;

    private SystemWarnings() {}

    static boolean counts(Warning warning) {
        return warning == Warning.SYSTEM_FAULT || warning == Warning.MESSAGE;
    }

    /** Episodes first seen up to and including {@code asOf}, in time order. */
    static List<WarningEpisode> episodes(VehicleHistory history, LocalDate asOf) {
        return history.episodes().stream()
                .filter(e -> counts(e.kind()) && !e.firstSeen().isAfter(asOf))
                .toList();
    }

    /** Episodes and returns after repair. */
    static int events(List<WarningEpisode> episodes) {
        return episodes.size() + returns(episodes);
    }

    static int returns(List<WarningEpisode> episodes) {
        return episodes.stream().mapToInt(WarningEpisode::returnsAfterRepair).sum();
    }

    /** Times the warning came back: episodes beyond the first, and returns after repair. */
    static int recurrences(List<WarningEpisode> episodes) {
        return Math.max(0, episodes.size() - 1) + returns(episodes);
    }

    /**
     * Days under observation, from the first visit to {@code asOf} or to the day the vehicle left the fleet, at least
     * {@link #LEAST_EXPOSURE_DAYS}; empty for a vehicle without a visit by then.
     */
    static Optional<Integer> exposureDays(VehicleHistory history, LocalDate asOf) {
        if (history.visits().isEmpty() || history.visits().get(0).day().isAfter(asOf)) {
            return Optional.empty();
        }
        LocalDate left = history.vehicle().leftFleet();
        LocalDate end = left != null && left.isBefore(asOf) ? left : asOf;
        long days = ChronoUnit.DAYS.between(history.visits().get(0).day(), end);
        return Optional.of((int) Math.max(LEAST_EXPOSURE_DAYS, days));
    }
}
