package sensorrounds.recurrence;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import sensorrounds.history.FollowUp;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VisitSummary;
import sensorrounds.history.WarningEpisode;

/**
 * Days of a vehicle's system warnings while it was under observation, which is after its first visit and up to {@code to}. The
 * warning that led to the first visit is not among them: the vehicle came under observation because of it.
 *
 * @param from day of the first visit
 * @param to last day of observation, after {@code from}
 * @param days of new episodes and of returns after repair, in order; a day may stand twice
 */
record WarningDays(LocalDate from, LocalDate to, List<LocalDate> days) {
    WarningDays {
        days = List.copyOf(days);
    }

    /** Empty for a vehicle that was not watched for at least a day. */
    static Optional<WarningDays> of(VehicleHistory history, LocalDate asOf) {
        List<LocalDate> visits = history.visits().stream()
                .map(VisitSummary::day)
                .filter(d -> !d.isAfter(asOf))
                .sorted()
                .toList();
        if (visits.isEmpty()) {
            return Optional.empty();
        }
        LocalDate from = visits.get(0);
        LocalDate to = end(history, visits.get(visits.size() - 1), asOf);
        if (!to.isAfter(from)) {
            return Optional.empty();
        }
        List<LocalDate> days = new ArrayList<>();
        for (WarningEpisode e : SystemWarnings.episodes(history, asOf)) {
            days.add(e.firstSeen());
        }
        // Two repairs without a return between them come back as one.
        TreeSet<LocalDate> returns = new TreeSet<>();
        for (FollowUp f : history.followUps()) {
            if (f.state() == FollowUp.State.RETURNED) {
                returns.add(f.settledOn());
            }
        }
        days.addAll(returns);
        return Optional.of(new WarningDays(
                from,
                to,
                days.stream()
                        .filter(d -> d.isAfter(from) && !d.isAfter(to))
                        .sorted()
                        .toList()));
    }

    /** Day up to which warnings of the vehicle would be known: the day of the report or of leaving the fleet. */
    static LocalDate end(VehicleHistory history, LocalDate lastVisit, LocalDate asOf) {
        LocalDate left = history.vehicle().leftFleet();
        LocalDate end = left != null && left.isBefore(asOf) ? left : asOf;
        return lastVisit.isAfter(end) ? lastVisit : end;
    }
}
